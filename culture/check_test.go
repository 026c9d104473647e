package culture

import (
	"math"
	"testing"

	"eyeup/growth"
	"eyeup/quantity"
)

func kind(t *testing.T, name string) *Kind {
	t.Helper()
	k, ok := Lookup(name)
	if !ok {
		t.Fatalf("%s is not known", name)
	}
	return k
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: got %.4g, want %.4g within %.3g", what, got, want, within)
	}
}

// emergence is the table of Harrington & Minges 1954: days from sowing at 1/2 inch to
// emergence at 0, 5 … 35 °C (32 to 95 °F), as reprinted by Oregon State University
// Extension and by UC Santa Cruz; 0 for none or not tried.
var emergence = map[string][8]float64{
	"tomato":   {0, 0, 43, 14, 8, 6, 6, 9},
	"pepper":   {0, 0, 0, 25, 13, 8, 8, 9},
	"cucumber": {0, 0, 0, 13, 6, 4, 3, 3},
	"lettuce":  {49, 15, 7, 4, 3, 2, 3, 0},
	"spinach":  {63, 23, 12, 7, 6, 5, 6, 0},
	"onion":    {136, 31, 13, 7, 5, 4, 4, 13},
}

// Each kind comes up on the days of the table between the temperatures that growers sow at. The
// tolerance is that of a line fitted to whole days (a day in three is a third), or half a
// day, whichever is wider.
func TestSeedsComeUpByTheTable(t *testing.T) {
	for name, c := range map[string]struct{ from, to, within float64 }{
		"tomato": {10, 35, .10}, "pepper": {15, 35, .10}, "cucumber": {15, 30, .10},
		"lettuce": {10, 30, .20}, "spinach": {5, 30, .15}, "onion": {5, 30, .20},
	} {
		k := kind(t, name)
		for i, days := range emergence[name] {
			at := float64(i) * 5
			if days == 0 || at < c.from || at > c.to {
				continue
			}
			near(t, name, k.Sprout.UpDays(quantity.Celsius(at)).Middle, days, max(c.within*days, .5))
		}
	}
	for name, at := range map[string]float64{"tomato": 40, "pepper": 40, "lettuce": 35, "spinach": 35, "onion": 40} {
		if up := kind(t, name).Sprout.UpDays(quantity.Celsius(at)).Middle; !math.IsInf(up, 1) {
			t.Errorf("%s comes up in %.0f days at %.0f °C, where none did", name, up, at)
		}
	}
	for name, at := range map[string]float64{"tomato": 5, "pepper": 10, "cucumber": 10} {
		if up := kind(t, name).Sprout.UpDays(quantity.Celsius(at)).Middle; !math.IsInf(up, 1) {
			t.Errorf("%s comes up in %.0f days at %.0f °C, where none did", name, up, at)
		}
	}
}

// The base and the sum are those of a least-squares line through 1/days of the table, over
// the rising limb up to the fastest row.
func TestLinesFittedToTheTable(t *testing.T) {
	for name, rows := range map[string][2]int{"tomato": {2, 5}, "pepper": {3, 5}, "cucumber": {3, 6}, "lettuce": {0, 5}, "spinach": {0, 5}, "onion": {1, 5}} {
		var n, x, y, xx, xy float64
		for i := rows[0]; i <= rows[1]; i++ {
			at, rate := float64(i)*5, 1/emergence[name][i]
			n, x, y, xx, xy = n+1, x+at, y+rate, xx+at*at, xy+at*rate
		}
		slope := (n*xy - x*y) / (n*xx - x*x)
		k := kind(t, name)
		near(t, name+" base", k.Sprout.Base.Celsius(), (x-y/slope)/n, .05)
		near(t, name+" sum", k.Sprout.Sum, 1/slope, .1)
	}
}

// Harrington & Minges 1954, per cent of normal seedlings; two reprints agree.
func TestGermination(t *testing.T) {
	for name, shares := range map[string]map[float64]float64{
		"tomato":   {10: .82, 15: .98, 25: .97, 30: .83, 35: .46},
		"pepper":   {10: .01, 15: .70, 20: .96, 35: .70},
		"cucumber": {10: 0, 15: .95, 35: .99},
		"lettuce":  {0: .98, 25: .99, 30: .12},
		"spinach":  {0: .83, 5: .96, 25: .28, 30: .32},
	} {
		for at, want := range shares {
			got, ok := kind(t, name).Germination(at)
			if !ok {
				t.Errorf("%s: nothing known at %g °C", name, at)
			}
			near(t, name, float64(got), want, 1e-9)
		}
	}
	half, _ := kind(t, "lettuce").Germination(27.5)
	near(t, "lettuce between", float64(half), (.99+.12)/2, 1e-9)
	for name, at := range map[string]float64{"lettuce": 31, "tomato": 9, "dahlia": 20, "onion": 20} {
		if s, ok := kind(t, name).Germination(at); ok {
			t.Errorf("%s at %g °C: %g, where nothing is known", name, at, float64(s))
		}
	}
}

