package epw

import (
	"bytes"
	"io"
	"math"
	"strings"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/internal/opendata"
	"eyeup/weather/reading"
	"eyeup/weather/reading/readingtest"
)

// chicago reads the file of a typical year at Chicago.
func chicago(t *testing.T) []byte {
	t.Helper()
	b, err := io.ReadAll(opendata.Open(t, "hourly/chicago_tmy3.epw"))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// TestChicago checks sums and extremes taken from the file with awk, and lines of it.
func TestChicago(t *testing.T) {
	y, err := ReadHours(bytes.NewReader(chicago(t)))
	if err != nil {
		t.Fatal(err)
	}
	if s := y.Station; s.ID != "725300" || s.Name != "Chicago Ohare Intl Ap" || s.Latitude != 41.98 || s.Longitude != -87.92 || s.Elevation != 201 || y.Zone != -6 {
		t.Errorf("the station is %+v, zone %v", s, y.Zone)
	}
	sum, mean := 0.0, 0.0
	for i := range y.Air {
		sum += y.Sun[i]
		mean += y.Air[i] / 8760
	}
	if len(y.Air) != 8760 || sum != 1406646 || !(math.Abs(mean-9.98799) < 1e-5) {
		t.Errorf("%d hours, sun %v Wh/m², mean air %v", len(y.Air), sum, mean)
	}
	if y.DewPoint[0] != -16.1 || y.DewPoint[8759] != -8.9 {
		t.Errorf("dew points run from %v to %v", y.DewPoint[0], y.DewPoint[8759])
	}
	if y.Drawn[1] != 1986 || y.Drawn[12] != 1981 || len(y.Findings) != 1 {
		t.Errorf("drawn from %v, found %v", y.Drawn, y.Findings)
	}
	// 4 July: 24 stamps from 16.7 to 30.6 °C, 7170 Wh/m² in all
	d := y.Record().On(civil.MustOn(reading.PlainYear, time.July, 4))
	if d.Low.Celsius() != 16.7 || d.High.Celsius() != 30.6 || !(math.Abs(float64(d.Sun)-7170*3600) < 1e-3) {
		t.Errorf("4 July: %+v", d)
	}
}

// TestBySun checks that, by the sun's clock, morning and afternoon get the same sun over the
// year within a quarter of an hour, and that nothing of the sun is lost. By the clock of
// Chicago, 2° east of its zone's middle, noon comes between 11:36 and 12:06.
func TestBySun(t *testing.T) {
	y, err := ReadHours(bytes.NewReader(chicago(t)))
	if err != nil {
		t.Fatal(err)
	}
	h, err := y.BySun()
	if err != nil {
		t.Fatal(err)
	}
	var clock, moved float64
	for i := range y.Sun {
		clock += y.Sun[i]
		moved += h.Sun[i]
	}
	if !(math.Abs(moved/clock-1) < 1e-3) {
		t.Errorf("the sun's clock has %.5f of the sun", moved/clock)
	}
	for month := time.January; month <= time.December; month++ {
		at := middle(h.Sun, month)
		if !(math.Abs(at-12) < 0.45) {
			t.Errorf("%s: the middle of the day's sun is at %.2f h", month, at)
		}
	}
	year := middle(h.Sun, 0)
	t.Logf("middle of the year's sun %.3f h by the sun, %.3f h by the clock", year, middle(y.Sun, 0))
	if !(math.Abs(year-12) < 0.1) {
		t.Errorf("the middle of the year's sun is at %.3f h", year)
	}
}

// middle returns the hour about which the sun of a month (0: the year) balances.
func middle(sun []float64, month time.Month) float64 {
	var all, moment float64
	first := civil.MustOn(reading.PlainYear, time.January, 1)
	for i, s := range sun {
		if month == 0 || first.AddDays(civil.Days(i/24)).Month() == month {
			all += s
			moment += s * (float64(i%24) + 0.5)
		}
	}
	return moment / all
}

func TestRefuse(t *testing.T) {
	whole := chicago(t)
	lines := readingtest.Split(whole)
	for name, c := range map[string]struct {
		text string
		line int
	}{
		"empty":           {"", 1},
		"heading alone":   {lines.First(8), 8},
		"cut in half":     {string(whole[:len(whole)/2]), 1 + bytes.Count(whole[:len(whole)/2], []byte("\n"))},
		"cut at a day":    {lines.First(8 + 24*100), 8 + 24*100},
		"an hour gone":    {lines.Without(21), 21},
		"not hourly":      {lines.Swapped(8, "DATA PERIODS,1,1", "DATA PERIODS,1,4"), 8},
		"no latitude":     {lines.Swapped(1, "41.98", "north"), 1},
		"a zone too far":  {lines.Swapped(1, "-6.0", "-60"), 1},
		"a word":          {lines.Swapped(9, "-12.2", "cold"), 9},
		"a wrong heading": {lines.Swapped(3, "TYPICAL", "USUAL"), 3},
		"too long":        {string(whole) + lines[8:].Joined(), 8768 + 25},
	} {
		_, err := ReadHours(strings.NewReader(c.text))
		readingtest.Refused(t, name, err, c.line)
	}
}

// TestMissingAndImpossible checks the codes of the data dictionary (99.9 °C, 9999 Wh/m²).
func TestMissingAndImpossible(t *testing.T) {
	whole := chicago(t)
	text := strings.Replace(string(whole), ",-12.2,-16.1,73,99500,0,0,218,0,", ",99.9,99.9,73,99500,0,0,218,9999,", 1)
	text = strings.Replace(text, ",-11.7,-15.6,", ",75.0,-15.6,", 1)
	y, err := ReadHours(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	if y.Air[0] == y.Air[0] || y.DewPoint[0] == y.DewPoint[0] || y.Sun[0] == y.Sun[0] || y.Air[1] == y.Air[1] {
		t.Errorf("%v %v %v", y.Air[:2], y.DewPoint[0], y.Sun[0])
	}
	if len(y.Findings) != 2 || y.Findings[1].Line != 10 {
		t.Errorf("found %v", y.Findings)
	}
	if d := y.Record().Days[0]; d.Low.IsKnown() || d.High.IsKnown() || d.Sun == d.Sun {
		t.Errorf("a day with a missing hour is %+v", d)
	}
}
