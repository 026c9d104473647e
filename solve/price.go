package solve

import (
	"cmp"
	"math"
	"slices"
)

// pricing searches for dual prices that give a high bound. Rows that are choices stay
// constraints and the others are priced (Lagrangian relaxation), so that each choice is solved
// by itself. The method is the volume algorithm: subgradient steps from the mean of past
// solutions, which approaches the optimum of the linear relaxation.
//
// Source: Barahona and Anbil, The volume algorithm, Mathematical Programming 87 (2000),
// 385-399.
type pricing struct {
	s      *shape
	prices []float64 // the best so far, one per row
	bound  float64   // their bound, not yet rounded downwards
	mean   []float64 // mean of past solutions, one per column
	stride float64   // share of a full step
	misses int       // steps since the bound last rose
	rank   []Term    // buffer for sorting a choice
}

// Parameters of the volume algorithm, tuned on invented seasons of 12 to 120 batches. There it
// comes within a part in a thousand of the best bound in some hundreds of steps.
const (
	fresh         = 0.02 // weight of a new solution in the mean
	stride        = 0.3  // share of a full step at first
	longer        = 1.1  // growth of the stride after a step that raised the bound
	longest       = 2
	shorter       = 0.8 // shrinkage after this many steps that did not:
	patience      = 12
	farther       = 0.01 // how far above the bound to aim, relative to it, if no cost is near
	instead       = 1e7  // replaces an infinite bound while choosing; not used for the safe bound
	leastDistance = 1e-12
)

func newPricing(s *shape) *pricing {
	g := &pricing{s: s, prices: make([]float64, len(s.q.Rows)), stride: stride}
	g.mean = make([]float64, len(s.q.Columns))
	g.bound = g.choose(g.prices, g.mean)
	return g
}

// step takes one step, given the best known cost, or +Inf.
func (g *pricing) step(cost float64) {
	aim := cost
	if near := g.bound + farther*math.Max(1, math.Abs(g.bound)); !finite(aim) || aim > near+4*(near-g.bound) {
		aim = near
	}
	slope, square := g.slope(), 0.0
	for _, x := range slope {
		square += float64(x * x)
	}
	if square < leastDistance {
		return
	}
	far := g.stride * math.Max(aim-g.bound, leastDistance) / square
	prices := slices.Clone(g.prices)
	for i, x := range slope {
		prices[i] = g.moved(i, float64(far*x))
	}
	values := make([]float64, len(g.mean))
	bound := g.choose(prices, values)
	for j, x := range values {
		g.mean[j] += float64(fresh * (x - g.mean[j]))
	}
	if bound > g.bound {
		g.bound, g.prices, g.misses = bound, prices, 0
		g.stride = math.Min(longest, g.stride*longer)
		return
	}
	if g.misses++; g.misses >= patience {
		g.misses, g.stride = 0, g.stride*shorter
	}
}

// slope returns the subgradient: by how much the mean violates each priced row (positive: too
// little). For a row with slack it returns what brings its price back to 0.
func (g *pricing) slope() []float64 {
	out := make([]float64, len(g.prices))
	for i, r := range g.s.q.Rows {
		if g.s.choice[i] {
			continue
		}
		sum := 0.0
		for _, t := range r.Terms {
			sum += float64(t.Factor * g.mean[t.Column])
		}
		switch {
		case sum < r.Low, g.prices[i] > 0:
			out[i] = r.Low - sum
		case sum > r.High, g.prices[i] < 0:
			out[i] = r.High - sum
		}
	}
	return out
}

// moved returns a row's price after a step, with the sign that its limits allow.
func (g *pricing) moved(i int, far float64) float64 {
	was, r := g.prices[i], g.s.q.Rows[i]
	price := was + far
	if was > 0 && price < 0 || was < 0 && price > 0 ||
		price > 0 && !finite(r.Low) || price < 0 && !finite(r.High) {
		return 0
	}
	return price
}

// choose sets the prices of the choice rows to their best given the others, writes the
// cheapest values under all prices, and returns their bound.
func (g *pricing) choose(prices, values []float64) float64 {
	q, left := g.s.q, g.left(prices)
	bound := q.Offset
	for i, r := range q.Rows {
		switch {
		case g.s.choice[i]:
			prices[i] = g.share(r, left, values)
		case prices[i] > 0:
			bound += float64(prices[i] * r.Low)
		case prices[i] < 0:
			bound += float64(prices[i] * r.High)
		}
	}
	for j := range q.Columns {
		if g.s.group[j] < 0 {
			values[j] = g.end(j, left[j] < 0)
		}
		bound += float64(left[j] * values[j])
	}
	return bound
}

// left returns each column's reduced cost under the prices of the rows that are not choices.
func (g *pricing) left(prices []float64) []float64 {
	left := make([]float64, len(g.s.q.Columns))
	for j, c := range g.s.q.Columns {
		left[j] = c.Cost
		for _, t := range g.s.parts[j] {
			if !g.s.choice[t.Column] {
				left[j] -= float64(t.Factor * prices[t.Column])
			}
		}
	}
	return left
}

// ranked sorts the columns of a choice by reduced cost.
func (g *pricing) ranked(r Row, left []float64) {
	g.rank = g.rank[:0]
	for _, t := range r.Terms {
		g.rank = append(g.rank, Term{t.Column, left[t.Column]})
	}
	slices.SortStableFunc(g.rank, func(a, b Term) int { return cmp.Compare(a.Factor, b.Factor) })
}

// end returns a column's lower or upper bound; a large number replaces an infinite one.
func (g *pricing) end(j int, most bool) float64 {
	c := g.s.q.Columns[j]
	switch {
	case most && math.IsInf(c.High, 1):
		return math.Max(c.Low, 0) + instead
	case most:
		return c.High
	case math.IsInf(c.Low, -1):
		return math.Min(c.High, 0) - instead
	}
	return c.Low
}

// share fills a choice row as cheaply as its limits allow and returns its price: the reduced
// cost per unit of the last column used.
func (g *pricing) share(r Row, left, values []float64) float64 {
	factor, sum := r.Terms[0].Factor, 0.0
	for _, t := range r.Terms {
		values[t.Column] = g.end(t.Column, false)
		sum += values[t.Column]
	}
	g.ranked(r, left)
	low, high := r.Low/factor, r.High/factor
	for _, k := range g.rank {
		limit := high
		if k.Factor >= 0 {
			limit = low
		}
		take := math.Min(g.end(k.Column, true)-values[k.Column], limit-sum)
		if take > 0 {
			values[k.Column] += take
			sum += take
		}
		if sum >= limit && (k.Factor < 0 || take > 0) {
			return k.Factor / factor
		}
	}
	return 0
}
