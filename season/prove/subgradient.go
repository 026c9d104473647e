package prove

import (
	"math"
	"slices"

	"eyeup/season"
)

// How the prices of limits are looked for where nothing solves without whole numbers: the
// stride as a share of what a full step would take, and how many steps without a better
// bound halve it.
const (
	priceSteps    = 400
	firstStride   = 1.0
	patientFor    = 12
	keptDirection = 0.7 // share of the direction before that stays in the next
	least         = 1e-12
)

// subgradient looks for prices of a node's limits by steps along what its cheapest ways take
// beyond what there is: a subgradient of its bound, towards a cost known to be reached.
//
// Source: Held, Wolfe and Crowder, Validation of subgradient optimization, Mathematical
// Programming 6 (1974), 62-88; the kept direction is that of Camerini, Fratta and Maffioli,
// Mathematical Programming Study 3 (1975), 26-34.
func (p *prover) subgradient(n *node) *duals {
	now := slices.Clone(p.pool[max(n.duals, 0)].row)
	best, bound := p.pool[max(n.duals, 0)], p.boundOf(n, p.pool[max(n.duals, 0)])
	slope, stride, misses := make([]float64, len(now)), firstStride, 0
	for range priceSteps {
		if p.problem.ctx.Err() != nil {
			break
		}
		x := p.newDuals(slices.Clone(now))
		reached := p.boundOf(n, x)
		if misses++; reached > bound {
			best, bound, misses = x, reached, 0
		}
		if misses >= patientFor {
			misses, stride = 0, stride/2
			copy(now, best.row)
		}
		p.direction(n, x, slope)
		square := 0.0
		for _, s := range slope {
			square += s * s
		}
		aim := bound + 0.05*math.Max(1, math.Abs(bound))
		if p.incumbent != nil {
			aim = p.costOf(p.incumbent)
		}
		if square < least || aim-reached < least {
			break
		}
		for row, s := range slope {
			now[row] = max(0, now[row]+stride*(aim-reached)/square*s)
			if row >= p.problem.planner.HoursRow(0) {
				now[row] = min(now[row], p.problem.limits.hired)
			}
		}
	}
	return best
}

// direction turns a direction towards what the cheapest ways of a node take beyond its limits.
func (p *prover) direction(n *node, x *duals, slope []float64) {
	for row := range slope {
		over := -p.problem.limits.limit[row]
		if !p.problem.limits.binds(row) {
			over = 0
		}
		slope[row] = keptDirection*slope[row] + over
	}
	for g, may := range n.allowed {
		least, chosen := math.Inf(1), int32(-1)
		if !n.direct[g] {
			least = p.problem.limits.leftOutCost(p.weight)
		}
		for _, i := range may {
			if cost := x.reducedCost(g, n.sub.choices[g][i], p.weight); cost < least {
				least, chosen = cost, i
			}
		}
		if chosen < 0 {
			continue
		}
		for _, list := range [][]season.Take{n.sub.choices[g][chosen].Takes, n.sub.choices[g][chosen].Hours} {
			for _, t := range list {
				if p.problem.limits.binds(t.Row) {
					slope[t.Row] += float64(p.problem.groups[g].Want) * t.Amount
				}
			}
		}
	}
	for row, s := range slope { // a price of nothing can't fall
		if s < 0 && x.row[row] == 0 {
			slope[row] = 0
		}
	}
}
