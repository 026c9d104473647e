package culture

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"eyeup/quantity"
)

func TestUnknownStaysUnknown(t *testing.T) {
	k := kind(t, "canna")
	if !math.IsNaN(k.RestUntil) || !math.IsNaN(k.DayLength.Full) || k.HeatDamage.IsKnown() {
		t.Error("an unknown figure of canna has a number")
	}
	if k.DayLengthShare(9) != 1 || k.LightShare(1) != 1 || k.PotShare(.9, quantity.Litre) != 1 {
		t.Error("an effect without figures is counted")
	}
	found := false
	for _, l := range k.Lacks() {
		if l.Blocks {
			t.Errorf("canna cannot be reckoned for want of %s", l.Key)
		}
		found = found || l.Key == "rest.until"
	}
	if !found {
		t.Error("the rest of canna is not known, and nobody says so")
	}
	for _, l := range kind(t, "lettuce").Lacks() {
		if strings.HasPrefix(l.Key, "flower.") {
			t.Error("lettuce is asked when it flowers")
		}
	}
	for _, l := range kind(t, "ranunculus").Lacks() {
		if strings.HasPrefix(l.Key, "pot.") {
			t.Errorf("ranunculus stands in cells and is asked for %s", l.Key)
		}
	}
	if _, known := Lookup("edelweiss"); known {
		t.Error("edelweiss is known")
	}
	if _, known := k.Work("juggle"); known {
		t.Error("juggling takes minutes")
	}
}

func TestAGardensOwnFigure(t *testing.T) {
	k := kind(t, "dahlia")
	mine, err := k.With([]Override{{"sprout.sum", "180 C.d"}, {"cold.night", "50F"}, {"sprout.never", "5%"}, {"flower.late", "62 days"},
		{"start.depth", "2 in"}, {"bench.tray", "1 ft2"}, {"plant.density", "1 /ft²"}, {"sprout.spread", "0.3"}, {"light.enough", "14 mol/m2/d"}})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "sum", mine.Sprout.Sum, 180, 0)
	near(t, "night", mine.Lowest.Fahrenheit(), 50, 1e-9)
	near(t, "never", float64(mine.Sprout.Never), .05, 1e-12)
	depth, _ := mine.Figure("start.depth")
	near(t, "depth", depth.Value, 5.08, 1e-9)
	near(t, "tray", float64(mine.Bench.Tray), .09290304, 1e-9)
	near(t, "bed", float64(mine.Bench.InBed), .09290304, 1e-9)
	near(t, "late", mine.FlowerDays("late"), 62, 0)
	if f, _ := mine.Figure("sprout.sum"); f.Sure != Own || f.Source != "this garden's own" {
		t.Errorf("shown as %v", f)
	}
	if k.Sprout.Sum != 210 || kind(t, "dahlia").Sprout.Sum != 210 {
		t.Error("our own figure has changed")
	}
}

func TestOverridesRefused(t *testing.T) {
	for _, c := range []struct{ key, text, says string }{
		{"sprout.summ", "180 C.d", `the nearest is "sprout.sum"`},
		{"sprout.sum", "180", "has no unit"},
		{"sprout.sum", "180 kWh", "not a unit of this figure"},
		{"sprout.sum", "much", "not a number with its unit"},
		{"sprout.base", "9", "unit"},
		{"bench.tray", "0.3 m", "unit"},
		{"sprout.base", "90C", "lies outside"},
		{"sprout.base", "24C", "put the four in order"},
		{"sprout.never", "120%", "lies outside"},
		{"day.none", "15 h", "must be shorter"},
		{"bench.spaced", "0.01 m2", "needs at least the bench area"},
	} {
		_, err := kind(t, "dahlia").With([]Override{{c.key, c.text}})
		if err == nil || !strings.Contains(err.Error(), c.says) || !strings.Contains(err.Error(), "dahlia") {
			t.Errorf("%s = %q: %v, want a word of %q", c.key, c.text, err, c.says)
		}
	}
}

// TestLightGoesWithWarmth: a dahlia wants 8 mol at 18.5 °C, the middle of its usual day and
// night, and grows from 5.5 °C, so that 12 °C ask for half of that. Of a ranunculus neither
// is known.
func TestLightGoesWithWarmth(t *testing.T) {
	k := kind(t, "dahlia")
	for celsius, want := range map[float64]float64{18.5: 8, 12: 4, 5.5: 0, -3: 0, 25: 12} {
		if got := k.LightFor(celsius); math.Abs(got-want) > 1e-9 {
			t.Errorf("%g mol at %g °C, not %g", got, celsius, want)
		}
	}
	if got := kind(t, "ranunculus").LightFor(20); got != 0 {
		t.Errorf("a ranunculus asks for %g mol", got)
	}
}

func TestSharesStayShares(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k, _ := Lookup(rapid.SampledFrom(Kinds()).Draw(t, "kind"))
		hours := rapid.Float64Range(0, 24).Draw(t, "hours")
		longer := rapid.Float64Range(hours, 24).Draw(t, "longer")
		for _, s := range []float64{k.DayLengthShare(hours), k.LightShare(hours), k.PotShare(hours/12, quantity.Volume(longer)*quantity.Litre/4)} {
			if !(s >= 0 && s <= 1) {
				t.Fatalf("%s: share %g", k.Name, s)
			}
		}
		if k.DayLengthShare(longer) < k.DayLengthShare(hours) || k.LightShare(longer) < k.LightShare(hours) {
			t.Fatalf("%s: more light, less growth", k.Name)
		}
	})
}

func FuzzUnit(f *testing.F) {
	for _, s := range []string{"48F", "12 °C·d", "5%", "", "-", "1e9 d", "NaN", "..", "+3 h"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for u := range limits {
			v, err := u.parse(text)
			if err == nil && u.check(v) != nil {
				t.Errorf("%q as %s gives %g", text, u, v)
			}
		}
	})
}

// A bench cannot be filled with what has no size.
func TestEveryKindTakesRoom(t *testing.T) {
	for _, name := range Kinds() {
		b := kind(t, name).Bench
		if !(b.Tray > 0 && b.Tight > 0 && b.Spaced >= b.Tight && b.InBed > 0 && b.Meet > 0) {
			t.Errorf("%s takes %+v", name, b)
		}
	}
}
