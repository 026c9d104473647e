package season

import (
	"testing"

	"eyeup/place"
)

// drawn returns the stretched days of all plants of a plan's portions.
func drawn(f *solution) float64 {
	days := 0.0
	for _, p := range f.portions {
		days += float64(p.count) * p.drawn
	}
	for g, counts := range f.counts {
		for i, n := range counts {
			days += float64(n) * f.sub.choices[g][i].drawn
		}
	}
	return days
}

// TestStretchedDaysCount: where each stretched day of a plant has a price, the best plan at
// the same worth of flowers has fewer of them than where it has none; what it comes to is
// its money, less its flowers, and so much for each.
func TestStretchedDaysCount(t *testing.T) {
	b := crowded(t)
	room := b.Given.Places[1].Model.(place.Steady)
	room.Lamps = &place.Lamps{Area: 1, Light: 120, Hours: 14, Power: 120} // 6 mol, and it is 21 °C there
	b.Given.Places[1].Model = room
	b.Given.Stock = b.Given.Stock[1:2]
	b.Given.Stock[0].Count, b.Given.Stock[0].Plant, b.Given.HoursPerWeek = 12, 12, 20
	free := proved(t, b).proofs[NoHeat]
	b.Given.Prices.Stretched = Price{0.2, true}
	r := proved(t, b)
	priced := r.proofs[NoHeat]
	if before, after := drawn(free.best), drawn(priced.best); !(after < before) {
		t.Errorf("%.0f stretched days where each costs, %.0f where none does", after, before)
	}
	want := priced.best.money() + 0.2*drawn(priced.best) - priced.weight*priced.best.gain
	if got := r.prover.costAt(priced); !(got-want < 1e-6 && want-got < 1e-6) {
		t.Errorf("it counts for %v, not %v", got, want)
	}
	p := r.prover
	all := p.root(p.subproblem(steady(make(levels, len(b.Given.Places))))).listAllowed()
	s := p.problem.planner.newProgramme(p.problem.limits, p.problem.groups, all.sub, all.allowed, 1, 0)
	for i, c := range s.columns {
		if c.group < 0 || c.choice < 0 {
			continue
		}
		o := all.sub.choices[c.group][c.choice]
		if got, want := s.Columns[i].Cost, o.money+o.benchHeat+0.2*o.drawn-o.gain; !(got-want < 1e-9 && want-got < 1e-9) {
			t.Fatalf("%s from day %d counts for %v, not %v", o.route.name, o.start, got, want)
		}
	}
}

// TestDarkRoomStretches: the longer a plant waits in a room without light, the more of its
// days are stretched; none are in the open, and of equals the sturdier is put first.
func TestDarkRoomStretches(t *testing.T) {
	b := waterville(t)
	room := b.Given.Places[1].Model.(place.Steady)
	room.Lamps = nil
	b.Given.Places[1].Model, b.Given.Places[1].Lit = room, 0
	m := makerOf(t, b)
	all := m.options(m.batches[0], levels{0, 0, 3, 0})
	for _, o := range of(all, "room, then glass") {
		for year, f := range o.fates() {
			if dark := f.handOn - f.up - 1; f.handOn <= f.out && f.stretched < dark && f.out != never {
				t.Fatalf("started on day %d, in %d: %d stretched days, %d of them in the dark", o.start, m.Given.Years[year], f.stretched, dark)
			}
		}
	}
	for _, o := range of(all, "straight into the ground") {
		if o.drawn != 0 {
			t.Errorf("in the open %.1f days are stretched", o.drawn)
		}
	}
	sturdy, drawn := *all[0], *all[0]
	drawn.drawn, drawn.start = 20, drawn.start+7
	sturdy.drawn = 0
	if first := byGain([]*outcome{&drawn, &sturdy})[0]; first != &sturdy {
		t.Error("of two that gain alike the one with more stretched days is first")
	}
}
