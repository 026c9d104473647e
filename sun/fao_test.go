package sun_test

import (
	"math"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/sun"
)

// onDay returns day j of 2025, a year without 29 February.
func onDay(j int) civil.Date { return civil.MustOn(2025, 1, 1).AddDays(civil.Days(j - 1)) }

func hours(d time.Duration) float64 { return d.Hours() }

// TestWorkedExamplesOfFAO works the examples of FAO Irrigation and Drainage Paper 56 (Allen
// and others 1998), as the tests of PyETo 79ddd88d cite them by page.
func TestWorkedExamplesOfFAO(t *testing.T) {
	september := onDay(246)
	near(t, "example 8: Ra at 20 S, MJ/m²", sun.Extraterrestrial(-20, september).Megajoules(), 32.2, 0.05)
	near(t, "example 9: N, h", hours(sun.DayLength(-20, september)), 11.7, 0.05)

	may := onDay(135) // example 10: Rio de Janeiro, 220 h of sunshine in May
	rio := -(22 + 54.0/60)
	sunshine := time.Duration(7.1 * float64(time.Hour))
	near(t, "example 10: Ra, MJ/m²", sun.Extraterrestrial(rio, may).Megajoules(), 25.1, 0.05)
	near(t, "example 10: N, h", hours(sun.DayLength(rio, may)), 10.9, 0.05)
	near(t, "example 10: Rs, MJ/m²", sun.FromSunshine(sunshine, rio, may).Megajoules(), 14.45, 0.05)

	lyon := sun.Site{Latitude: 45 + 43.0/60, Longitude: 5, Elevation: 200}
	july := onDay(196) // example 15: mean extremes of July
	near(t, "example 15: Ra, MJ/m²", sun.Extraterrestrial(lyon.Latitude, july).Megajoules(), 40.6, 0.1)
	rs := sun.FromRange(0.16, quantity.Celsius(14.8), quantity.Celsius(26.6), lyon, july)
	near(t, "example 15: Rs, MJ/m²", rs.Megajoules(), 22.3, 0.1)

	// Example 18 at 100 m has Ra 41.09 and Rso 30.90: a share of 0.75 + 2e-5 x 100.
	uccle := sun.Site{Latitude: 50.8, Longitude: 4.35, Elevation: 100}
	share := sun.ClearSky(uccle, onDay(187)) / sun.Extraterrestrial(uccle.Latitude, onDay(187))
	near(t, "example 18: Ra, MJ/m²", sun.Extraterrestrial(uccle.Latitude, onDay(187)).Megajoules(), 41.09, 0.02)
	near(t, "example 18: Rso, MJ/m²", float64(share)*41.09, 30.90, 0.01)
}

// TestDaylightTable compares the middle of each month with FAO 56's table of mean daylight
// hours for 46 N and 20 N, as in the tests of PyETo 79ddd88d.
func TestDaylightTable(t *testing.T) {
	for latitude, table := range map[float64][12]float64{
		46: {8.9, 10.1, 11.6, 13.3, 14.7, 15.5, 15.2, 13.9, 12.3, 10.7, 9.2, 8.5},
		20: {10.9, 11.3, 11.9, 12.5, 12.9, 13.2, 13.1, 12.7, 12.1, 11.5, 11.0, 10.8},
	} {
		for m, want := range table {
			day := civil.MustOn(2025, time.Month(m+1), 15)
			near(t, day.String()+": daylight, h", hours(sun.DayLength(latitude, day)), want, 0.15)
		}
	}
}

// TestExtraterrestrialTable compares with equations 21 to 25 of FAO 56 reckoned apart in R 4.2.2.
func TestExtraterrestrialTable(t *testing.T) {
	for _, row := range []struct{ latitude, raJan, nJan, raApr, nApr float64 }{
		{30, 21.08, 10.27, 36.84, 12.74}, {35, 18.08, 9.90, 35.89, 12.90},
		{40, 15.01, 9.47, 34.67, 13.08}, {45, 11.93, 8.96, 33.21, 13.28},
		{50, 8.89, 8.33, 31.52, 13.53}, {55, 5.96, 7.51, 29.63, 13.84},
	} {
		near(t, "Ra in January", sun.Extraterrestrial(row.latitude, onDay(15)).Megajoules(), row.raJan, 0.01)
		near(t, "N in January", hours(sun.DayLength(row.latitude, onDay(15))), row.nJan, 0.01)
		near(t, "Ra in April", sun.Extraterrestrial(row.latitude, onDay(105)).Megajoules(), row.raApr, 0.01)
		near(t, "N in April", hours(sun.DayLength(row.latitude, onDay(105))), row.nApr, 0.01)
	}
}

func TestPolarDaysOfFAO(t *testing.T) {
	winter, summer := onDay(355), onDay(172)
	if got := sun.DayLength(70, winter); got != 0 {
		t.Errorf("70 N in December: %v of daylight", got)
	}
	near(t, "70 N in December, MJ/m²", sun.Extraterrestrial(70, winter).Megajoules(), 0, 0)
	if got := sun.DayLength(70, summer); got != 24*time.Hour {
		t.Errorf("70 N in June: %v of daylight", got)
	}
	near(t, "sunshine in the polar night", sun.FromSunshine(0, 70, winter).Megajoules(), 0, 0)
}

// TestNotKnownIsNotFilled: what can't be reckoned is not a number, never a guess.
func TestNotKnownIsNotFilled(t *testing.T) {
	site, day := sun.Site{Latitude: 45}, onDay(100)
	for what, got := range map[string]quantity.Insolation{
		"reversed extremes":      sun.FromRange(0.16, quantity.Celsius(20), quantity.Celsius(10), site, day),
		"an unknown low":         sun.FromRange(0.16, quantity.Unknown(), quantity.Celsius(10), site, day),
		"sunshine below nothing": sun.FromSunshine(-time.Hour, 45, day),
		"25 hours of sunshine":   sun.FromSunshine(25*time.Hour, 45, day),
	} {
		if !math.IsNaN(float64(got)) {
			t.Errorf("%s gave %g", what, float64(got))
		}
	}
}
