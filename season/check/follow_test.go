package check

import (
	"slices"
	"strings"
	"testing"

	"eyeup/civil"
	"eyeup/place"
	"eyeup/quantity"
	"eyeup/season"
	"eyeup/stock"
)

// follow follows the decisions of a plan and replays what comes of it.
func follow(t *testing.T, b season.Brief, d season.Decisions) *season.Plan {
	t.Helper()
	r, err := season.Follow(b, d)
	if err != nil {
		t.Fatal(err)
	}
	b.Asked.OutFrom = d.OutFrom
	hold(t, b, r.Plans)
	return r.Plans[0]
}

// says holds that some line of a plan's Otherwise has some words.
func says(t *testing.T, p *season.Plan, words string) {
	t.Helper()
	if !slices.ContainsFunc(p.Otherwise, func(s string) bool { return strings.Contains(s, words) }) {
		t.Errorf("nothing of %q in %q", words, p.Otherwise)
	}
}

// changedGarden is a change of a garden, or of what is decided there, and what is told of it; nothing
// where all is held all the same.
type changedGarden struct {
	name, says string
	change     func(*season.Brief, *season.Decisions)
}

// followChanged follows what is decided in a garden while it changes in several ways.
func followChanged(t *testing.T, b season.Brief, d season.Decisions, all []changedGarden) {
	t.Helper()
	for _, one := range all {
		t.Run(one.name, func(t *testing.T) {
			b, d := b, d
			b.Given.Stock, b.Given.Places, d.Batches, d.Places = slices.Clone(b.Given.Stock), slices.Clone(b.Given.Places), slices.Clone(d.Batches), slices.Clone(d.Places)
			one.change(&b, &d)
			p := follow(t, b, d)
			if one.says != "" {
				says(t, p, one.says)
			} else if len(p.Otherwise) > 0 {
				t.Errorf("not held: %q", p.Otherwise)
			}
		})
	}
}

// TestFollowedPlansHold follows the earliest plan of the example garden while the garden changes
// under it: what is decided is held as far as can be, what can't is told, and what comes of it
// is a plan that holds.
func TestFollowedPlansHold(t *testing.T) {
	b := fewYears(exampleBrief(t))
	b.Given.Stock, b.Given.Places = slices.Clone(b.Given.Stock), slices.Clone(b.Given.Places)
	plan := plansOf(t, b)[2]
	d := *plan.Decisions
	if again := follow(t, b, d); len(again.Otherwise) > 0 || again.Cost.Total != plan.Cost.Total {
		t.Errorf("nothing changed, and it costs %.2f, not %.2f: %q", again.Cost.Total, plan.Cost.Total, again.Otherwise)
	}
	lot := func(how season.How) int {
		return slices.IndexFunc(b.Given.Stock, func(h stock.Holding) bool {
			return slices.ContainsFunc(d.Batches, func(one season.Decided) bool { return one.Code == h.Code && one.How == how && one.Way.First != "" })
		})
	}
	glass := slices.IndexFunc(b.Given.Places, func(p season.Place) bool { return p.Sort == season.Glass })
	followChanged(t, b, d, []changedGarden{
		{"a lot is gone", "none is left", func(b *season.Brief, _ *season.Decisions) {
			b.Given.Stock = slices.Delete(b.Given.Stock, lot(season.Whole), lot(season.Whole)+1)
		}},
		{"two of a lot are lost", "are there of the", func(b *season.Brief, _ *season.Decisions) {
			for i := range b.Given.Stock {
				b.Given.Stock[i].Count = max(1, b.Given.Stock[i].Count-2)
			}
		}},
		{"another level than the garden has", "", func(_ *season.Brief, d *season.Decisions) {
			d.Places[0].Level = quantity.Celsius(d.Places[0].Level.Celsius() - 0.7)
		}},
		{"a step", "", func(_ *season.Brief, d *season.Decisions) {
			d.Places[0].Then = &season.LevelStep{From: d.OutFrom.AddDays(-28), Level: quantity.Celsius(d.Places[0].Level.Celsius() - 0.7)}
		}},
		{"heat that is put out too soon", "not from", func(_ *season.Brief, d *season.Decisions) {
			d.Places[0].To = d.Places[0].To.AddDays(-21)
		}},
		{"the heater is gone", "nothing to heat it", func(b *season.Brief, _ *season.Decisions) {
			b.Given.Places[glass].Levels, b.Given.Places[glass].Level = []place.Setting{place.Off()}, []quantity.Temperature{quantity.Unknown()}
		}},
		{"the glass is gone", "no place of the garden", func(b *season.Brief, _ *season.Decisions) {
			house := b.Given.Places[glass].Name
			b.Given.Places = slices.DeleteFunc(b.Given.Places, func(p season.Place) bool { return p.Name == house || p.In == house })
		}},
		{"planted out a fortnight later", "", func(_ *season.Brief, d *season.Decisions) {
			d.OutFrom = d.OutFrom.AddDays(14)
			for i := range d.Batches {
				if !d.Batches[i].OutFrom.IsZero() {
					d.Batches[i].OutFrom = d.Batches[i].OutFrom.AddDays(14)
				}
			}
		}},
		{"newer weather", "", func(b *season.Brief, _ *season.Decisions) {
			b.Given.Weather, b.Given.Years = b.Given.Weather[3:], b.Given.Years[3:]
		}},
		{"half of it begun", "", func(b *season.Brief, _ *season.Decisions) {
			b.Given.Today = civil.MustOn(2027, 5, 20)
		}},
	})
}

// TestLevelsAgreeToTheDay follows the earliest plan of the example garden at levels between those of
// its glass. At some of them a hot week ends the flowers of ranunculus in one year if they begin on
// the twentieth of June and not if they begin on the day after: a tenth of a day tells.
func TestLevelsAgreeToTheDay(t *testing.T) {
	b := fewYears(exampleBrief(t))
	d := *plansOf(t, b)[2].Decisions
	own := d.Places[0].Level.Celsius()
	for _, above := range []float64{0.3, 0.6, 0.9} {
		d.Places = slices.Clone(d.Places)
		d.Places[0].Level = quantity.Celsius(own + above)
		follow(t, b, d)
	}
}
