package prove

import (
	"cmp"
	"math"
	"slices"

	"eyeup/season"
)

// How many numbers of plants are tried, and how many times those of the garden at most.
const (
	mostNumbers = 8
	mostTimes   = 4
)

// heatPays finds from how many plants on it pays to heat as the best plan does that holds each
// house at one level and counts a week of flower at the garden's own worth, or as is usual where
// that plan does not heat; nil where neither does.
func (p *prover) heatPays(s *provedSeason, own float64) (*season.HeatPays, error) {
	of := s.usual.best
	for _, one := range s.curve {
		if one.weight == own && one.steady != nil && p.heats(one.steady) {
			of = one.steady
		}
	}
	if !p.heats(of) {
		return nil, nil
	}
	e := &season.HeatPays{WeekWorth: own, Held: []season.Held{}}
	for i, slot := range p.problem.columns.HeaterKeys {
		if of.used[i].From != season.Never && !slot.Lamps && p.problem.planner.IsOpen(slot.Place) {
			e.Held = append(e.Held, p.heldIn(of, i))
		}
	}
	for _, g := range p.problem.groups {
		e.Plants += g.Want
	}
	return e, p.bisect(e, of.at)
}

// heats reports whether a plan heats a house.
func (p *prover) heats(f *solution) bool {
	for i, of := range p.problem.columns.HeaterKeys {
		if f.used[i].From != season.Never && !of.Lamps && p.problem.planner.IsOpen(of.Place) {
			return true
		}
	}
	return false
}

// bisect looks for the number of plants from which on heating pays.
func (p *prover) bisect(e *season.HeatPays, at season.Holds) error {
	pays := func(plants int) (bool, error) {
		e.Tried++
		return p.paysWith(plants, e, at)
	}
	most := e.Plants
	is, err := pays(most)
	if err == nil && !is {
		e.NotWith, most = most, mostTimes*most
		is, err = pays(most)
	}
	if err != nil || !is {
		e.NotWith = most
		e.Stopped = p.problem.ctx.Err() != nil
		return err
	}
	for e.Tried < mostNumbers && most-e.NotWith > 1 && p.problem.ctx.Err() == nil {
		half := (e.NotWith + most) / 2
		if is, err = pays(half); err != nil {
			return err
		}
		if is {
			most = half
		} else {
			e.NotWith = half
		}
	}
	if e.Stopped = p.problem.ctx.Err() != nil; !e.Stopped {
		e.From = &most
	}
	return nil
}

// paysWith reports whether the best plan of so many plants heats.
func (p *prover) paysWith(plants int, e *season.HeatPays, at season.Holds) (bool, error) {
	say := p.problem.say
	if say != nil { // how far it is, without figures of other numbers of plants
		say = func(now Progress) {
			shown := p.progress
			shown.Plan, shown.Solves = now.Plan, now.Solves
			p.problem.say(shown)
		}
	}
	one := p.withPlants(plants, say)
	off := slices.Clone(at)
	for _, place := range p.problem.columns.Open {
		off[place] = season.SteadyAt(0)
	}
	best, err := one.prove(e.WeekWorth, "from how many plants on heat pays", nil, func() []*node { return []*node{one.root(one.subproblem(off)), one.root(one.subproblem(at))} })
	p.nodes = one.nodes
	if err != nil || best.best == nil {
		return false, err
	}
	e.Money = math.Max(e.Money, math.Ceil(100*(one.costOf(best.best)-best.bound)-1e-6)/100)
	return one.heats(best.best), nil
}

// withPlants is a prover that knows all that p knows, for another number of plants.
func (p *prover) withPlants(plants int, say func(Progress)) *prover {
	one, b := *p, *p.problem
	b.groups, b.say = scaled(p.problem.groups, plants), say
	one.problem = &b
	return &one
}

// scaled are the groups with so many plants in all, whole ones, each group its share: what is over
// after the whole parts goes to those with the greatest rest.
func scaled(groups []*season.Group, plants int) []*season.Group {
	all := 0
	for _, g := range groups {
		all += g.Want
	}
	parts, rest, order := make([]*season.Group, len(groups)), plants, make([]int, len(groups))
	for i, g := range groups {
		parts[i], order[i] = g.Of(g.Want*plants/all), i
		rest -= parts[i].Want
	}
	slices.SortStableFunc(order, func(i, j int) int {
		return cmp.Compare(groups[j].Want*plants%all, groups[i].Want*plants%all)
	})
	for _, i := range order[:rest] {
		parts[i].Want++
	}
	return parts
}
