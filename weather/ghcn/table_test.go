package ghcn

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/weather/reading"
)

const oldHeading = "STATION,STATION_NAME,DATE,TAVG,TMAX,TMIN\n"

func TestTableForms(t *testing.T) {
	const day = "GHCND:ZZ000000001,ALDER HILL,20190201,-9999,3.1,-5.5\n"
	for name, text := range map[string]string{
		"old":        oldHeading + day,
		"marked":     "\xef\xbb\xbf" + oldHeading + day,
		"CR":         strings.ReplaceAll(oldHeading+day, "\n", "\r"),
		"CR LF":      strings.ReplaceAll(oldHeading+day, "\n", "\r\n"),
		"joined":     oldHeading + oldHeading + day,
		"quoted":     "\"STATION\",\"NAME\",\"DATE\",\"TMAX (C)\",\"TMIN (C)\"\n\"ZZ000000001\",\"ALDER HILL\",\"2019-02-01\",\"3.1\",\"-5.5\"\n",
		"fahrenheit": "STATION,NAME,DATE,TMAX (F),TMIN (F)\nZZ000000001,ALDER HILL,2019-02-01,37.58,22.1\n",
		"tenths":     "STATION,NAME,DATE,TMAX (0.1 C),TMIN (0.1 C)\nZZ000000001,ALDER HILL,2019-02-01,31,-55\n",
		"flags": "STATION,STATION_NAME,DATE,TMAX,Measurement Flag,Quality Flag,Source Flag,Time of Observation,TMIN,Measurement Flag,Quality Flag,Source Flag,Time of Observation\n" +
			"GHCND:ZZ000000001,ALDER HILL,20190201,3.1, , ,X,2400,-5.5, , ,X,2400\n",
	} {
		records, err := Read(strings.NewReader(text))
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		r := records[0]
		d := r.On(civil.MustOn(2019, time.February, 1))
		if r.Station.ID != "ZZ000000001" || r.Station.Name != "ALDER HILL" || !(math.Abs(d.Low.Celsius()+5.5) < 1e-9 && math.Abs(d.High.Celsius()-3.1) < 1e-9) {
			t.Errorf("%s: %+v %v", name, r.Station, d)
		}
	}
}

func TestTableHonoursFlags(t *testing.T) {
	for name, text := range map[string]string{
		"columns":    "STATION,STATION_NAME,DATE,TMAX,Quality Flag,TMIN,Quality Flag\nGHCND:ZZ1,HILL,20190201,3.1,I,-5.5,\n",
		"attributes": "STATION,NAME,DATE,TMAX (C),TMAX_ATTRIBUTES,TMIN (C),TMIN_ATTRIBUTES\nZZ1,HILL,2019-02-01,3.1,\",I,X,2400\",-5.5,\",,X\"\n",
	} {
		records, err := Read(strings.NewReader(text))
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if d := records[0].Days[0]; d.High.IsKnown() || d.Low.Celsius() != -5.5 || count(records[0], "flags I") != 1 {
			t.Errorf("%s: %v %v", name, d, records[0].Findings)
		}
	}
}

// year writes a table of a year between a winter low and a summer high, in the dashed form.
func year(low, high float64, format string, unit func(float64) float64) string {
	var b strings.Builder
	b.WriteString("STATION,NAME,DATE,TMAX,TMIN\n")
	for i := range 365 {
		mean := (low+high)/2 - (high-low)/2*math.Cos(2*math.Pi*float64(i)/365)
		date := civil.MustOn(2019, time.January, 1).AddDays(civil.Days(i))
		fmt.Fprintf(&b, "ZZ1,HILL,%s,"+format+","+format+"\n", date, unit(mean+5), unit(mean-5))
	}
	return b.String()
}

