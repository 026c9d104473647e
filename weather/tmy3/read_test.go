package tmy3

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

func greensboro(t *testing.T) []byte {
	t.Helper()
	b, err := io.ReadAll(opendata.Open(t, "hourly/greensboro_tmy3.csv"))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// TestGreensboro checks sums and extremes taken from the file with awk, and lines of it.
func TestGreensboro(t *testing.T) {
	y, err := ReadHours(bytes.NewReader(greensboro(t)))
	if err != nil {
		t.Fatal(err)
	}
	if s := y.Station; s.ID != "723170" || s.Name != "GREENSBORO PIEDMONT TRIAD INT" || s.Latitude != 36.1 || s.Longitude != -79.95 || s.Elevation != 273 || y.Zone != -5 {
		t.Errorf("the station is %+v, zone %v", s, y.Zone)
	}
	sum, mean := 0.0, 0.0
	for i := range y.Air {
		sum += y.Sun[i]
		mean += y.Air[i] / 8760
	}
	if len(y.Air) != 8760 || sum != 1566203 || !(math.Abs(mean-14.4218) < 1e-4) {
		t.Errorf("%d hours, sun %v Wh/m², mean air %v", len(y.Air), sum, mean)
	}
	records, err := Read(bytes.NewReader(greensboro(t)))
	if err != nil {
		t.Fatal(err)
	}
	d := records[0].On(civil.MustOn(reading.PlainYear, time.July, 4))
	if d.Low.Celsius() != 17.8 || d.High.Celsius() != 28.9 {
		t.Errorf("4 July: %+v", d)
	}
	if y.Drawn[1] != 1988 || y.Drawn[12] != 1980 {
		t.Errorf("drawn from %v", y.Drawn)
	}
}

func TestRefuse(t *testing.T) {
	whole := greensboro(t)
	lines := readingtest.Split(whole)
	for name, c := range map[string]struct {
		text string
		line int
	}{
		"empty":         {"", 1},
		"heading alone": {lines.First(2), 2},
		"cut in half":   {string(whole[:len(whole)/2]), 1 + bytes.Count(whole[:len(whole)/2], []byte("\n"))},
		"an hour gone":  {lines.Without(21), 21},
		"no air":        {lines.Swapped(2, "Dry-bulb (C)", "Dry-bulb (F)"), 2},
		"no latitude":   {lines.Swapped(1, "36.100", "north"), 1},
		"half hours":    {lines.Swapped(3, "01:00", "00:30"), 3},
		"no number":     {lines.Swapped(3, "10.0,A", "warm,A"), 3},
		"13th month":    {lines.Swapped(3, "01/01/", "13/01/"), 4},
	} {
		_, err := ReadHours(strings.NewReader(c.text))
		readingtest.Refused(t, name, err, c.line)
	}
}

// TestMissing checks the code for what was not measured, -9900.
func TestMissing(t *testing.T) {
	text := strings.Replace(string(greensboro(t)), ",10.0,A,7,6.1,A,7,", ",-9900,A,7,6.1,A,7,", 1)
	y, err := ReadHours(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	if y.Air[0] == y.Air[0] || y.DewPoint[0] != 6.1 || len(y.Findings) != 1 {
		t.Errorf("air %v, dew point %v, found %v", y.Air[0], y.DewPoint[0], y.Findings)
	}
}
