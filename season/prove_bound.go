package season

import (
	"cmp"
	"math"
	"slices"
)

// prices say what one unit more of each limit would be worth; by row, none below nothing.
// Whoever found them, they give a bound on every setting: see sweep.
type prices struct {
	by   []float64
	rest float64 // what the limits themselves come to
	dues []*dues // by burner: see dues; nil where there are none
	from float64 // the weight at which they were found

	weight float64                // at which the following were reckoned
	idle   map[*passage][]float64 // by group: the cheapest way through no thermostat for which nothing burns
	offers map[*passage][][]offer // see offersOf
}

// priced is a bound with the prices that give it.
type priced struct {
	bound float64
	by    int
}

// priced takes prices over from the answer of a programme without whole numbers.
func (p *prover) priced(n *node, s *stated, found []float64) *prices {
	by := make([]float64, p.rowCount())
	for i, row := range s.rows {
		if row >= 0 && found != nil {
			by[row] = max(0, -found[i])
		}
	}
	x := p.pricesOf(by)
	if found != nil {
		x.dues = p.duesOf(n, s, found)
	}
	return x
}

// again is the same prices, with nothing reckoned.
func (x *prices) again() *prices {
	return &prices{by: x.by, rest: x.rest, dues: x.dues, from: x.from}
}

func (p *prover) pricesOf(by []float64) *prices {
	c, x := p.counting, &prices{by: by}
	for row, price := range by {
		if row >= p.hoursRow(0) { // hired hands are never worth more than they cost
			by[row] = min(price, c.hired)
		}
		x.rest -= by[row] * c.limit[row]
	}
	return x
}

// costOf is what a choice of a group costs, its flowers counted at a weight, once the limits
// that it leans on and its dues are paid for.
func (x *prices) costOf(g int, c *choice, weight float64) float64 {
	cost := c.money + c.warm + c.worse - weight*c.gain + x.duesFor(g, c)
	for _, t := range c.takes {
		cost += x.by[t.row] * t.amount
	}
	for _, t := range c.hours {
		cost += x.by[t.row] * t.amount
	}
	return cost
}

// isBelow reports whether a choice costs less than a limit before all that it leans on is paid
// for, which is quickly told.
func (c *choice) isBelow(limit, weight float64) bool {
	return c.money+c.warm+c.worse-weight*c.gain < limit
}

// at readies prices for a weight.
func (x *prices) at(weight float64) {
	if x.weight != weight || x.offers == nil {
		x.weight, x.idle, x.offers = weight, map[*passage][]float64{}, map[*passage][][]offer{}
	}
}

// forget drops what was reckoned with prices; it can be reckoned again.
func (x *prices) forget() { x.idle, x.offers = nil, nil }

// How many of the prices found at other weights are kept for the levels that they suit best,
// and how many of those found at the nearest weights are looked through.
const (
	bestPrices = 3
	nearPrices = 24
)

// nearest lists the prices found at the weights nearest to this one, the latest first of those
// that are as near.
func (p *prover) nearest() []int {
	apart := func(i int) float64 { return math.Abs(math.Log(p.pool[i].from / p.weight)) }
	all := slices.Clone(p.latest)
	slices.Reverse(all)
	slices.SortStableFunc(all, func(i, j int) int { return cmp.Compare(apart(i), apart(j)) })
	all = all[:min(len(all), nearPrices)]
	slices.Sort(all)
	return all
}

// suit chooses from the prices found at the nearest weights those that serve at this weight, for
// each of the widest nodes, and bounds these by them. What was reckoned with the others is
// forgotten.
func (p *prover) suit(roots []*node) {
	var chosen []int
	near := p.nearest()
	for _, n := range roots {
		bounds, order := make([]float64, len(p.pool)), []int{}
		for _, i := range near {
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
		n.good = nil
		for _, by := range p.serve {
			p.try(n, by)
		}
	}
}

// guide bounds nodes by the prices that bound the setting of the best plan best.
func (p *prover) guide(roots []*node) {
	known := p.only(p.best)()[0]
	p.tighten(known)
	for _, n := range roots {
		n.tried = len(p.serve)
		for _, one := range known.good {
			p.try(n, one.by)
		}
	}
}

// tighten raises the bound of a node by the prices that serve and that it has not been tried
// with. It reports whether there were any.
func (p *prover) tighten(n *node) bool {
	before := n.tried
	for ; n.tried < len(p.serve); n.tried++ {
		p.try(n, p.serve[n.tried])
	}
	return n.tried > before
}

// mostGood is how many of the prices that bound a node best are tried on its parts.
const mostGood = 6

func (p *prover) try(n *node, by int) {
	bound := p.boundOf(n, p.pool[by])
	if bound > n.bound {
		n.bound, n.by = bound, by
	}
	at := len(n.good)
	for at > 0 && n.good[at-1].bound < bound {
		at--
	}
	if at < mostGood {
		n.good = slices.Insert(n.good, at, priced{bound, by})
		n.good = n.good[:min(len(n.good), mostGood)]
	}
}

// inherit tries on a part of a node the prices that bound the whole best.
func (p *prover) inherit(n, whole *node) {
	n.bound, n.by, n.tried = whole.bound, whole.by, whole.tried
	for _, one := range whole.good {
		p.try(n, one.by)
	}
}

// nearBy tries the prices that serve on a part of a node until one bounds it near enough, those
// that bound the whole best first.
func (p *prover) nearBy(n, whole *node) bool {
	if p.inherit(n, whole); p.isNear(n.bound) {
		return true
	}
	for _, by := range p.serve {
		if p.try(n, by); p.isNear(n.bound) {
			return true
		}
	}
	return false
}
