package season

import (
	"math"
	"reflect"
	"slices"
	"testing"
)

// stepping is a prover of a few years with glass of three levels, and the ways through the
// glass by level.
func stepping(t testing.TB) *Columns {
	t.Helper()
	b := crowded(t)
	b.Given.Years, b.Given.Weather = b.Given.Years[:4], b.Given.Weather[:4]
	m := makerOf(t, b)
	return NewColumns(m, m.Groups())
}

// TestStepsAreStitched leads plants through the glass with a step, going on from how far they
// had come by its day, and holds that to leading them from the start through the glass as it
// is spliced.
func TestStepsAreStitched(t *testing.T) {
	c := stepping(t)
	const glass = 2
	stitched, ruledOut := 0, 0
	for _, g := range c.groups {
		b := g.batches[0]
		ways := func(level int) []*outcome { return c.outcomesThrough(b, glass, Levels{0, 0, level, 0}) }
		for _, h := range c.planner.AllHolds(glass) {
			if !h.Steps() {
				continue
			}
			higher, lower := ways(h.Level), ways(h.Lower)
			for i := range higher {
				w := &steppedWay{columns: c, batch: b, place: glass, base: c.planner.weeksOf(c.planner.baseline(b)), atLevel: make([]*wayAt, h.Level+1)}
				w.atLevel[h.Level], w.atLevel[h.Lower] = &wayAt{outcome: higher[i]}, &wayAt{outcome: lower[i]}
				high, low := w.atLevel[h.Level], w.withSafeDayOf(h.Lower, higher[i].route)
				before, after := high, low
				if h.Up {
					before, after = low, high
				}
				for at, day := range c.StepDays {
					got, seam := w.stepOn(at, day, before, after, high)
					want := c.steppedOn(b, h, day, higher[i], low.outcome)
					switch {
					case got == nil:
						ruledOut++
						if !b.life.isTooCold(&want.option) {
							t.Fatalf("%s, %+v on day %d: ruled out", b.id, h, day)
						}
					case !reflect.DeepEqual(got.fates(), want.fates()) || math.Abs(got.gain-want.gain) > 1e-9:
						t.Fatalf("%s by %s from day %d, %+v on day %d: %v, led from the start %v", b.id, higher[i].route.name, higher[i].start, h, day, got.fates(), want.fates())
					case got != before.outcome && got != after.outcome:
						stitched++
						(steppedOutcome{outcome: got, split: seam}).release()
						if !reflect.DeepEqual(got.fates(), want.fates()) {
							t.Fatalf("%s by %s, %+v on day %d: found again %v, led from the start %v", b.id, higher[i].route.name, h, day, got.fates(), want.fates())
						}
						if got.route.night != min(high.route.night, low.route.night) {
							t.Fatalf("%+v: its coldest level is %g", h, got.route.night)
						}
					}
				}
			}
		}
	}
	if stitched < 50 {
		t.Errorf("only %d ways were stitched, %d ruled out", stitched, ruledOut)
	}
}

// TestHeatOfAStep adds up day by day what a house with a step burns, in the middle year.
func TestHeatOfAStep(t *testing.T) {
	c := stepping(t)
	const glass = 2
	for _, h := range c.planner.AllHolds(glass) {
		if !h.Steps() {
			continue
		}
		first, second := c.planner.climate(glass, c.planner.setting(glass, h.Level)), c.planner.climate(glass, c.planner.setting(glass, h.Lower))
		if h.Up {
			first, second = second, first
		}
		b := c.Heater(HeaterKey{Place: glass}, h)
		used := Days{c.planner.OutFrom - 100, c.planner.OutFrom + 10}
		for _, step := range c.StepDays {
			years := make([]float64, len(c.planner.Given.Weather))
			for year := range years {
				for day := used.From - Warming; day < used.To; day++ {
					from := first
					if day >= step {
						from = second
					}
					years[year] += from.years[year].given[day]
				}
			}
			slices.Sort(years)
			want := years[(len(years)-1)/2] * c.planner.Given.Places[glass].Energy.Amount
			if got := b.Cost(used, step); math.Abs(got-want) > 1e-6 || want <= 0 {
				t.Errorf("%+v on day %d costs %g, day by day %g", h, step, got, want)
			}
		}
	}
}

