package prove

import (
	"cmp"
	"math"
	"slices"

	"eyeup/season"
)

// candidate is a choice with its cost once the limits it leans on are paid for.
type candidate struct {
	cost  float64
	order int // of its group in the subproblem
	*season.Choice
}

// unheatedCost returns what the cheapest way of each group costs that needs no heater on, of those
// through places without a thermostat, or what leaving a plant out counts for.
func (p *prover) unheatedCost(x *duals, nowhere *season.PlaceWays) []float64 {
	x.atWeight(p.weight)
	if x.unheated[nowhere] != nil {
		return x.unheated[nowhere]
	}
	idle := make([]float64, len(p.problem.groups))
	for g, all := range nowhere.Choices {
		if idle[g] = math.Inf(1); !slices.ContainsFunc(all, func(c season.Choice) bool { return c.IsDirect() }) {
			idle[g] = p.problem.limits.leftOutCost(p.weight)
		}
		for i := range all {
			if isUnheated(&all[i]) {
				idle[g] = min(idle[g], x.reducedCost(g, &all[i], p.weight))
			}
		}
	}
	x.unheated[nowhere] = idle
	return idle
}

// isUnheated reports whether no heater need be on for a choice.
func isUnheated(c *season.Choice) bool {
	return !slices.ContainsFunc(c.Use, func(s season.Days) bool { return s.From != season.Never })
}

// candidatesOf returns by group the choices of a subproblem that cost less than any for which
// no heater is on, the cheapest first. No other is ever taken in a bound.
func (p *prover) candidatesOf(x *duals, through, nowhere *season.PlaceWays) [][]candidate {
	idle := p.unheatedCost(x, nowhere)
	if x.candidates[through] != nil {
		return x.candidates[through]
	}
	offers := make([][]candidate, len(through.Choices))
	for g, all := range through.Choices {
		for i := range all {
			if !isBelow(&all[i], idle[g], p.weight) {
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

// undominatedCandidates leaves out offers for which a cheaper one wants no heater on for longer, with the
// same steps of level.
func undominatedCandidates(all []candidate) []candidate {
	kept := all[:0]
	for _, o := range all {
		if !slices.ContainsFunc(kept, func(k candidate) bool { return fitsWherever(k.Choice, o.Choice) }) {
			kept = append(kept, o)
		}
	}
	return kept
}

// fitsWherever reports whether a choice can be made wherever another can.
func fitsWherever(c, d *season.Choice) bool {
	if c.Place >= 0 && (c.Steps[0] > d.Steps[0] || c.Steps[1] < d.Steps[1]) {
		return false
	}
	for i, used := range c.Use {
		if used.From != season.Never && (used.From < d.Use[i].From || used.To > d.Use[i].To) {
			return false
		}
	}
	return true
}
