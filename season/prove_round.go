package season

import (
	"cmp"
	"math"
	"slices"
)

// rounding turns parts of plants into whole ones: of every choice the whole part, and what is
// then left of each group by the cheapest ways that there is room for.
type rounding struct {
	*prover
	n      *node
	counts [][]int
	left   []int     // plants still to be placed, by group
	free   []float64 // of every limit
}

// rounded is a plan made of a node's answer in parts of plants.
func (p *prover) rounded(n *node, s *stated, values []float64) *found {
	r := &rounding{prover: p, n: n, free: slices.Clone(p.limit)}
	for g, all := range n.f.choices {
		r.counts, r.left = append(r.counts, make([]int, len(all))), append(r.left, p.groups[g].want)
	}
	for i, c := range s.columns {
		if c.group >= 0 && c.choice >= 0 {
			r.place(c.group, int32(c.choice), min(int(values[i]+1e-6), r.left[c.group]))
		}
	}
	cost, out := p.pool[max(n.by, 0)].costOf(n.f, p.weight), 0
	for g := range r.left {
		order := slices.Clone(n.may[g])
		slices.SortStableFunc(order, func(a, b int32) int { return cmp.Compare(cost[g][a], cost[g][b]) })
		for _, c := range order {
			if r.left[g] == 0 {
				break
			}
			r.place(g, c, min(r.left[g], r.most(&n.f.choices[g][c])))
		}
		out += r.left[g]
	}
	return p.foundOf(n, r.counts, out)
}

// place gives so many plants of a group a way.
func (r *rounding) place(group int, choice int32, plants int) {
	c := &r.n.f.choices[group][choice]
	r.counts[group][choice] += plants
	r.left[group] -= plants
	for _, list := range [][]take{c.takes, c.hours} {
		for _, t := range list {
			r.free[t.row] -= float64(plants) * t.amount
		}
	}
}

// most is how many plants of a choice there is room for.
func (r *rounding) most(c *choice) int {
	most := math.Inf(1)
	for _, t := range c.takes {
		most = min(most, math.Floor(max(0, r.free[t.row])/t.amount+1e-9))
	}
	return int(min(most, math.MaxInt32))
}
