package season

import (
	"cmp"
	"math"
	"slices"
)

// HeatPays says from how many plants on the best plan heats: found by halving, with the best plan
// looked for anew at each number of plants, among heating as one plan does and not at all. All
// sorts keep their shares, and benches and hands are as they are.
type HeatPays struct {
	Held      []Held  `json:"held" jsonschema_description:"how the plan in question heats; on which days is looked for anew"`
	WeekWorth float64 `json:"week_worth" jsonschema_description:"what a week of one plant in flower counts for"`
	Plants    int     `json:"plants" jsonschema_description:"of the garden as it is"`
	From      *int    `json:"from_plants,omitempty" jsonschema_description:"with so many it pays; left out where it does not even with the most that were tried"`
	NotWith   int     `json:"not_with_plants" jsonschema_description:"with so many it does not"`
	Tried     int     `json:"tried" jsonschema_description:"numbers of plants that were tried"`
	Money     float64 `json:"money" jsonschema_description:"at no number that was tried is any plan better than the one found by more"`
	Stopped   bool    `json:"stopped,omitempty" jsonschema_description:"it was stopped before it was found"`
}

// How many numbers of plants are tried, and how many times those of the garden at most.
const (
	mostNumbers = 8
	mostTimes   = 4
)

// heatPays finds from how many plants on it pays to heat as the best plan does that holds each
// house at one level and counts a week of flower at the garden's own worth, or as is usual where
// that plan does not heat; nil where neither does.
func (p *prover) heatPays(s *provedSeason, own float64) (*HeatPays, error) {
	of := s.usual.best
	for _, one := range s.curve {
		if one.weight == own && one.steady != nil && p.heats(one.steady) {
			of = one.steady
		}
	}
	if !p.heats(of) {
		return nil, nil
	}
	e := &HeatPays{WeekWorth: own, Held: []Held{}}
	for i, slot := range p.problem.columns.heaterKeys {
		if of.used[i].from != never && !slot.lamps && p.problem.planner.isOpen(slot.place) {
			e.Held = append(e.Held, p.heldIn(of, i))
		}
	}
	for _, g := range p.problem.groups {
		e.Plants += g.want
	}
	return e, p.bisect(e, of.at)
}

// heats reports whether a plan heats a house.
func (p *prover) heats(f *solution) bool {
	for i, of := range p.problem.columns.heaterKeys {
		if f.used[i].from != never && !of.lamps && p.problem.planner.isOpen(of.place) {
			return true
		}
	}
	return false
}

// bisect looks for the number of plants from which on heating pays.
func (p *prover) bisect(e *HeatPays, at holds) error {
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
func (p *prover) paysWith(plants int, e *HeatPays, at holds) (bool, error) {
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
	for _, place := range p.problem.columns.open {
		off[place] = steadyAt(0)
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
func scaled(groups []*group, plants int) []*group {
	all := 0
	for _, g := range groups {
		all += g.want
	}
	parts, rest, order := make([]*group, len(groups)), plants, make([]int, len(groups))
	for i, g := range groups {
		parts[i], order[i] = &group{g.batches, g.want * plants / all}, i
		rest -= parts[i].want
	}
	slices.SortStableFunc(order, func(i, j int) int {
		return cmp.Compare(groups[j].want*plants%all, groups[i].want*plants%all)
	})
	for _, i := range order[:rest] {
		parts[i].want++
	}
	return parts
}
