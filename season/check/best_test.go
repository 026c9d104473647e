package check

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"eyeup/internal/highs"
	"eyeup/place"
	"eyeup/quantity"
	"eyeup/season"
	"eyeup/season/prove"
)

// best looks for the best plans of a brief.
func best(t *testing.T, b season.Brief) *season.Result {
	t.Helper()
	folder := filepath.Join(os.TempDir(), "eyeup-solver")
	if err := os.MkdirAll(folder, 0o700); err != nil {
		t.Fatal(err)
	}
	e, err := highs.Open(t.Context(), folder)
	if err != nil {
		t.Fatal(err)
	}
	defer e.Close()
	b.Ports.Solver, b.Ports.Relax = e.Solve, e.Relax
	r, err := prove.Prove(t.Context(), b, nil)
	if err != nil {
		t.Fatal(err)
	}
	return r.Season
}

// twoHouses is the example garden in six years with three lots of sixty clumps, its benches too small
// for them all, and a second, smaller house beside its glass, each held at one of two levels.
func twoHouses(b season.Brief) season.Brief {
	b.Given.Years, b.Given.Weather, b.Given.Stock, b.Given.Places = b.Given.Years[:6], b.Given.Weather[:6], slices.Clone(b.Given.Stock[:3]), slices.Clone(b.Given.Places)
	for i := range b.Given.Stock {
		b.Given.Stock[i].Count, b.Given.Stock[i].Plant, b.Given.Stock[i].Reserve = 60, 50, 10
	}
	at := slices.IndexFunc(b.Given.Places, func(p season.Place) bool { return p.Sort == season.Glass })
	glass := &b.Given.Places[at]
	level, held := glass.Level, glass.Levels
	glass.Level, glass.Levels = []quantity.Temperature{level[0], level[2], level[4]}, []place.Setting{held[0], held[2], held[4]}
	glass.Room /= 2
	small := *glass
	small.Name, small.Room = "small glass", glass.Room/2
	b.Given.Places = slices.Insert(b.Given.Places, at+1, small)
	return b
}

// TestBestOfTwoHousesHold replays the best plans of two heated houses, those on the price of early too
// with their decisions held, and follows the one that heats most while the garden changes under it.
func TestBestOfTwoHousesHold(t *testing.T) {
	b := twoHouses(exampleBrief(t))
	r := best(t, b)
	hold(t, b, r.Plans)
	var most *season.Decisions
	for _, e := range r.Early {
		if p := follow(t, b, *e.Decisions); len(p.Otherwise) > 0 {
			t.Errorf("%q", p.Otherwise)
		}
		if most == nil || len(e.Decisions.Places) >= len(most.Places) {
			most = e.Decisions
		}
	}
	house := func(name string) int {
		return slices.IndexFunc(most.Places, func(h season.Held) bool { return h.Place == name })
	}
	first, second := house("glass"), house("small glass")
	if first < 0 || second < 0 {
		t.Fatalf("not both houses are heated: %+v", most.Places)
	}
	followChanged(t, b, *most, []changedGarden{
		{"the second a little warmer", "", func(_ *season.Brief, d *season.Decisions) {
			d.Places[second].Level = quantity.Celsius(d.Places[second].Level.Celsius() + 0.9)
		}},
		{"steps in both", "", func(_ *season.Brief, d *season.Decisions) {
			for _, at := range []int{first, second} {
				h := &d.Places[at]
				h.Then = &season.LevelStep{From: d.OutFrom.AddDays(-14), Level: quantity.Celsius(h.Level.Celsius() - 1.3)}
			}
		}},
		{"both put out too soon", "not from", func(_ *season.Brief, d *season.Decisions) {
			d.Places[first].To, d.Places[second].To = d.Places[first].To.AddDays(-14), d.Places[second].To.AddDays(-21)
		}},
		{"the second is gone", "no place of the garden", func(b *season.Brief, _ *season.Decisions) {
			b.Given.Places = slices.DeleteFunc(b.Given.Places, func(p season.Place) bool { return p.Name == "small glass" })
		}},
		{"the heater of the first is gone", "nothing to heat it", func(b *season.Brief, _ *season.Decisions) {
			at := slices.IndexFunc(b.Given.Places, func(p season.Place) bool { return p.Name == "glass" })
			b.Given.Places[at].Levels, b.Given.Places[at].Level = []place.Setting{place.Off()}, []quantity.Temperature{quantity.Unknown()}
		}},
		{"other years", "", func(b *season.Brief, _ *season.Decisions) {
			all := exampleBrief(t)
			b.Given.Years, b.Given.Weather = all.Given.Years[6:12], all.Given.Weather[6:12]
		}},
	})
}
