package place

import "testing"

const day = 86400.0

// MacKay 2009, Sustainable Energy, ch. E, box E.19: how deep the year reaches into water,
// rock and soil, and the most heat that crosses the surface. He prints 1.2 m for water,
// where his own figures give 1.17, and a swing of 8.3 K to either side.
func TestHowDeepTheYearReaches(t *testing.T) {
	for _, c := range []struct {
		what                         string
		conducts, holds, reach, flux float64
	}{
		{"water", 0.57, 4.18, 1.2, 5.7},
		{"granite", 2.1, 2.3, 3.0, 8.1},
		{"concrete", 1.28, 1.94, 2.6, 5.8},
		{"sand, dry", 0.30, 1.28, 1.5, 2.3},
		{"sand, half wet", 1.80, 2.12, 2.9, 7.2},
		{"sand, wet", 2.20, 2.96, 2.7, 9.5},
		{"clay, dry", 0.25, 1.42, 1.3, 2.2},
		{"clay, half wet", 1.18, 2.25, 2.3, 6.0},
		{"clay, wet", 1.58, 3.10, 2.3, 8.2},
		{"peat, dry", 0.06, 0.58, 1.0, 0.7},
		{"peat, half wet", 0.29, 2.31, 1.1, 3.0},
		{"peat, wet", 0.50, 4.02, 1.1, 5.3},
	} {
		s := Soil{c.conducts, c.holds * 1e6}
		near(t, c.what+", reach in m", float64(s.Reach(365.25*day)), c.reach, 0.05)
		near(t, c.what+", flux in W/m²", s.PeakFlux(8.3, 365.25*day), c.flux, 0.06)
	}
	near(t, "a day in granite, m", float64(Soil{2.1, 2.3e6}.Reach(day)), 0.16, 0.005)
}

// MacKay, the same: at two reaches a seventh is left, a third of the cycle late; at three a
// twentieth, half a cycle late. The other two rows follow from gain e^(−z/z0), lag z/z0/ω
// for a soil of diffusivity 5e-7 m²/s.
func TestWaveInTheGround(t *testing.T) {
	gain, lag := wave(2)
	near(t, "gain at two reaches", gain, 0.1353, 1e-4)
	near(t, "lag at two reaches", lag, 0.318, 1e-3)
	gain, lag = wave(3)
	near(t, "gain at three reaches", gain, 0.0498, 1e-4)
	near(t, "lag at three reaches", lag, 0.477, 1e-3)

	gain, lag = wave(0.1 / float64(underFloor.Reach(day)))
	near(t, "a day at 10 cm, gain", gain, 0.42623, 1e-4)
	near(t, "a day at 10 cm, lag in h", lag*24, 3.257, 1e-3)
	gain, lag = wave(1 / float64(underFloor.Reach(365*day)))
	near(t, "a year at 1 m, gain", gain, 0.63995, 2e-4)
	near(t, "a year at 1 m, lag in d", lag*365, 25.93, 2e-2)
}

// The depth factor and damping depth of SWAT (theory, ch. 1:1.3) computed from their
// formulas by another program.
func TestSoilOfTheSWATModel(t *testing.T) {
	for depth, want := range map[float64]float64{
		0.01: 0.02372, 0.1: 0.22657, 0.5: 0.77080, 1: 0.95003, 2: 0.99672,
	} {
		near(t, "depth factor", drawAt(depth), want, 1e-5)
	}
	g := Ground{BulkDensity: 1.3, Water: 100}
	near(t, "deepest, mm", g.deepest(), 2852.17, 0.01)
	near(t, "damping depth, mm", g.dampingDepth(), 2544.69, 0.01)
}

// A step from 10 to 20 °C held back by 0.8 a day is at 20 − 10·0.8⁵ = 16.7232 after five.
func TestSoilFollowsAStep(t *testing.T) {
	g := Ground{Lag: 0.8, Least: UsualGround().Least}
	h := plainWeather(5, 20, 0)
	soil := 10.0
	for d := range 5 {
		soil = g.next(soil, h, d, 0, 0)
	}
	near(t, "after five days", soil, 16.7232, 1e-9)
}

// A pot of lag 3 h set from 10 into 20 °C: 20 − 10·e^(−t/3).
func TestPotFollowsAStep(t *testing.T) {
	p := newPot(3, 0, 10)
	near(t, "after an hour", p.follow(20, 0), 12.834687, 1e-6)
	for range 5 {
		p.follow(20, 0)
	}
	near(t, "after six", p.now, 18.646647, 1e-6)
	sunny := newPot(6, 0.02, 10)
	for range 200 {
		sunny.follow(10, 300)
	}
	near(t, "in the sun for ever", sunny.now, 16, 1e-9)
}

// A warm bench that suffices ends the hour with its roots as asked; one that does not gives
// all it has, and its pots settle power/(10 W/m²K) above the air.
func TestWarmBench(t *testing.T) {
	ample := newWarmPot(newPot(6, 0, 10), &WarmBench{Area: 2, Root: quantityCelsius(20), Power: 5000})
	power := ample.asks(8, 0)
	near(t, "roots", ample.warmed(8, 0, power), 20, 1e-9)
	weak := newWarmPot(newPot(6, 0, 8), &WarmBench{Area: 2, Root: quantityCelsius(20), Power: 100})
	for range 100 {
		weak.warmed(8, 0, weak.asks(8, 0))
	}
	near(t, "roots over a weak bench", weak.now, 8+100/(2*10.0), 1e-6)
	if power := ample.asks(25, 0); power != 0 {
		t.Errorf("the bench gives %g W in air that is warmer than its roots", power)
	}
}

func sumOf(x []float64) float64 {
	total := 0.0
	for _, v := range x {
		total += v
	}
	return total
}

func meanOf(x []float64) float64 { return sumOf(x) / float64(len(x)) }

// TestBenchApart: a warm bench that is kept apart leaves the house as it is without one; on
// it roots are warmer, in the same air, and its electricity is what it is given.
func TestBenchApart(t *testing.T) {
	y, house := waterville(t), smallHouse()
	h, site := y.hours[0], y.site
	without := house.Run(h, site, Off())
	house.WarmBench, house.BenchApart = &WarmBench{Area: 2, Root: quantityCelsius(20), Power: 300}, true
	with, on := house.Run(h, site, Off()), OnBench{house}.Run(h, site, Off())
	for i, air := range without.Air {
		if with.Air[i] != air || on.Air[i] != air || with.Root[i] != without.Root[i] {
			t.Fatalf("hour %d: %g °C without a bench, %g beside it, %g on it", i, air, with.Air[i], on.Air[i])
		}
	}
	if meanOf(on.Root) <= meanOf(without.Root)+2 || sumOf(on.GivenKWh) <= 0 || sumOf(on.GivenKWh) != sumOf(with.WarmBenchKWh) {
		t.Errorf("roots of %.1f °C for %.0f kWh, beside it %.1f °C", meanOf(on.Root), sumOf(on.GivenKWh), meanOf(without.Root))
	}
	house.BenchApart = false
	if warmed := house.Run(h, site, Off()); meanOf(warmed.Air) <= meanOf(without.Air) {
		t.Error("a bench that is not kept apart warms nothing")
	}
}
