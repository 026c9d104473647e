package prove

import (
	"testing"

	"eyeup/place"
	"eyeup/season"
)

// drawn returns the stretched days of all plants of a plan's portions.
func drawn(f *solution) float64 {
	days := 0.0
	for g, counts := range f.counts {
		for i, n := range counts {
			days += float64(n) * f.sub.choices[g][i].StretchedDays()
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
	free := proved(t, b).proofs[season.NoHeat]
	b.Given.Prices.Stretched = season.Price{Amount: 0.2, Known: true}
	r := proved(t, b)
	priced := r.proofs[season.NoHeat]
	if before, after := drawn(free.best), drawn(priced.best); !(after < before) {
		t.Errorf("%.0f stretched days where each costs, %.0f where none does", after, before)
	}
	want := priced.best.money() + 0.2*drawn(priced.best) - priced.weight*priced.best.gain
	if got := r.prover.costAt(priced); !(got-want < 1e-6 && want-got < 1e-6) {
		t.Errorf("it counts for %v, not %v", got, want)
	}
	p := r.prover
	all := p.root(p.subproblem(season.Steady(make(season.Levels, len(b.Given.Places))))).listAllowed()
	s := p.problem.newProgramme(all.sub, all.allowed, 1, 0)
	for i, c := range s.columns {
		if c.group < 0 || c.choice < 0 {
			continue
		}
		o := all.sub.choices[c.group][c.choice]
		if got, want := s.Columns[i].Cost, o.Money+o.BenchHeat+0.2*o.StretchedDays()-o.Gain; !(got-want < 1e-9 && want-got < 1e-9) {
			t.Fatalf("%s from day %d counts for %v, not %v", o.Route(), o.Start(), got, want)
		}
	}
}
