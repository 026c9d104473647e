package solve

import (
	"context"
	"math"
	"slices"
)

// Defaults of Plain: steps of the volume algorithm, rounds of search, and moves per column in
// each round, with the fewest and the most.
const (
	steps     = 1200
	rounds    = 3
	moves     = 250
	fewest    = 20_000
	mostMoves = 600_000
)

// Starting values of a search, tuned on invented seasons of 12 to 120 batches: temperature as
// a share of the mean cost, and the weight of a violated row as a multiple of its price.
const (
	warmth = 0.05
	dearer = 1.2
)

// Plain solves a programme without a library: dual prices from the volume algorithm give a
// bound (see pricing), and values rounded from the mean solution and improved by local search
// give an answer (see search). Its bound is valid, but it often leaves a gap that a full
// solver closes. It may end without values though there are some, or without proving that
// there are none; then its State is Stopped. It suits programmes that are mostly choices among
// options under shared limits.
//
// Limits.Iterations counts steps of the volume algorithm (1200 if 0), Limits.Nodes rounds of
// search (3 if 0). It is a Solver.
func Plain(ctx context.Context, p *Programme, limits Limits, start []float64) (Answer, error) {
	if err := Ready(p, limits, start); err != nil {
		return Answer{}, err
	}
	a := &attempt{p: p, s: shaped(p), limits: limits, ctx: ctx}
	if a.s.broken {
		return Answer{State: Infeasible, Objective: math.Inf(1), Bound: math.Inf(1), Gap: math.Inf(1)}, nil
	}
	if limits.Iterations == 0 {
		a.limits.Iterations = steps
	}
	if limits.Nodes == 0 {
		a.limits.Nodes = rounds
	}
	a.best = Answer{Objective: math.Inf(1), Bound: math.Inf(-1)}
	a.consider(start)
	a.work()
	a.best.Bound = math.Min(a.best.Bound, a.best.Objective) // larger only if values violate a limit by less than Tolerance
	a.best.Gap = GapOf(a.best.Objective, a.best.Bound)
	if limits.Met(a.best.Objective, a.best.Bound) {
		a.best.State = Proved
	}
	return a.best, nil
}

// attempt is one run of Plain.
type attempt struct {
	p      *Programme
	s      *shape
	limits Limits
	ctx    context.Context
	g      *pricing
	best   Answer
}

// work spends most of its pricing steps, then searches from the result, and spends the rest
// with a known cost to aim at.
func (a *attempt) work() {
	if a.ended() || a.s.endless() {
		return
	}
	a.g = newPricing(a.s)
	a.price(a.limits.Iterations * 3 / 4)
	for ; a.best.Nodes < a.limits.Nodes && !a.ended(); a.best.Nodes++ {
		a.seek()
		a.report()
	}
	a.price(a.limits.Iterations - a.best.Iterations)
}

// ended reports whether to stop: ctx has ended, or the limits are met.
func (a *attempt) ended() bool {
	return a.ctx.Err() != nil || a.limits.Met(a.best.Objective, a.best.Bound)
}

// price takes pricing steps and then computes a safe bound from the prices.
func (a *attempt) price(steps int) {
	for range steps {
		if a.ctx.Err() != nil {
			break
		}
		a.g.step(a.best.Objective)
		a.best.Iterations++
	}
	if bound, err := a.s.q.Bound(a.g.prices); err == nil && bound > a.best.Bound {
		a.best.Bound, a.best.Prices = bound, slices.Clone(a.g.prices)
	}
	a.report()
}

// seek runs one search: from the mean solution or, after the first time, from the best values
// so far with adjusted weights of the rows.
func (a *attempt) seek() {
	values, heat := a.rounded(), warmth*a.scale()
	if again := a.best.Values != nil && a.best.Nodes > 0; again {
		values, heat = a.best.Values, heat/10
	}
	weight := make([]float64, len(a.s.q.Rows))
	for i := range weight {
		weight[i] = math.Max(a.scale(), dearer*math.Abs(a.g.prices[i]))
	}
	h, ok := newSearch(a.s, values, weight, uint64(a.best.Nodes))
	if !ok {
		return
	}
	tries := min(max(fewest, moves*len(h.free)), mostMoves, mostMoves*len(h.free)) // 0 if no column is free
	found, _ := h.wander(tries, heat, func() bool { return a.ctx.Err() != nil })
	a.consider(found)
}

// scale returns the mean size of the costs.
func (a *attempt) scale() float64 {
	sum := 0.0
	for _, c := range a.p.Columns {
		sum += math.Abs(c.Cost)
	}
	return math.Max(1e-6, sum/float64(max(1, len(a.p.Columns))))
}

// consider keeps values that are feasible and cost less than the best so far.
func (a *attempt) consider(values []float64) {
	if values == nil {
		return
	}
	v, err := a.p.Check(values)
	if err != nil || !v.Holds(Tolerance) {
		return
	}
	if cost := a.p.Cost(values); cost < a.best.Objective {
		a.best.Values, a.best.Objective = slices.Clone(values), cost
	}
}

// rounded returns the mean solution rounded: each choice distributes its units by largest
// remainder, other columns are rounded to the nearest whole number.
func (a *attempt) rounded() []float64 {
	values := slices.Clone(a.g.mean)
	for j, c := range a.s.q.Columns {
		values[j] = math.Min(math.Max(values[j], c.Low), c.High)
		if c.Whole {
			values[j] = math.Round(values[j])
		}
	}
	for i, r := range a.s.q.Rows {
		if a.s.choice[i] {
			a.remainders(r, values)
		}
	}
	return values
}

// remainders distributes a choice's units by largest remainder.
func (a *attempt) remainders(r Row, values []float64) {
	factor, sum := r.Terms[0].Factor, 0.0
	var rest []Term
	for _, t := range r.Terms {
		c, mean := a.s.q.Columns[t.Column], a.g.mean[t.Column]
		if c.Whole {
			values[t.Column] = math.Max(c.Low, math.Floor(mean+keen))
			rest = append(rest, Term{t.Column, mean - values[t.Column]})
		}
		sum += values[t.Column]
	}
	slices.SortStableFunc(rest, func(x, y Term) int {
		if x.Factor > y.Factor {
			return -1
		} else if x.Factor < y.Factor {
			return 1
		}
		return 0
	})
	for _, t := range rest {
		if sum+1 <= r.High/factor+keen && sum < r.Low/factor-keen && values[t.Column]+1 <= a.s.q.Columns[t.Column].High {
			values[t.Column]++
			sum++
		}
	}
}

// report calls Progress.
func (a *attempt) report() {
	if a.limits.Progress != nil {
		a.limits.Progress(&Progress{a.best.Objective, a.best.Bound, a.best.Nodes, a.best.Iterations})
	}
}
