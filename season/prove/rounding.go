package prove

import (
	"cmp"
	"math"
	"slices"

	"eyeup/season"
)

// rounding turns parts of plants into whole ones: of every choice the whole part, and what is
// then left of each group by the cheapest ways that there is room for.
type rounding struct {
	p      *prover
	n      *node
	counts [][]int
	left   []int     // plants still to be placed, by group
	free   []float64 // of every limit
}

// rounded is the better of two plans made of a node's answer in parts of plants: one fills up
// with what the answer has most of, the other with what is cheapest.
func (p *prover) rounded(n *node, s *programme, values []float64) *solution {
	parts := make([][]float64, len(n.sub.choices))
	for g, all := range n.sub.choices {
		parts[g] = make([]float64, len(all))
	}
	for i, c := range s.columns {
		if c.group >= 0 && c.choice >= 0 {
			parts[c.group][c.choice] = values[i]
		}
	}
	one, other := p.filled(n, parts, true), p.filled(n, parts, false)
	if one == nil || other != nil && p.costOf(other) < p.costOf(one) {
		return other
	}
	return one
}

// filled takes of every choice the whole part, and fills up each group with others, those with
// most of a part left first if that is asked for.
func (p *prover) filled(n *node, parts [][]float64, byPart bool) *solution {
	r, out := &rounding{p: p, n: n, free: slices.Clone(p.problem.limits.limit)}, 0
	for g, all := range parts {
		r.counts, r.left = append(r.counts, make([]int, len(all))), append(r.left, p.problem.groups[g].Want)
		for i, part := range all {
			r.place(g, int32(i), min(int(part+1e-6), r.left[g]))
		}
	}
	for g := range r.left {
		if r.left[g] == 0 {
			continue
		}
		for _, c := range r.order(g, parts[g], byPart) {
			if byPart && parts[g][c] > 0 && r.left[g] > 0 {
				r.place(g, c, min(1, r.most(n.sub.choices[g][c])))
				continue
			}
			r.place(g, c, min(r.left[g], r.most(n.sub.choices[g][c])))
		}
		out += r.left[g]
	}
	return p.newSolution(n, r.counts, out)
}

// order lists the choices of a group in the order in which they are to be filled up.
func (r *rounding) order(g int, parts []float64, byPart bool) []int32 {
	order, cost := slices.Clone(r.n.allowed[g]), make([]float64, len(r.n.sub.choices[g]))
	for _, i := range order {
		cost[i] = r.p.pool[max(r.n.duals, 0)].reducedCost(g, r.n.sub.choices[g][i], r.p.weight)
	}
	left := func(i int32) float64 {
		if !byPart {
			return 0
		}
		return parts[i] - math.Floor(parts[i]+1e-6)
	}
	slices.SortStableFunc(order, func(a, b int32) int { return cmp.Or(cmp.Compare(left(b), left(a)), cmp.Compare(cost[a], cost[b])) })
	return order
}

// place gives so many plants of a group a way.
func (r *rounding) place(group int, choice int32, plants int) {
	if plants <= 0 {
		return
	}
	c := r.n.sub.choices[group][choice]
	r.counts[group][choice] += plants
	r.left[group] -= plants
	for _, list := range [][]season.Take{c.Takes, c.Hours} {
		for _, t := range list {
			r.free[t.Row] -= float64(plants) * t.Amount
		}
	}
}

// most is how many plants of a choice there is room for.
func (r *rounding) most(c *season.Choice) int {
	most := math.Inf(1)
	for _, t := range c.Takes {
		most = min(most, math.Floor(max(0, r.free[t.Row])/t.Amount+1e-9))
	}
	return int(min(most, math.MaxInt32))
}
