package season

import (
	"cmp"
	"math"
	"slices"
)

// offer is a choice with its cost once the limits it leans on are paid for.
type offer struct {
	cost  float64
	order int // of its group in the passage
	*choice
}

// idleOf returns what the cheapest way of each group costs for which nothing burns, of those
// through no thermostat, or what leaving a plant out counts for.
func (p *prover) idleOf(x *prices, nowhere *passage) []float64 {
	x.at(p.weight)
	if x.idle[nowhere] != nil {
		return x.idle[nowhere]
	}
	idle := make([]float64, len(p.groups))
	for g, all := range nowhere.choices {
		if idle[g] = math.Inf(1); !slices.ContainsFunc(all, func(c choice) bool { return c.route.direct }) {
			idle[g] = p.leaving(p.maker, p.weight)
		}
		for i := range all {
			if all[i].isIdle() {
				idle[g] = min(idle[g], x.costOf(g, &all[i], p.weight))
			}
		}
	}
	x.idle[nowhere] = idle
	return idle
}

// isIdle reports whether nothing need burn for a choice.
func (c *choice) isIdle() bool {
	return !slices.ContainsFunc(c.use, func(s span) bool { return s.from != never })
}

// offersOf returns by group the choices of a passage that cost less than any for which
// nothing burns, the cheapest first. No other is ever taken in a bound.
func (p *prover) offersOf(x *prices, through, nowhere *passage) [][]offer {
	idle := p.idleOf(x, nowhere)
	if x.offers[through] != nil {
		return x.offers[through]
	}
	offers := make([][]offer, len(through.choices))
	for g, all := range through.choices {
		for i := range all {
			if !all[i].isBelow(idle[g], p.weight) {
				continue
			}
			if cost := x.costOf(g, &all[i], p.weight); cost < idle[g] {
				offers[g] = append(offers[g], offer{cost, i, &all[i]})
			}
		}
		slices.SortFunc(offers[g], func(a, b offer) int { return cmp.Or(cmp.Compare(a.cost, b.cost), cmp.Compare(a.order, b.order)) })
		offers[g] = unbeaten(offers[g])
	}
	x.offers[through] = offers
	return offers
}

// unbeaten leaves out offers for which a cheaper one wants nothing to burn longer, with the
// same steps of level.
func unbeaten(all []offer) []offer {
	kept := all[:0]
	for _, o := range all {
		if !slices.ContainsFunc(kept, func(k offer) bool { return k.serves(o.choice) }) {
			kept = append(kept, o)
		}
	}
	return kept
}

// serves reports whether a choice can be made wherever another can.
func (c *choice) serves(d *choice) bool {
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