// Common practice: in a room of 70 °F a dahlia shows growth in about two weeks. A society
// has eyes after one to two weeks; shoots are up about eighteen days after the start.
func TestDahliaInASeventyDegreeRoom(t *testing.T) {
	k, room := kind(t, "dahlia"), quantity.Fahrenheit(70)
	if eyed := k.Sprout.EyedDays(room).Middle; eyed < 7 || eyed > 14 {
		t.Errorf("eyes after %.1f days", eyed)
	}
	up := k.Sprout.UpDays(room)
	near(t, "up", up.Middle, 18, 1)
	if up.Low > 14 || up.High < 14 {
		t.Errorf("two weeks lie outside %.1f to %.1f days", up.Low, up.High)
	}
	gap := up.Middle - k.Sprout.EyedDays(room).Middle
	if gap < 7 || gap > 21 {
		t.Errorf("up %.1f days after eyes show, not one to three weeks", gap)
	}
}

// Common practice: from planting to up two to four weeks in warm soil, five or six in a
// cool spring, and months of rest in a store below 50 °F.
func TestDahliaInSoilAndStore(t *testing.T) {
	k := kind(t, "dahlia")
	for at, c := range map[float64][2]float64{18: {14, 28}, 20: {14, 28}, 14.4: {35, 42}} {
		if up := k.Sprout.UpDays(quantity.Celsius(at)).Middle; up < c[0] || up > c[1] {
			t.Errorf("up in %.0f days at %.1f °C, not %.0f to %.0f", up, at, c[0], c[1])
		}
	}
	if up := k.Sprout.UpDays(quantity.Fahrenheit(50)).Low; up < 150 {
		t.Errorf("one in ten is up after %.0f days at 50 °F", up)
	}
	near(t, "half of all that come", k.Sprout.ShareUp(210), .5*.9, 1e-9)
}

// Common practice: soil of 60 °F or more for tubers (American Dahlia Society, March 2023,
// at 4 in).
func TestDahliaSoilOfSixtyDegrees(t *testing.T) {
	near(t, "soil", kind(t, "dahlia").Soil.Dormant.Fahrenheit(), 60, .2)
}

// Stock & Nischwitz 2021, citing Brøndum & Heins 1993: harm below 41 °F and above 88 °F.
func TestDahliaLimits(t *testing.T) {
	k := kind(t, "dahlia")
	near(t, "cold", k.ColdDamage.Celsius(), 5, .5)
	near(t, "heat", k.HeatDamage.Celsius(), 31, .5)
	if k.Lowest.Below(k.ColdDamage) {
		t.Error("the lowest night harms leaves")
	}
}

// Moser & Hess 1969 and Konishi & Inaba 1964, 1967: tubers form below 11-12 h, blind
// flowers below 12 h, growth above 13 h.
func TestDahliaDayLength(t *testing.T) {
	k := kind(t, "dahlia")
	near(t, "10 h", k.DayLengthShare(10), 0, 0)
	near(t, "14 h", k.DayLengthShare(14), 1, 0)
	if s := k.DayLengthShare(12); s <= 0 || s >= 1 {
		t.Errorf("share %g at 12 h", s)
	}
}

// Fernandes and others 2024 (Ornamental Horticulture 30): 14-58 d from up to bud and 11-48
// from bud to flower, in warm fields; Fernandes has 6.25 plants/m² at 40 cm, NCSU 10.76 at 1 ft.
func TestDahliaInTheField(t *testing.T) {
	k := kind(t, "dahlia")
	for _, timing := range []string{"early", "mid", "late"} {
		for _, at := range []float64{18, 22, 26} {
			days := k.FlowerDays(timing) / k.Grow.Rate(at)
			if days < 14+11 || days > 58+48 {
				t.Errorf("%s: %.0f days from up to flower at %.0f °C", timing, days, at)
			}
		}
	}
	d, _ := k.Figure("plant.density")
	near(t, "40 cm", 1/(.40*.40), 6.25, .01)
	if d.Low > 6.25 || d.High < 10.76 {
		t.Errorf("published densities lie outside %g to %g", d.Low, d.High)
	}
}

// Karlsson 1996: ranunculus flowers in 53 d at 16 h and 16 °C or 12 h and 20 °C, in 74 d at
// 8 h and 16 °C or 12 h and 12 °C; within 4 d.
func TestRanunculusByKarlsson(t *testing.T) {
	k := kind(t, "ranunculus")
	for _, c := range []struct{ hours, at, days float64 }{{16, 16, 53}, {12, 20, 53}, {8, 16, 74}, {12, 12, 74}} {
		got := k.FlowerDays("") / (k.Grow.Rate(c.at) * k.DayLengthShare(c.hours))
		near(t, "days to flower", got, c.days, 4)
	}
}

