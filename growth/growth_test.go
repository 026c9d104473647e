package growth

import (
	"math"
	"testing"
)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: got %.6g, want %.6g within %g", what, got, want, within)
	}
}

// The values are worked by hand from the curve's formula.
func TestBeta(t *testing.T) {
	for c, want := range map[float64]float64{5: .31037, 10: .57708, 15: .79170, 20: .94086, 25: 1, 30: .90943, 33: .69340, 0: 0, -4: 0, 35: 0, 60: 0} {
		near(t, "beta 0/25/35", Beta(c, 0, 25, 35), want, 1e-5)
	}
	for c, want := range map[float64]float64{12: .33252, 20: .81519, 28: 1, 34: .85768, 40: 0} {
		near(t, "beta 8/28/40", Beta(c, 8, 28, 40), want, 1e-5)
	}
}

// The comment on Beta says how it and the curve of Yan & Hunt 1999 (Annals of Botany
// 84:607, eq. 1, with base 0) go over into each other.
func TestBetaIsARootOfYanAndHunt(t *testing.T) {
	const best, ceiling = 25.0, 35.0
	for c := 1.0; c < ceiling; c++ {
		published := (ceiling - c) / (ceiling - best) * math.Pow(c/best, best/(ceiling-best))
		near(t, "beta", math.Pow(Beta(c, 0, best, ceiling), best/(ceiling-best)), published, 1e-12)
	}
}

// Exact, by hand.
func TestTrapezoid(t *testing.T) {
	for c, want := range map[float64]float64{5: 0, 12.5: .5, 20: 1, 25: 1, 30: .8, 38: 0, 50: 0, -5: 0} {
		near(t, "trapezoid 5/20/28/38", Trapezoid(c, 5, 20, 28, 38), want, 1e-15)
	}
}

// The tests of the TrenchR package (github.com/trenchproject/TrenchR at ca58d440), to
// their printed digits; its value of 5 for 35 to 40 °C is a defect, the cutoff gives 21.
func TestDegreeDays(t *testing.T) {
	for _, c := range []struct{ low, high, sine, triangle float64 }{
		{7, 14, .46806, .29}, {13, 14, 1.5, 1.5}, {13, 40, 12.94435, 13.59}, {7, 40, 10.93967, 11.14}, {7, 20, 2.87436, -1},
		{35, 40, 21, 21}, {-5, 12, 0, 0},
	} {
		sine, err := SineDegreeDays(c.low, c.high, 12, 33)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "single sine", sine, c.sine, 1e-5)
		if c.triangle < 0 {
			continue // not in the source
		}
		triangle, err := TriangleDegreeDays(c.low, c.high, 12, 33)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "triangle", triangle, c.triangle, .005)
	}
}

// University of California IPM, Ojai 2016, lower 12, upper 33 °C, rows of the table kept
// with the TrenchR package.
func TestDegreeDaysOjai(t *testing.T) {
	for _, c := range [][3]float64{{7.8, 19.4, 2.72}, {4.4, 22.2, 3.51}, {10, 21.7, 4.21}, {7.8, 25.6, 5.59}, {15.6, 26.7, 9.15}} {
		got, err := SineDegreeDays(c[0], c[1], 12, 33)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "Ojai", got, c[2], .01)
	}
}

func TestDegreeDaysRefuse(t *testing.T) {
	for _, c := range [][4]float64{{20, 10, 12, 33}, {10, 20, 33, 12}, {math.NaN(), 20, 12, 33}} {
		if _, err := SineDegreeDays(c[0], c[1], c[2], c[3]); err == nil {
			t.Errorf("%v gave no error", c)
		}
		if _, err := TriangleDegreeDays(c[0], c[1], c[2], c[3]); err == nil {
			t.Errorf("%v gave no error", c)
		}
	}
}

// Quantiles and shares as R 4.2.2 gives them (qlnorm, plnorm, pweibull, qweibull).
func TestSpreads(t *testing.T) {
	l := Lognormal{10, .2}
	near(t, "lognormal .1", l.At(.1), 7.73902, 1e-5)
	near(t, "lognormal .5", l.At(.5), 10, 1e-12)
	near(t, "lognormal .9", l.At(.9), 12.92154, 1e-5)
	near(t, "lognormal below 12", l.Below(12), .81901, 1e-5)
	near(t, "lognormal below 0", l.Below(0), 0, 0)
	w := Weibull{3, 10}
	near(t, "weibull below 8", w.Below(8), .40070, 1e-5)
	near(t, "weibull median", w.At(.5), 8.84997, 1e-5)
	near(t, "weibull below 0", w.Below(-1), 0, 0)
}

