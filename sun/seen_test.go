package sun

import (
	"math"
	"testing"
	"time"
)

// TestMeeusExample works example 25.a of Meeus 1998, the sun on 13 October 1992 at 0h
// dynamical time, whose result the documentation of the R package oce repeats.
func TestMeeusExample(t *testing.T) {
	s := seen(2448908.5 - terrestrialLead)
	if got := degrees(s.declination); math.Abs(got+7.78507) > 4e-5 {
		t.Errorf("declination %.6f, want -7.78507", got)
	}
	if got := degrees(s.ascension); math.Abs(got+161.61919) > 4e-5 {
		t.Errorf("right ascension %.6f, want 198.38081 - 360", got)
	}
}

// TestSolarPositionSteps compares what lies beneath the worked case of NREL/TP-560-34302
// (as in the tests of pvlib-python 6382338a) with ours, to the 0.01 degree promised.
func TestSolarPositionSteps(t *testing.T) {
	at := time.Date(2003, 10, 17, 19, 30, 30, 0, time.UTC)
	day := julianDay(at)
	s := seen(day)
	for _, row := range []struct {
		what                 string
		got, want, tolerance float64
	}{
		{"Julian day", day, 2452930.312847, 1e-6},
		{"declination", degrees(s.declination), -9.31434, 0.01},
		{"right ascension", degrees(s.ascension) + 360, 202.22741, 0.01},
		{"hour angle", degrees(s.hourAngle(-105.1786)), 11.10590, 0.01},
		{"distance, au", s.distance, 0.9965422974, 1e-4},
	} {
		if math.Abs(row.got-row.want) > row.tolerance {
			t.Errorf("%s %.8f, want %.8f", row.what, row.got, row.want)
		}
	}
}

// TestCurves compares a, b and the rates at 40 N on day 105 with the formulas of
// Collares-Pereira & Rabl and of Liu & Jordan reckoned apart in R 4.2.2. The rates on the
// middle of each hour do not sum to 1, which is why HourShares integrates.
func TestCurves(t *testing.T) {
	const day105 = 2 * math.Pi * 105 / 365
	sunset := sunsetAngle(radians(40), 0.409*math.Sin(day105-1.39))
	a, b := totalCurve(sunset)
	var total, diffuse float64
	for h := range 24 {
		w := (float64(h) - 11.5) * math.Pi / 12
		if math.Abs(w) < sunset {
			total += curve(totalCurve).rate(w, sunset)
			diffuse += curve(diffuseCurve).rate(w, sunset)
		}
	}
	for _, row := range []struct {
		what      string
		got, want float64
	}{
		{"a", a, 0.7183}, {"b", b, 0.3669},
		{"rate half an hour from noon", curve(totalCurve).rate(math.Pi/24, sunset), 0.1303},
		{"sum of the rates", total, 0.99185}, {"sum of the diffuse rates", diffuse, 0.99641},
	} {
		if math.Abs(row.got-row.want) > 1e-4 {
			t.Errorf("%s = %.5f, want %.5f", row.what, row.got, row.want)
		}
	}
}

// TestIntegralFollowsRate: the integral that HourShares takes is that of the rate checked
// above, here by Simpson's rule.
func TestIntegralFollowsRate(t *testing.T) {
	const sunset, steps = 1.7, 200
	for _, c := range []curve{totalCurve, diffuseCurve} {
		var sum float64
		for i := range steps {
			h := sunset / steps
			w := float64(i) * h
			sum += h / 6 * (c.rate(w, sunset) + 4*c.rate(w+h/2, sunset) + c.rate(w+h, sunset))
		}
		scale := math.Pi / 24 / (math.Sin(sunset) - sunset*math.Cos(sunset))
		if got := c.upTo(sunset, sunset) * scale; math.Abs(got-sum) > 1e-9 {
			t.Errorf("integral %.12f, by steps %.12f", got, sum)
		}
	}
}