// Cerveny and others 2012: soak at 15-25 °C, best 20 °C. Utah State: both stop near 80 °F.
func TestCorms(t *testing.T) {
	soak, _ := kind(t, "ranunculus").Figure("soak.temperature")
	if soak.Low != 15 || soak.Value != 20 || soak.High != 25 {
		t.Errorf("soak at %v", soak)
	}
	for _, name := range []string{"ranunculus", "anemone"} {
		k := kind(t, name)
		near(t, name+" stops", k.StopsAt.Fahrenheit(), 80, 2)
		if g := k.Grow.Rate(28); g > 0 {
			t.Errorf("%s grows at 28 °C", name)
		}
		// Common practice: 10-14 d at 50-55 °F before roots and buds show in ranunculus.
		if eyed := k.Sprout.EyedDays(quantity.Celsius(11.5)).Middle; eyed < 10 || eyed > 14 {
			t.Errorf("%s shows buds after %.1f days", name, eyed)
		}
	}
}

// Iowa State 2007 and Delaware (Mid-Atlantic Recommendations, Table A-4): weeks under
// cover. Utah State: one week of hardening for tomato and pepper.
func TestWeeksUnderCover(t *testing.T) {
	for name, want := range map[string][2]float64{
		"dahlia": {6, 8}, "tuberous begonia": {8, 8}, "caladium": {4, 6}, "canna": {4, 6},
		"tomato": {5, 6}, "pepper": {7, 9}, "cucumber": {2, 4}, "lettuce": {4, 6}, "onion": {9, 12},
	} {
		f, ok := kind(t, name).Figure("start.weeks")
		if !ok || f.Low > want[0] || f.High < want[1] || f.Value < want[0] || f.Value > want[1] {
			t.Errorf("%s: %g (%g to %g) weeks, not %g to %g", name, f.Value, f.Low, f.High, want[0], want[1])
		}
	}
	for _, name := range []string{"tomato", "pepper"} {
		near(t, name+" hardening", kind(t, name).HardenDays, 7, 0)
	}
}

// Sown in the warmth and grown on at the day and night temperatures of Delaware's table,
// half the day each, seedlings are fit for planting in the weeks of that table.
func TestReadyInTheWeeksOfTheTable(t *testing.T) {
	for name, c := range map[string]struct{ sowF, dayF, nightF, low, high float64 }{
		"tomato": {75, 70, 60, 5, 6}, "pepper": {85, 72.5, 60, 7, 9}, "cucumber": {77.5, 72.5, 65, 2, 4},
		"lettuce": {65, 62.5, 40, 4, 6}, "onion": {75, 67.5, 60, 9, 12},
	} {
		k := kind(t, name)
		up := k.Sprout.UpDays(quantity.Fahrenheit(c.sowF)).Middle
		rate := k.Grow.Rate(quantity.Fahrenheit((c.dayF + c.nightF) / 2).Celsius())
		if weeks := (up + k.Ready/rate) / 7; weeks < c.low || weeks > c.high {
			t.Errorf("%s is ready after %.1f weeks, not %g to %g", name, weeks, c.low, c.high)
		}
	}
}

// The temperatures of stores: Iowa State 2011 and Purdue, in °F, as middle values lie
// within what either says.
func TestStores(t *testing.T) {
	for name, f := range map[string][2]float64{"dahlia": {40, 50}, "gladiolus": {35, 45}, "canna": {40, 50}, "caladium": {59, 61}, "tuberous begonia": {45, 50}} {
		v, ok := kind(t, name).Figure("store.temperature")
		at := quantity.Celsius(v.Value).Fahrenheit()
		if !ok || at < f[0] || at > f[1] {
			t.Errorf("%s is kept at %.0f °F, not %g to %g", name, at, f[0], f[1])
		}
	}
	success, _ := kind(t, "dahlia").Figure("store.success")
	if success.Value < .90 || success.Value > .95 {
		t.Errorf("%g of dahlias come through; the American Dahlia Society says 90 to 95 %%", success.Value)
	}
}

// A pot-bound dahlia stands still at length: no figure of ours lets one flower in a pot
// started ten weeks before planting out, in a glass at 50 °F.
func TestDahliaDoesNotFlowerInThePot(t *testing.T) {
	k := kind(t, "dahlia")
	progress := 0.0
	for range 10 * 7 {
		progress += k.Grow.Rate(15) * k.PotShare(progress, 2.8*quantity.Litre) / k.FlowerDays("early")
	}
	if progress >= 1 {
		t.Errorf("an early dahlia is at %.2f of the way after ten weeks in a trade gallon at 15 °C", progress)
	}
	if small, large := k.PotLimit(.8*quantity.Litre), k.PotLimit(2.8*quantity.Litre); small != .30 || large != .45 {
		t.Errorf("limits %g and %g", small, large)
	}
}

// Every kind grows by a curve that stands by itself.
func TestCurvesStand(t *testing.T) {
	for _, name := range Kinds() {
		k := kind(t, name)
		if err := k.check(); err != nil {
			t.Error(err)
		}
		if err := k.Sprout.Check(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if got := growth.DailyRates(make([]float64, 24), k.Grow.Rate); k.Grow.Base.Celsius() >= 0 && got[0] != 0 {
			t.Errorf("%s grows %g at 0 °C", name, got[0])
		}
	}
}
