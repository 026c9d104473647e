package reckon

import (
	"bytes"
	"encoding/json"
	"math"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/internal/report"
	"eyeup/internal/testkit"
	"eyeup/quantity"
)

func TestSkyAnswersFollowTheirSchemas(t *testing.T) {
	day := civil.MustOn(2026, 12, 21)
	for _, q := range []SunQuestion{
		{Latitude: 44.55, Longitude: -69.63, At: time.Date(2027, 3, 20, 16, 0, 0, 0, time.UTC)},
		{Latitude: 44.55, Longitude: -69.63, Date: day, Zone: time.UTC},
		{Latitude: 78, Longitude: 16, Date: day, Zone: time.UTC}, // polar night
	} {
		a, err := Sun(q)
		if err != nil {
			t.Fatal(err)
		}
		testkit.Holds(t, "reckon sun", a)
	}
	for _, q := range []AirQuestion{
		{Temperature: quantity.Celsius(25), Humidity: 0.6, WetBulb: quantity.Unknown(), Pressure: 101325},
		{Temperature: quantity.Celsius(-5), Humidity: 0, WetBulb: quantity.Unknown(), Pressure: 101325},
		{Temperature: quantity.Celsius(-5), Humidity: 0.9, WetBulb: quantity.Unknown(), Pressure: 101325},
	} {
		a, err := Air(q)
		if err != nil {
			t.Fatal(err)
		}
		testkit.Holds(t, "reckon air", a)
	}
}

// FuzzSun checks that any question is refused or answered in full: no panic, and no number that JSON can't
// hold.
func FuzzSun(f *testing.F) {
	f.Add(44.55, -69.63, 27.0, int64(1_800_000_000), 2027, 6, 21)
	f.Add(90.0, 180.0, 0.0, int64(0), 2027, 12, 21)
	f.Add(-66.56, 0.0, 9000.0, int64(-1), 1900, 1, 1)
	f.Add(math.NaN(), math.Inf(1), -1e300, int64(1)<<60, 9999, 12, 31)
	f.Fuzz(func(t *testing.T, latitude, longitude, elevation float64, at int64, y, m, d int) {
		date, err := civil.On(y, time.Month(m), d)
		if err != nil {
			date = civil.Date{}
		}
		a, err := Sun(SunQuestion{
			Latitude: latitude, Longitude: longitude, Elevation: quantity.Length(elevation),
			At: time.Unix(at, 0).UTC(), Date: date, Zone: time.UTC,
		})
		checkComplete(t, a, err)
	})
}

// FuzzAir is FuzzSun for the air.
func FuzzAir(f *testing.F) {
	nan := math.NaN()
	f.Add(25.0, 0.6, nan, 101325.0, 0.0)
	f.Add(-5.0, nan, -6.0, nan, 1800.0)
	f.Add(100.0, 1.0, nan, 20000.0, 0.0)
	f.Add(-100.0, 1.0, nan, 120000.0, 0.0)
	f.Add(40.0, nan, -90.0, nan, -5000.0)
	f.Fuzz(func(t *testing.T, celsius, humidity, wet, pressure, elevation float64) {
		a, err := Air(AirQuestion{
			Temperature: quantity.Celsius(celsius), Humidity: quantity.Share(humidity), WetBulb: quantity.Celsius(wet),
			Pressure: quantity.Pressure(pressure), Elevation: quantity.Length(elevation),
		})
		checkComplete(t, a, err)
	})
}

func checkComplete[A report.Answer](t *testing.T, a A, err error) {
	t.Helper()
	if err != nil {
		if err.Error() == "" {
			t.Error("the error has no text")
		}
		return
	}
	if _, err := json.Marshal(a); err != nil {
		t.Error(err)
	}
	var page bytes.Buffer
	a.Print(&page, quantity.US)
	if page.Len() == 0 || bytes.Contains(page.Bytes(), []byte("NaN")) {
		t.Errorf("printed %q", page.String())
	}
}