func TestTableTellsUnits(t *testing.T) {
	plain := func(x float64) float64 { return x }
	inF := func(x float64) float64 { return x*9/5 + 32 }
	inTenths := func(x float64) float64 { return 10 * x }
	for _, c := range []struct{ name, text string }{
		{"°C", year(-10, 20, "%.1f", plain)},
		{"°F", year(-10, 20, "%.0f", inF)},
		{"tenths of °C", year(-10, 20, "%.0f", inTenths)},
		{"°C", year(20, 40, "%.1f", plain)},
		{"°F", year(20, 40, "%.0f", inF)},
		{"tenths of °C", year(20, 40, "%.0f", inTenths)},
	} {
		records, err := Read(strings.NewReader(c.text))
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if n := count(records[0], "can only be in "+c.name); n != 1 {
			t.Errorf("%s: found %v", c.name, records[0].Findings)
		}
	}
	winter := strings.Join(strings.SplitAfter(year(-10, 20, "%.1f", plain), "\n")[:60], "")
	if _, err := Read(strings.NewReader(winter)); err == nil || !strings.Contains(err.Error(), "TMAX (C)") {
		t.Errorf("a winter that could be in any unit: %v", err)
	}
}

// TestTableRefusesOtherUnits checks that the old form is not taken for °C when it can't be.
func TestTableRefusesOtherUnits(t *testing.T) {
	text := strings.Replace(year(-10, 20, "%.0f", func(x float64) float64 { return x*9/5 + 32 }), "NAME", "STATION_NAME", 1)
	if _, err := Read(strings.NewReader(text)); err == nil || !strings.Contains(err.Error(), "can't be in °C") {
		t.Errorf("got %v", err)
	}
}

func TestTableRefuses(t *testing.T) {
	day := "GHCND:ZZ1,HILL,20190201,-9999,3.1,-5.5\n"
	for name, c := range map[string]struct {
		text string
		line int
	}{
		"no TMIN":         {"STATION,STATION_NAME,DATE,TMAX\nGHCND:ZZ1,HILL,20190201,1\n", 1},
		"cut in half":     {oldHeading + day + day[:20], 3},
		"too few fields":  {oldHeading + "GHCND:ZZ1,HILL,20190201\n", 2},
		"too many":        {oldHeading + strings.TrimSpace(day) + ",1\n", 2},
		"impossible date": {oldHeading + strings.Replace(day, "20190201", "20190230", 1), 2},
		"no number":       {oldHeading + strings.Replace(day, "3.1", "warm", 1), 2},
		"no station":      {oldHeading + strings.Replace(day, "GHCND:ZZ1", "", 1), 2},
		"open quotation":  {oldHeading + strings.Replace(day, "HILL", "\"HILL", 1), 2},
		"empty":           {"", 0},
		"heading alone":   {oldHeading, 0},
		"unknown unit":    {"STATION,NAME,DATE,TMAX (K),TMIN (K)\n", 1},
		"two units":       {"STATION,NAME,DATE,TMAX (C),TMIN (F)\nZZ1,HILL,2019-02-01,3,4\n", 1},
	} {
		_, err := Read(strings.NewReader(c.text))
		var f *reading.Fault
		if !errors.As(err, &f) || f.Line != c.line || f.Do == "" {
			t.Errorf("%s: %v; want a refusal of line %d", name, err, c.line)
		}
	}
}

func TestTableDuplicates(t *testing.T) {
	text := oldHeading + "GHCND:ZZ1,HILL,20190201,-9999,3.1,-5.5\nGHCND:ZZ1,HILL,20190201,-9999,3.1,-4.5\n"
	records, err := Read(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	d := records[0].Days[0]
	if d.Low.IsKnown() || d.High.Celsius() != 3.1 || count(records[0], "appears more than once") != 1 || count(records[0], "two different values") != 1 {
		t.Errorf("%v %v", d, records[0].Findings)
	}
}

// TestTableLastLineOpen checks that a day whose last value may be cut short is not believed.
func TestTableLastLineOpen(t *testing.T) {
	text := oldHeading + "GHCND:ZZ1,HILL,20190201,-9999,3.1,-5.5\nGHCND:ZZ1,HILL,20190202,-9999,3.1,-1"
	records, err := Read(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	if r := records[0]; len(r.Days) != 2 || r.Days[1].High.IsKnown() || count(r, "no end") != 1 {
		t.Errorf("%v %v", r.Days, r.Findings)
	}
}
