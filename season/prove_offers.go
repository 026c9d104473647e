package season

import (
	"cmp"
	"math"
	"slices"
)

// candidate is a choice with its cost once the limits it leans on are paid for.
type candidate struct {
	cost  float64
	order int // of its group in the passage
	*choice
}

// unheatedCost returns what the cheapest way of each group costs for which nothing burns, of those
// through no thermostat, or what leaving a plant out counts for.
func (p *prover) unheatedCost(x *duals, nowhere *placeWays) []float64 {
	x.atWeight(p.weight)
	if x.unheated[nowhere] != nil {
		return x.unheated[nowhere]
	}
	idle := make([]float64, len(p.problem.groups))
	for g, all := range nowhere.choices {
		if idle[g] = math.Inf(1); !slices.ContainsFunc(all, func(c choice) bool { return c.route.direct }) {
			idle[g] = p.problem.limits.leftOutCost(p.problem.planner, p.weight)
		}
		for i := range all {
			if all[i].isUnheated() {
				idle[g] = min(idle[g], x.reducedCost(g, &all[i], p.weight))
			}
		}
	}
	x.unheated[nowhere] = idle
	return idle
}

// isUnheated reports whether nothing need burn for a choice.
func (c *choice) isUnheated() bool {
	return !slices.ContainsFunc(c.use, func(s span) bool { return s.from != never })
}

// candidatesOf returns by group the choices of a passage that cost less than any for which
// nothing burns, the cheapest first. No other is ever taken in a bound.
func (p *prover) candidatesOf(x *duals, through, nowhere *placeWays) [][]candidate {
	idle := p.unheatedCost(x, nowhere)
	if x.candidates[through] != nil {
		return x.candidates[through]
	}
	offers := make([][]candidate, len(through.choices))
	for g, all := range through.choices {
		for i := range all {
			if !all[i].isBelow(idle[g], p.weight) {
				continue
			}
			if cost := x.reducedCost(g, &all[i], p.weight); cost < idle[g] {
				offers[g] = append(offers[g], candidate{cost, i, &all[i]})
			}
		}
		slices.SortFunc(offers[g], func(a, b candidate) int { return cmp.Or(cmp.Compare(a.cost, b.cost), cmp.Compare(a.order, b.order)) })
		offers[g] = undominatedCandidates(offers[g])
	}
	x.candidates[through] = offers
	return offers
}

// undominatedCandidates leaves out offers for which a cheaper one wants nothing to burn longer, with the
// same steps of level.
func undominatedCandidates(all []candidate) []candidate {
	kept := all[:0]
	for _, o := range all {
		if !slices.ContainsFunc(kept, func(k candidate) bool { return k.fitsWherever(o.choice) }) {
			kept = append(kept, o)
		}
	}
	return kept
}

// fitsWherever reports whether a choice can be made wherever another can.
func (c *choice) fitsWherever(d *choice) bool {
	if c.place >= 0 && (c.steps[0] > d.steps[0] || c.steps[1] < d.steps[1]) {
		return false
	}
	for i, used := range c.use {
		if used.from != never && (used.from < d.use[i].from || used.to > d.use[i].to) {
			return false
		}
	}
	return true
}
