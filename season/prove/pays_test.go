package prove

import (
	"context"
	"math"
	"testing"

	"eyeup/season"
	"eyeup/solve"
)

// paysIn is from how many plants on heat pays in a brief.
func paysIn(t *testing.T, b season.Brief) *season.HeatPays {
	t.Helper()
	b.Asked.Pays = true
	e := proved(t, b).Season.Pays
	if e == nil {
		t.Fatal("no plan heats")
	}
	return e
}

// TestHeatPaysFromSoManyPlants looks for the number of plants from which on heat pays, and holds the
// best plans of just so many, and of one number at which it does not, with and without heat against
// each other, as cost and as bound. Dearer heat pays later, dearer flowers sooner.
func TestHeatPaysFromSoManyPlants(t *testing.T) {
	b := crowded(t)
	e := paysIn(t, b)
	if e.From == nil || e.Tried > mostNumbers || e.Plants != 180 || *e.From <= e.NotWith {
		t.Fatalf("%+v", e)
	}
	if apart := *e.From - e.NotWith; apart > int(math.Ceil(float64(e.Plants)/128))+1 {
		t.Errorf("it pays with %d and not with %d: %d apart", *e.From, e.NotWith, apart)
	}
	p := provedCrowd(t).prover
	p.problem.ctx = context.Background()
	at, _ := p.problem.planner.AssignUsual()
	for i, level := range p.problem.planner.Given.Places[2].Level {
		if level == e.Held[0].Level {
			at[2] = i
		}
	}
	best := func(plants int, root season.Holds) *provedPlan {
		one := p.withPlants(plants, nil)
		best, err := one.prove(e.WeekWorth, "", nil, func() []*node { return []*node{one.root(one.subproblem(root))} })
		if err != nil {
			t.Fatal(err)
		}
		return best
	}
	cost := func(f *solution) float64 { p.weight = e.WeekWorth; return p.costOf(f) }
	off := make(season.Levels, len(p.problem.planner.Given.Places))
	with, without := best(*e.From, season.Steady(at)), best(*e.From, season.Steady(off))
	if !p.heats(with.best) || cost(with.best) > cost(without.best)+1e-9 {
		t.Errorf("with %d plants heat costs %.2f, none %.2f", *e.From, cost(with.best), cost(without.best))
	}
	with, without = best(e.NotWith, season.Steady(at)), best(e.NotWith, season.Steady(off))
	if p.heats(with.best) && cost(without.best) > cost(with.best)+1e-9 {
		t.Errorf("with %d plants heat costs %.2f, none %.2f", e.NotWith, cost(with.best), cost(without.best))
	}
	dear := crowded(t)
	dear.Given.Places[2].Energy.Amount *= 2
	if later := paysIn(t, dear); later.From == nil || *later.From <= *e.From {
		t.Errorf("at twice the price heat pays from %v plants on, at once from %d", later.From, *e.From)
	}
}

// TestScaledKeepsShares scales groups: all plants are there, and none of a group is more than one
// off its share.
func TestScaledKeepsShares(t *testing.T) {
	groups := []*season.Group{{Want: 7}, {Want: 100}, {Want: 1}, {Want: 33}}
	for plants := range 600 {
		all := 0
		for i, g := range scaled(groups, plants) {
			all += g.Want
			if share := float64(groups[i].Want*plants) / 141; math.Abs(float64(g.Want)-share) >= 1 {
				t.Fatalf("of %d plants %d of a group whose share is %.2f", plants, g.Want, share)
			}
		}
		if all != plants {
			t.Fatalf("%d plants of %d", all, plants)
		}
	}
}

// TestHeatThatNeverPays asks where heat costs more than any flower brings.
func TestHeatThatNeverPays(t *testing.T) {
	b := crowded(t)
	b.Given.Places[2].Energy.Amount = 500
	if e := paysIn(t, b); e.From != nil || e.NotWith != mostTimes*e.Plants || e.Tried != 2 {
		t.Errorf("%+v", e)
	}
	b.Asked.Pays, b.Ports.Relax, b.Ports.Solver = true, nil, solve.Plain
	if r, err := Prove(context.Background(), b, nil); err != nil || r.Season.Pays == nil || r.Season.Pays.From != nil {
		t.Errorf("by plain arithmetic %v, %v", r, err)
	}
}
