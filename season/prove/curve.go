package prove

import (
	"cmp"
	"slices"

	"eyeup/season"
)

// Points on the price of early: most, and how much dearer than usual the last one may count
// a week of flower. The first counts it for so little that only what is nearly free is done.
const (
	mostPoints = 6 // as two provers find them, two at a time
	dearest    = 10.0
	cheapest   = 0.02
)

// provedPlan is the best plan at one weight, with its bound.
type provedPlan struct {
	weight  float64
	best    *solution
	steady  *solution // the best at constant levels, whose days those of a step are near
	bound   float64
	leaves  []*node
	pool    []*duals
	stopped bool // it was stopped before its bound was near
}

// proveAll looks for the best plan at a weight at any levels, and with one step of them.
func (p *prover) proveAll(weight float64, name string, seeds []*solution) (*provedPlan, error) {
	return p.prove(weight, name, seeds, p.allRoots, func() []*node { return p.stepRoots(p.incumbent) })
}

// prove looks for the best plan at a weight within some nodes, one lot of them after the
// other, and for its bound.
func (p *prover) prove(weight float64, name string, seeds []*solution, open ...func() []*node) (*provedPlan, error) {
	p.setWeight(weight, name)
	for _, f := range seeds {
		p.consider(f)
	}
	one := &provedPlan{weight: weight}
	for i, nodes := range open {
		roots := nodes()
		if i == 0 {
			p.startDuals(roots)
		} else if p.incumbent != nil {
			p.guide(roots)
		}
		roots, p.leaves, p.spent = append(roots, p.leaves...), nil, 0
		if err := p.searchAndSolve(roots); err != nil {
			return nil, err
		}
		if one.steady == nil {
			one.steady = p.incumbent
		}
	}
	bound := p.leastBound()
	p.progress.Bound = bound
	p.reportProgress()
	p.dropUnusedMixes(p.leaves...)
	one.best, one.bound, one.leaves, one.pool, one.stopped = p.incumbent, bound, p.leaves, slices.Clone(p.pool), !p.isGapClosed(bound)
	return one, nil
}

// allRoots is the tree's roots: all levels of the heated places.
func (p *prover) allRoots() []*node {
	var roots []*node
	for _, at := range p.problem.planner.AllLevels() {
		roots = append(roots, p.root(p.subproblem(season.Steady(at))))
	}
	return roots
}

// nearDays is how many days sooner or later than in the best plan at one level all that is on
// is switched on and off where a level steps.
const nearDays = 14

// stepRoots is the tree's roots for one step of level, on any of the days for it, in one place
// that a plan heats, with all that is on switched on and off within nearDays of the plan's days.
func (p *prover) stepRoots(f *solution) []*node {
	if f == nil {
		return nil
	}
	var roots []*node
	for i, of := range p.problem.columns.HeaterKeys {
		if of.Lamps || !slices.Contains(p.problem.columns.Open, of.Place) || f.used[i].From == season.Never {
			continue
		}
		for _, h := range p.problem.planner.AllHolds(of.Place) {
			if h.Steps() {
				at := slices.Clone(f.at)
				at[of.Place] = h
				roots = append(roots, p.heatedNear(p.subproblem(at), f.used, nearDays))
			}
		}
	}
	return roots
}

// onlySettingOf is the one setting of a plan: what is on, and when, is settled and paid for.
func (p *prover) onlySettingOf(f *solution) func() []*node {
	return func() []*node { return []*node{p.settingOf(p.subproblem(f.at), f)} }
}

// heatedNear is the node of a subproblem in which all that is on is switched on and off on certain days, or
// so many sooner or later.
func (p *prover) heatedNear(in *subproblem, used []season.Days, apart int) *node {
	one := *in
	one.onDays, one.offDays = nil, nil
	for i, days := range used {
		apart := apart
		if in.heaters[i].Lamps {
			apart = 0
		}
		begins, ends := near(in.onDays[i], days.From, apart), near(in.offDays[i], days.To, apart)
		slices.Reverse(begins)
		one.onDays, one.offDays = append(one.onDays, begins), append(one.offDays, ends)
	}
	return p.root(&one)
}

// near returns, in order, a day and those of a list that are not too far from it.
func near(all []int, day, apart int) []int {
	some := slices.DeleteFunc(slices.Clone(all), func(d int) bool { return day == season.Never || d < day-apart || d > day+apart })
	some = append(some, day)
	slices.Sort(some)
	return slices.Compact(some)
}

// settingOf is the node of a subproblem that has the one setting of a plan.
func (p *prover) settingOf(in *subproblem, f *solution) *node {
	n := p.heatedNear(in, f.used, 0)
	r := dayRanges{n.on, n.off, n.step}
	for i, day := range f.stepDay {
		if at := slices.Index(n.sub.stepDays[i], day); at >= 0 {
			r[2][i] = [2]int{at, at}
		}
	}
	return p.newNode(n.sub, r).listAllowed()
}

// curve proves plans along the price of early: the cheapest, the earliest, that at the garden's
// own worth of a week, and others where a straight line between two neighbours lies furthest from
// any plan known, two at a time. Each of these is the best at the weight that its neighbours make
// equal.
func (p *prover) curve(s *provedSeason, own float64, seeds []*solution) error {
	const name = "the price of early"
	least, err := p.proveAll(own*cheapest, name, append(seeds, s.early.best))
	if err != nil {
		return err
	}
	s.second = p.second()
	all, tried := []*provedPlan{s.early, least}, map[[2]*solution]bool{}
	for weights := []float64{own}; ; weights = nil {
		known := distinct(all)
		for len(known)+len(weights) < mostPoints && len(weights) < 2 {
			weight, pair, found := widestGap(known, tried)
			if !found {
				break
			}
			tried[pair] = true
			weights = append(weights, weight)
		}
		if len(weights) == 0 || len(all) > 2 && p.problem.ctx.Err() != nil {
			s.curve = known
			return nil
		}
		for _, one := range all {
			seeds = append(seeds, one.best)
		}
		more, err := p.provePair(s.second, weights, name, seeds)
		if err != nil {
			return err
		}
		all = append(all, more...)
	}
}

// distinct sorts plans by their money and leaves out what another beats or equals in both
// money and weeks of flower.
func distinct(all []*provedPlan) []*provedPlan {
	sorted := slices.Clone(all)
	slices.SortStableFunc(sorted, func(a, b *provedPlan) int {
		return cmp.Or(cmp.Compare(a.best.money(), b.best.money()), cmp.Compare(b.best.gain, a.best.gain))
	})
	var kept []*provedPlan
	for _, one := range sorted {
		if len(kept) == 0 || one.best.gain > kept[len(kept)-1].best.gain+1e-9 {
			kept = append(kept, one)
		}
	}
	return kept
}

// widestGap returns the neighbours between which most could lie, and the weight at which they
// are worth the same.
func widestGap(all []*provedPlan, tried map[[2]*solution]bool) (weight float64, pair [2]*solution, is bool) {
	far := 0.0
	for i := 1; i < len(all); i++ {
		a, b := all[i-1].best, all[i].best
		money, gain := b.money()-a.money(), b.gain-a.gain
		if two := [2]*solution{a, b}; money > 0 && gain > 0 && !tried[two] && money*gain > far {
			far, weight, pair, is = money*gain, money/gain, two, true
		}
	}
	return weight, pair, is
}
