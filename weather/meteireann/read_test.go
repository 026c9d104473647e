package meteireann

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/internal/opendata"
	"eyeup/weather"
	"eyeup/weather/reading"
)

// TestMullingar checks the file against counts taken from it with awk and against lines of it.
func TestMullingar(t *testing.T) {
	records, err := Read(opendata.Open(t, "daily/mullingar_dly875.csv"))
	if err != nil {
		t.Fatal(err)
	}
	r := records[0]
	if s := r.Station; s.ID != "MULLINGAR" || s.Latitude != 53.537 || s.Longitude != -7.362 || s.Elevation != 101 {
		t.Errorf("the station is %+v", s)
	}
	if s := r.Span(); len(records) != 1 || s.From.String() != "1973-11-08" || s.To.String() != "2025-05-31" || len(r.Days) != 18833 {
		t.Errorf("the record spans %v in %d days", s, len(r.Days))
	}
	var lows, suns, soils int
	for _, d := range r.Days {
		if d.HasExtremes() {
			lows++
		}
		if d.Sun == d.Sun {
			suns++
		}
		if d.Soil.IsKnown() {
			soils++
		}
	}
	// 8,883 fields of glorad hold a number, 2,591 of them 0; none of mintp and maxtp is empty
	if lows != 18833 || suns != 8883-2591 || soils != 18822 {
		t.Errorf("extremes on %d days, sun on %d, soil on %d", lows, suns, soils)
	}
	for _, c := range []struct {
		date           civil.Date
		low, high, sun float64
		soil           float64
	}{
		{civil.MustOn(2010, time.June, 21), 8.8, 24.8, 28.75e6, 20.932},
		{civil.MustOn(2010, time.December, 24), -12.2, -3.4, 3.25e6, 0.007},
		{civil.MustOn(2008, time.March, 1), math.NaN(), math.NaN(), 4.06e6, math.NaN()},
		{civil.MustOn(2007, time.July, 1), math.NaN(), math.NaN(), math.NaN(), math.NaN()},
		{civil.MustOn(2013, time.October, 3), 14.9, 16.9, math.NaN(), math.NaN()},
	} {
		d := r.On(c.date)
		if !math.IsNaN(c.low) && (d.Low.Celsius() != c.low || d.High.Celsius() != c.high) || !same(float64(d.Sun), c.sun) ||
			!math.IsNaN(c.soil) && d.Soil.Celsius() != c.soil {
			t.Errorf("%s: %+v", c.date, d)
		}
	}
	want := []weather.Finding{{Line: 9576, Count: 2584}, {Line: 14598, Count: 7}}
	for i, f := range r.Findings {
		if i >= len(want) || f.Line != want[i].Line || f.Count != want[i].Count {
			t.Errorf("found %+v", f)
		}
	}
}

func same(a, b float64) bool { return a == b || math.IsNaN(a) && math.IsNaN(b) }

const head = "Station Name: ALDER\nStation Height: 20 M\nLatitude:53.5  ,Longitude: -7.4\n\ndate,ind,maxtp,ind,mintp,gmin,soil,glorad\n"

func TestReports(t *testing.T) {
	text := head + "01-jun-2020,0,15.0,0,8.0,5.0,12.5,2000\n" +
		"02-jun-2020,0,8.0,0,15.0, ,12.5,9999\n" + // reversed; FAO 56 gives 41.3 MJ/m² above the air
		"03-jun-2020,0, ,0, , , ,0\n"
	records, err := Read(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	r := records[0]
	if d := r.Days[0]; d.Low.Celsius() != 8 || d.Sun.Megajoules() != 20 || d.Soil.Celsius() != 12.5 {
		t.Errorf("%+v", d)
	}
	for _, d := range r.Days[1:] {
		if d.Low.IsKnown() || d.High.IsKnown() || d.Sun == d.Sun {
			t.Errorf("%+v", d)
		}
	}
	if len(r.Findings) != 3 {
		t.Errorf("found %v", r.Findings)
	}
}

// TestPolarNight checks that no sun is believed where the sun does not rise.
func TestPolarNight(t *testing.T) {
	text := strings.Replace(head, "53.5", "78.2", 1) + "21-dec-2020,0,-5.0,0,-18.0,,,0\n21-jun-2020,0,5.0,0,1.0,,,0\n"
	records, err := Read(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	winter, summer := records[0].On(civil.MustOn(2020, time.December, 21)), records[0].On(civil.MustOn(2020, time.June, 21))
	if winter.Sun != 0 || summer.Sun == summer.Sun {
		t.Errorf("winter %v, summer %v", winter.Sun, summer.Sun)
	}
}

func TestRefuse(t *testing.T) {
	const day = "01-jun-2020,0,15.0,0,8.0,5.0,12.5,2000\n"
	for name, c := range map[string]struct {
		text string
		line int
	}{
		"no heading":   {strings.Repeat("rubbish\n", 200), 100},
		"empty":        {"", 0},
		"heading only": {"Station Name: ALDER\n", 1},
		"no mintp":     {strings.Replace(head, "mintp", "wind", 1) + day, 5},
		"cut in half":  {head + day + day[:20], 7},
		"no date":      {head + strings.Replace(day, "jun", "xyz", 1), 6},
		"31 June":      {head + strings.Replace(day, "01-", "31-", 1), 6},
		"no number":    {head + strings.Replace(day, "15.0", "warm", 1), 6},
		"two columns":  {strings.Replace(head, "gmin", "mintp", 1) + day, 5},
	} {
		_, err := Read(strings.NewReader(c.text))
		var f *reading.Fault
		if !errors.As(err, &f) || f.Line != c.line || f.Do == "" {
			t.Errorf("%s: %v; want a refusal of line %d", name, err, c.line)
		}
	}
}