// TestPlantingOutTellsWaysApart lives through one way with two days of planting out: the second
// is not taken for the first.
func TestPlantingOutTellsWaysApart(t *testing.T) {
	m := makerOf(t, crowded(t))
	b := m.batches[0]
	all := m.options(b, Levels{0, 0, 1, 0})
	at := slices.IndexFunc(all, func(o *outcome) bool { return !o.route.direct && !o.route.stays })
	o := all[at].option
	first := m.liveOnce(b.life, o, m.baseline(b))
	o.outFrom += 28
	if second := m.liveOnce(b.life, o, m.baseline(b)); reflect.DeepEqual(second.fates(), first.fates()) {
		t.Error("planted out four weeks later, the fates are the same")
	}
}

// TestHandingOnTellsWaysApart lives through one way with two days from which its bright place is
// safe: the second is not taken for the first.
func TestHandingOnTellsWaysApart(t *testing.T) {
	m := makerOf(t, crowded(t))
	b := m.batches[0]
	all := m.options(b, Levels{0, 0, 1, 0})
	at := slices.IndexFunc(all, func(o *outcome) bool {
		return !o.route.direct && o.route.around < 0 && o.route.firstPlace != o.route.onPlace && o.fates()[0].handOn < o.fates()[0].out
	})
	o := all[at].option
	first, way := m.liveOnce(b.life, o, m.baseline(b)), *o.route
	way.safe = map[float64]int{b.life.harm: first.fates()[0].handOn + 14}
	o.route = &way
	if second := m.liveOnce(b.life, o, m.baseline(b)); reflect.DeepEqual(second.fates(), first.fates()) {
		t.Error("its bright place is safe a fortnight later, and the fates are the same")
	}
}

// steppedOn leads a way through the glass stepped on a day, hour by hour as it is spliced.
func (c *Columns) steppedOn(b *batch, h Hold, day int, higher, lower *outcome) *outcome {
	before, after := higher, lower
	if h.Up {
		before, after = lower, higher
	}
	way, o := *higher.route, higher.option
	if way.firstPlace == 2 {
		way.first = splice(before.route.first, after.route.first, day)
	}
	if way.onPlace == 2 {
		way.on = splice(before.route.on, after.route.on, day)
	}
	way.night, o.route = min(before.route.night, after.route.night), &way
	return live(b.life, o, c.planner.weeksOf(c.planner.baseline(b)), c.planner.ends)
}

// TestBeatenWaysAreLeftOut gives every way through the glass a twin that costs more, takes more or
// gains less, and holds that the twins are left out and no way is that nothing beats.
func TestBeatenWaysAreLeftOut(t *testing.T) {
	c := stepping(t)
	const glass = 2
	seen := 0
	for _, h := range c.planner.AllHolds(glass) {
		key := waysKey{place: glass, hold: h, basis: float64(c.planner.Asked.Fits)}
		kept, beside := c.waysThrough(key), c.waysThrough(key.noPlace())
		for i, g := range c.groups {
			b := g.batches[0]
			all := c.choicesByHold(b, key, []Hold{h}, c.outcomesByLevel(b, key, []Hold{h}))[h]
			for k := range all {
				beats := func(one Choice) bool { return one.beats(&all[k]) }
				if !slices.ContainsFunc(kept.Choices[i], beats) && !slices.ContainsFunc(beside.Choices[i], beats) {
					t.Fatalf("%+v: %s from day %d is left out, and nothing beats it", h, all[k].Route(), all[k].Start())
				}
			}
			var twins []Choice
			for k, one := range kept.Choices[i] {
				twin := one
				switch k % 3 {
				case 0:
					twin.Money++
				case 1:
					twin.Gain--
				default:
					twin.Takes = append([]Take{{Row: -1, Amount: 1}}, one.Takes...)
				}
				twins = append(twins, twin, one)
			}
			seen += len(kept.Choices[i])
			if got := c.undominated(twins, beside.Choices[i]); len(got) != len(kept.Choices[i]) {
				t.Fatalf("%+v, %s: %d ways stay beside their worse twins, not %d", h, g.Name(), len(got), len(kept.Choices[i]))
			}
		}
	}
	if seen < 50 {
		t.Errorf("only %d ways, which shows little", seen)
	}
}