// A day of 7.5 ± 10 °C above a base of 2.5 °C holds 6.08998 degree-days, worked as an
// integral; its mean temperature would say 5. Hours come within 0.01 of the integral.
func TestWarmthIsSummedByTheHour(t *testing.T) {
	hourly := make([]float64, 48+5)
	for h := range hourly {
		hourly[h] = 7.5 + 10*math.Sin(2*math.Pi*(float64(h)+.5)/24)
	}
	days := DailyRates(hourly, func(c float64) float64 { return max(0, c-2.5) })
	if len(days) != 2 {
		t.Fatalf("%d days of 53 hours", len(days))
	}
	near(t, "hourly", days[0], 6.08998, .02)
	near(t, "second day", days[1], days[0], 1e-12)
	sine, err := SineDegreeDays(-2.5, 17.5, 2.5, 100)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "single sine", sine, 6.08998, 1e-5)
}

func TestReached(t *testing.T) {
	daily := []float64{1, 2, 0, 4}
	for _, c := range []struct {
		from int
		sum  float64
		day  int
		ok   bool
	}{{0, 3, 1, true}, {0, 3.5, 3, true}, {1, 2, 1, true}, {2, 0, 2, true}, {0, 7.5, 0, false}, {4, 0, 0, false}, {-1, 1, 0, false}} {
		day, ok := Reached(daily, c.from, c.sum)
		if day != c.day || ok != c.ok {
			t.Errorf("from %d to %g: day %d %v, want %d %v", c.from, c.sum, day, ok, c.day, c.ok)
		}
	}
}

func TestSlowing(t *testing.T) {
	for p, want := range map[float64]float64{0: 1, .3: 1, .375: .575, .45: .15, .9: .15} {
		near(t, "pot of limit .30", PotShare(p, .3, .15), want, 1e-12)
	}
	for h, want := range map[float64]float64{9: 0, 11: 0, 12: .5, 13: 1, 16: 1} {
		near(t, "day length", DayLengthShare(h, 11, 13), want, 1e-12)
	}
	for dli, want := range map[float64]float64{0: 0, 6: .5, 12: 1, 30: 1} {
		near(t, "light", LightShare(dli, 12), want, 1e-12)
	}
	for since, want := range map[float64]float64{-1: 1, 0: .4, 9: .4, 10: 1} {
		near(t, "transplant", TransplantShare(since, 10, .4), want, 0)
	}
}

// In a pot of limit 0.3 and floor 0.15 a plant at 0.28 has 0.02 free; from there its share falls by
// 0.85 over 0.15, so that full growth of 0.05 more comes to (1 - exp(-0.05 × 0.85 / 0.15)) × 0.15 / 0.85.
// The floor is met where that exponential is 0.15, and beyond it all counts for 0.15.
func TestInPot(t *testing.T) {
	const slope = 0.85 / 0.15
	toFloor := math.Log(1/0.15) / slope
	for _, one := range []struct{ progress, full, want float64 }{
		{0.1, 0.2, 0.2}, {0.28, 0.02, 0.02}, {0.28, 0.07, 0.02 + (1-math.Exp(-0.05*slope))/slope},
		{0.375, 0.01, 0.575 * (1 - math.Exp(-0.01*slope)) / slope}, {0.3, toFloor, 0.15},
		{0.3, toFloor + 0.4, 0.15 + 0.06}, {0.45, 0.2, 0.03}, {2, 0.2, 0.03}, {0.35, 0, 0},
	} {
		near(t, "in the pot", InPot(one.progress, one.full, 0.3, 0.15), one.want, 1e-12)
	}
	near(t, "a floor of nothing", InPot(0.3, 50, 0.3, 0), 0.15, 1e-12)
	near(t, "a pot that holds nothing back", InPot(0.3, 0.5, 0.3, 1), 0.5, 0)
}
