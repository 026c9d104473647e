package table

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/weather/reading"
)

// TestForms writes one day in many ways; all say 3.5 °C to 14 °C (38.3 °F to 57.2 °F).
func TestForms(t *testing.T) {
	for name, text := range map[string]string{
		"celsius":        "date,low (C),high (C)\n2026-05-10,3.5,14.0\n",
		"degree signs":   "Date,Tmin [°C],Tmax [°C]\n2026-05-10,3.5,14.0\n",
		"fahrenheit":     "date,low (F),high (F)\n2026-05-10,38.3,57.2\n",
		"tenths":         "date,low (0.1 C),high (0.1 C)\n20260510,35,140\n",
		"after the name": "date,tmin_c,tmax_c\n2026-05-10,3.5,14.0\n",
		"with values":    "date,low,high\n2026-05-10,38.3F,14.0 °C\n",
		"semicolons":     "date;low (C);high (C)\n10-may-2026;3,5;14,0\n",
		"tabs":           "date\tlow (C)\thigh (C)\n2026/05/10\t3.5\t14.0\n",
		"remarks":        "# my garden\n\ndate,low (C),high (C)\n# cold\n2026-05-10,3.5,14.0\n",
		"CR":             "date,low (C),high (C)\r2026-05-10,3.5,14.0\r",
		"marked":         "\xef\xbb\xbfdate,low (C),high (C)\r\n2026-05-10,3.5,14.0\r\n",
		"other order":    "max (C),day,wind,min (C)\n14.0,2026-05-10,3,3.5\n",
	} {
		if !Recognises([]byte(text)) {
			t.Errorf("%s: not known as a table", name)
		}
		records, err := Read(strings.NewReader(text))
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		d := records[0].On(civil.MustOn(2026, time.May, 10))
		if !(math.Abs(d.Low.Celsius()-3.5) < 1e-9 && math.Abs(d.High.Celsius()-14) < 1e-9) {
			t.Errorf("%s: %+v", name, d)
		}
	}
}

// TestSun writes 18 MJ/m² in each unit: 5 kWh/m², 1800 J/cm².
func TestSun(t *testing.T) {
	for unit, value := range map[string]string{"MJ/m2": "18", "MJ/m²": "18.0", "kWh/m2": "5", "Wh/m^2": "5000", "J/cm2": "1800"} {
		text := "date,low (C),high (C),sun (" + unit + "),soil (C),dew point (F)\n2026-05-10,3.5,14.0," + value + ",11,41\n"
		records, err := Read(strings.NewReader(text))
		if err != nil {
			t.Errorf("%s: %v", unit, err)
			continue
		}
		d := records[0].Days[0]
		if !(math.Abs(d.Sun.Megajoules()-18) < 1e-9) || d.Soil.Celsius() != 11 || !(math.Abs(d.DewPoint.Celsius()-5) < 1e-9) {
			t.Errorf("%s: %+v", unit, d)
		}
	}
}

func TestStationsAndGaps(t *testing.T) {
	text := "station,date,low (C),high (C),rain\nHILL,2026-05-10,3.5,14.0,1\nDALE,2026-05-10,1.5,NA,0\nHILL,2026-05-12,-9999,15.0,\nHILL,2026-05-13,16,15,\n"
	records, err := Read(strings.NewReader(text))
	if err != nil || len(records) != 2 {
		t.Fatalf("%v, %v", records, err)
	}
	hill, dale := records[0], records[1]
	if len(hill.Days) != 4 || hill.Days[1].Low.IsKnown() || hill.Days[2].Low.IsKnown() || hill.Days[2].High.Celsius() != 15 || hill.Days[3].High.IsKnown() {
		t.Errorf("%+v", hill.Days)
	}
	if dale.Station.ID != "DALE" || dale.Days[0].High.IsKnown() || dale.Days[0].Low.Celsius() != 1.5 {
		t.Errorf("%+v", dale)
	}
	if len(hill.Findings) != 2 || !strings.Contains(hill.Findings[0].What, "rain") || hill.Findings[1].Line != 5 {
		t.Errorf("found %v", hill.Findings)
	}
}

func TestRefuse(t *testing.T) {
	const head, day = "date,low (C),high (C)\n", "2026-05-10,3.5,14.0\n"
	for name, c := range map[string]struct {
		text, say string
		line      int
	}{
		"no unit":         {"date,low,high\n" + day, "says the unit", 2},
		"unit unknown":    {"date,low (K),high (K)\n" + day, "C, F or 0.1 C", 1},
		"value's unit":    {head + "2026-05-10,3.5K,14\n", "not known", 2},
		"°F as °C":        {head + "2026-05-10,38,75\n", "cannot be", 2},
		"no high":         {"date,low (C)\n2026-05-10,3.5\n", "no column is named high", 1},
		"two lows":        {"date,low (C),min (C),high (C)\n", "two columns", 1},
		"unclear date":    {head + "5/10/2026,3.5,14.0\n", "not a date", 2},
		"impossible date": {head + "2026-02-30,3.5,14.0\n", "not a day of the calendar", 2},
		"no date":         {head + ",3.5,14.0\n", "not a date", 2},
		"cut in half":     {head + day + "2026-05", "1 fields", 3},
		"no number":       {head + "2026-05-10,cold,14.0\n", "not a number", 2},
		"decimal comma":   {head + "2026-05-10,3,5,14,0\n", "5 fields", 2},
		"year 3000":       {head + "3000-05-10,3.5,14.0\n", "outside the years", 2},
		"empty":           {"", "no day", 0},
		"remarks alone":   {"# a\n# b\n", "no day", 0},
	} {
		_, err := Read(strings.NewReader(c.text))
		var f *reading.Fault
		if !errors.As(err, &f) || f.Line != c.line || f.Do == "" || !strings.Contains(err.Error(), c.say) {
			t.Errorf("%s: %v; want a refusal of line %d that says %q", name, err, c.line, c.say)
		}
	}
}

func TestOpenLastLine(t *testing.T) {
	records, err := Read(strings.NewReader("date,low (C),high (C)\n2026-05-10,3.5,1"))
	if err != nil {
		t.Fatal(err)
	}
	if r := records[0]; r.Days[0].High.IsKnown() || r.Days[0].Low.Celsius() != 3.5 || len(r.Findings) != 1 {
		t.Errorf("%+v %v", r.Days, r.Findings)
	}
}
