package season

import (
	"context"
	"math"
	"reflect"
	"slices"
	"testing"
)

// stepping is a prover of a few years with glass of three levels, and the ways through the
// glass by level.
func stepping(t testing.TB) *prover {
	t.Helper()
	b := crowded(t)
	b.Years, b.Weather = b.Years[:4], b.Weather[:4]
	return makerOf(t, b).newProver(context.Background(), nil)
}

// TestStepsAreStitched leads plants through the glass with a step, going on from how far they
// had come by its day, and holds that to leading them from the start through the glass as it
// is spliced.
func TestStepsAreStitched(t *testing.T) {
	p := stepping(t)
	const glass = 2
	stitched, ruledOut := 0, 0
	for _, g := range p.groups {
		b := g.batches[0]
		ways := func(level int) []*outcome { return p.outcomesThrough(b, glass, levels{0, 0, level, 0}) }
		for _, h := range p.allHolds(glass) {
			if !h.steps() {
				continue
			}
			higher, lower := ways(h.level), ways(h.lower)
			for i := range higher {
				w := &steppedWay{prover: p, batch: b, place: glass, base: p.weeksOf(p.baseline(b)), atLevel: make([]*wayAt, h.level+1)}
				w.atLevel[h.level], w.atLevel[h.lower] = &wayAt{outcome: higher[i]}, &wayAt{outcome: lower[i]}
				high, low := w.atLevel[h.level], w.withSafeDayOf(h.lower, higher[i].route)
				before, after := high, low
				if h.up {
					before, after = low, high
				}
				for at, day := range p.stepDays {
					got, seam := w.stepOn(at, day, before, after, high)
					want := p.steppedOn(b, h, day, higher[i], low.outcome)
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
	p := stepping(t)
	const glass = 2
	for _, h := range p.allHolds(glass) {
		if !h.steps() {
			continue
		}
		first, second := p.climate(glass, p.setting(glass, h.level)), p.climate(glass, p.setting(glass, h.lower))
		if h.up {
			first, second = second, first
		}
		b := p.heater(heaterKey{place: glass}, h)
		used := span{p.outFrom - 100, p.outFrom + 10}
		for _, step := range p.stepDays {
			years := make([]float64, len(p.Weather))
			for year := range years {
				for day := used.from - warming; day < used.to; day++ {
					from := first
					if day >= step {
						from = second
					}
					years[year] += from.years[year].given[day]
				}
			}
			slices.Sort(years)
			want := years[(len(years)-1)/2] * p.Places[glass].Energy.Amount
			if got := b.cost(used, step); math.Abs(got-want) > 1e-6 || want <= 0 {
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
	all := m.options(b, levels{0, 0, 1, 0})
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
	all := m.options(b, levels{0, 0, 1, 0})
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
