package season

import (
	"cmp"
	"math"
	"slices"

	"eyeup/solve"
)

// prices say what one unit more of each limit would be worth; by row, none below nothing.
// Whoever found them, they give a bound on every setting: see bound.
type prices struct {
	by   []float64
	lean map[*passage][][]float64 // what each choice costs in money and in limits leaned on
	rest float64                  // what the limits themselves come to

	weight   float64                // at which the following were reckoned
	cost     map[*field][][]float64 // lean, less the worth of the choice's flowers
	cheapest map[*passage][]float64 // the least of them, by group
}

// priced takes prices over from the answer of a programme without whole numbers.
func (p *prover) priced(s *stated, found []float64) *prices {
	by := make([]float64, p.rowCount())
	for i, row := range s.rows {
		if row >= 0 && found != nil {
			by[row] = max(0, -found[i])
		}
	}
	return p.pricesOf(by)
}

func (p *prover) pricesOf(by []float64) *prices {
	c, x := p.counting, &prices{by: by, lean: map[*passage][][]float64{}}
	for row, price := range by {
		if row >= p.hoursRow(0) { // hired hands are never worth more than they cost
			by[row] = min(price, c.hired)
		}
		x.rest -= by[row] * c.limit[row]
	}
	return x
}

// leanOf returns what every choice of a passage costs in money and in limits leaned on.
func (x *prices) leanOf(through *passage) [][]float64 {
	if x.lean[through] != nil {
		return x.lean[through]
	}
	lean := make([][]float64, len(through.choices))
	for g, all := range through.choices {
		lean[g] = make([]float64, len(all))
		for i := range all {
			cost := all[i].money + all[i].warm + all[i].worse
			for _, list := range [][]take{all[i].takes, all[i].hours} {
				for _, t := range list {
					cost += x.by[t.row] * t.amount
				}
			}
			lean[g][i] = cost
		}
	}
	x.lean[through] = lean
	return lean
}

// at readies prices for a weight.
func (x *prices) at(weight float64) {
	if x.weight != weight || x.cost == nil {
		x.weight, x.cost, x.cheapest = weight, map[*field][][]float64{}, map[*passage][]float64{}
	}
}

// costOf returns what every choice of a field costs, its flowers counted at a weight.
func (x *prices) costOf(f *field, weight float64) [][]float64 {
	x.at(weight)
	if x.cost[f] != nil {
		return x.cost[f]
	}
	cost := make([][]float64, len(f.choices))
	for _, through := range f.through {
		for g, lean := range x.leanOf(through) {
			for i, money := range lean {
				cost[g] = append(cost[g], money-weight*through.choices[g][i].gain)
			}
		}
	}
	x.cost[f] = cost
	return cost
}

// cheapestOf returns what the cheapest choice of each group costs among those of a passage.
func (x *prices) cheapestOf(through *passage, weight float64) []float64 {
	x.at(weight)
	if x.cheapest[through] != nil {
		return x.cheapest[through]
	}
	cheapest := make([]float64, len(through.choices))
	for g, lean := range x.leanOf(through) {
		cheapest[g] = math.Inf(1)
		for i, money := range lean {
			cheapest[g] = min(cheapest[g], money-weight*through.choices[g][i].gain)
		}
	}
	x.cheapest[through] = cheapest
	return cheapest
}

// boundOf returns a cost below which no plan within a node can lie, whoever found the prices:
// every plant takes the way that is cheapest once the limits it leans on are paid for, and
// what burns costs what it takes at the shortest. Valid by weak duality.
func (p *prover) boundOf(n *node, x *prices) float64 {
	if n.f == nil {
		return p.boundOfAll(n.at, x)
	}
	cost, total := x.costOf(n.f, p.weight), x.rest+n.burning
	for g, may := range n.may {
		least, of := math.Inf(1), cost[g]
		if !n.always[g] {
			least = p.leaving(p.maker, p.weight)
		}
		for _, i := range may {
			if of[i] < least {
				least = of[i]
			}
		}
		total += float64(p.groups[g].want) * least
	}
	return total
}

// boundOfAll is the bound of all settings that hold the places in some ways.
func (p *prover) boundOfAll(at holds, x *prices) float64 {
	total, through := x.rest, p.through(at, float64(p.Fits))
	for g := range p.groups {
		least := math.Inf(1)
		if !slices.ContainsFunc(through[0].choices[g], func(c choice) bool { return c.route.direct }) {
			least = p.leaving(p.maker, p.weight)
		}
		for _, one := range through {
			least = min(least, x.cheapestOf(one, p.weight)[g])
		}
		total += float64(p.groups[g].want) * least
	}
	return total
}

// How many of the prices found at other weights are kept for the levels that they suit best,
// and how many of those found last are looked through.
const (
	bestPrices   = 3
	latestPrices = 24
)

// suit chooses from the prices found last those that serve at this weight, for each of the
// widest nodes, and bounds these by them. What was reckoned with the others is forgotten.
func (p *prover) suit(roots []*node) {
	from := max(0, len(p.pool)-latestPrices)
	var chosen []int
	for _, n := range roots {
		bounds, order := make([]float64, len(p.pool)), []int{}
		for i := from; i < len(p.pool); i++ {
			bounds[i], order = p.boundOf(n, p.pool[i]), append(order, i)
		}
		slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(bounds[j], bounds[i]) })
		chosen = append(chosen, order[:min(bestPrices, len(order))]...)
		n.bound, n.by = bounds[order[0]], order[0]
	}
	slices.Sort(chosen)
	p.serve = slices.Compact(chosen)
	for i, x := range p.pool {
		if !slices.Contains(p.serve, i) {
			x.forget()
		}
	}
	for _, n := range roots {
		n.tried = len(p.serve)
	}
}

// forget drops what was reckoned with prices; it can be reckoned again.
func (x *prices) forget() {
	clear(x.lean)
	clear(x.cost)
	clear(x.cheapest)
}

// tighten raises the bound of a node by the prices that serve and that it has not been tried
// with. It reports whether there were any.
func (p *prover) tighten(n *node) bool {
	any := n.tried < len(p.serve)
	for ; n.tried < len(p.serve); n.tried++ {
		p.try(n, p.serve[n.tried])
	}
	return any
}

func (p *prover) try(n *node, by int) {
	if bound := p.boundOf(n, p.pool[by]); bound > n.bound {
		n.bound, n.by = bound, by
	}
}

// relax solves a node without whole numbers, for its prices.
func (p *prover) relax(n *node) error {
	n.relaxed = true
	if p.Relax == nil {
		p.told.Solves++
		p.learn(p.pricing(n), n)
		return nil
	}
	s := p.state(p.counting, p.groups, n.f, n.may, p.weight, n.burning)
	found, err := p.Relax(p.ctx, &s.Programme)
	if err != nil || found.State != solve.Proved {
		return err
	}
	p.told.Solves++
	p.learn(p.priced(s, found.Prices), n)
	if n.isOne() && p.Solver != nil {
		p.consider(p.rounded(n, s, found.Values))
	}
	return nil
}

// learn adds prices to those that serve.
func (p *prover) learn(x *prices, n *node) {
	p.pool = append(p.pool, x)
	p.serve = append(p.serve, len(p.pool)-1)
	p.tighten(n)
}
