package prove

import (
	"cmp"
	"math"
	"slices"

	"eyeup/season"
)

// duals say what one unit more of each limit would be worth; by row, none below nothing.
// Whoever found them, they give a bound on every setting: see lagrangian.
type duals struct {
	row      []float64
	constant float64        // what the limits themselves come to
	heaters  []*heaterDuals // by heater: see heaterDuals; nil where there are none
	foundAt  float64        // the weight at which they were found

	weight     float64                             // at which the following were reckoned
	unheated   map[*season.PlaceWays][]float64     // by group: the cheapest way through places without a thermostat that needs no heater on
	candidates map[*season.PlaceWays][][]candidate // see offersOf
}

// boundBy is a bound with the prices that give it.
type boundBy struct {
	bound float64
	duals int
}

// dualsOf takes prices over from the answer of a programme without whole numbers.
func (p *prover) dualsOf(n *node, s *programme, found []float64) *duals {
	by := make([]float64, p.problem.planner.RowCount())
	for i, row := range s.rows {
		if row >= 0 && found != nil {
			by[row] = max(0, -found[i])
		}
	}
	x := p.newDuals(by)
	if found != nil {
		x.heaters = p.heaterDualsOf(n, s, found)
	}
	return x
}

// fresh is the same prices, with nothing reckoned.
func (x *duals) fresh() *duals {
	return &duals{row: x.row, constant: x.constant, heaters: x.heaters, foundAt: x.foundAt}
}

func (p *prover) newDuals(by []float64) *duals {
	c, x := p.problem.limits, &duals{row: by}
	for row, price := range by {
		if row >= p.problem.planner.HoursRow(0) { // hired hands are never worth more than they cost
			by[row] = min(price, c.hired)
		}
		x.constant -= by[row] * c.limit[row]
	}
	return x
}

// reducedCost is what a choice of a group costs, its flowers counted at a weight, once the limits
// that it leans on and its dual prices of heaters are paid for.
func (x *duals) reducedCost(g int, c *season.Choice, weight float64) float64 {
	cost := c.Money + c.BenchHeat + c.StretchCost - weight*c.Gain + x.heaterShare(g, c)
	for _, t := range c.Takes {
		cost += x.row[t.Row] * t.Amount
	}
	for _, t := range c.Hours {
		cost += x.row[t.Row] * t.Amount
	}
	return cost
}

// isBelow reports whether a choice costs less than a limit before all that it leans on is paid
// for, which is quickly found.
func isBelow(c *season.Choice, limit, weight float64) bool {
	return c.Money+c.BenchHeat+c.StretchCost-weight*c.Gain < limit
}

// atWeight readies prices for a weight.
func (x *duals) atWeight(weight float64) {
	if x.weight != weight || x.candidates == nil {
		x.weight, x.unheated, x.candidates = weight, map[*season.PlaceWays][]float64{}, map[*season.PlaceWays][][]candidate{}
	}
}

// forget drops what was reckoned with prices; it can be reckoned again.
func (x *duals) forget() { x.unheated, x.candidates = nil, nil }

// How many of the prices found at other weights are kept for the levels that they suit best,
// and how many of those found at the nearest weights are looked through.
const (
	bestKept     = 3
	nearestTried = 24
)

// nearestDuals lists the prices found at the weights nearest to this one, the latest first of those
// that are as near.
func (p *prover) nearestDuals() []int {
	apart := func(i int) float64 { return math.Abs(math.Log(p.pool[i].foundAt / p.weight)) }
	all := slices.Clone(p.solvedDuals)
	slices.Reverse(all)
	slices.SortStableFunc(all, func(i, j int) int { return cmp.Compare(apart(i), apart(j)) })
	all = all[:min(len(all), nearestTried)]
	slices.Sort(all)
	return all
}

// startDuals chooses from the prices found at the nearest weights those that serve at this weight, for
// each of the widest nodes, and bounds these by them. What was reckoned with the others is
// forgotten.
func (p *prover) startDuals(roots []*node) {
	var chosen []int
	near := p.nearestDuals()
	for _, n := range roots {
		bounds, order := make([]float64, len(p.pool)), []int{}
		for _, i := range near {
			bounds[i], order = p.boundOf(n, p.pool[i]), append(order, i)
		}
		slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(bounds[j], bounds[i]) })
		chosen = append(chosen, order[:min(bestKept, len(order))]...)
		n.bound, n.duals = bounds[order[0]], order[0]
	}
	slices.Sort(chosen)
	p.active = slices.Compact(chosen)
	for i, x := range p.pool {
		if !slices.Contains(p.active, i) {
			x.forget()
		}
	}
	for _, n := range roots {
		n.tried = len(p.active)
		n.bestDuals = nil
		for _, by := range p.active {
			p.tryDuals(n, by)
		}
	}
}

// guide bounds nodes by the prices that bound the setting of the best plan best.
func (p *prover) guide(roots []*node) {
	known := p.onlySettingOf(p.incumbent)()[0]
	p.tighten(known)
	for _, n := range roots {
		n.tried = len(p.active)
		for _, one := range known.bestDuals {
			p.tryDuals(n, one.duals)
		}
	}
}

// tighten raises the bound of a node by the prices that serve and that it has not been tried
// with. It reports whether there were any.
func (p *prover) tighten(n *node) bool {
	before := n.tried
	for ; n.tried < len(p.active); n.tried++ {
		p.tryDuals(n, p.active[n.tried])
	}
	return n.tried > before
}

// mostGood is how many of the prices that bound a node best are tried on its parts.
const mostBestDuals = 6

func (p *prover) tryDuals(n *node, by int) {
	bound := p.boundOf(n, p.pool[by])
	if bound > n.bound {
		n.bound, n.duals = bound, by
	}
	at := len(n.bestDuals)
	for at > 0 && n.bestDuals[at-1].bound < bound {
		at--
	}
	if at < mostBestDuals {
		n.bestDuals = slices.Insert(n.bestDuals, at, boundBy{bound, by})
		n.bestDuals = n.bestDuals[:min(len(n.bestDuals), mostBestDuals)]
	}
}

// inherit tries on a part of a node the prices that bound the whole best.
func (p *prover) inherit(n, whole *node) {
	n.bound, n.duals, n.tried = whole.bound, whole.duals, whole.tried
	for _, one := range whole.bestDuals {
		p.tryDuals(n, one.duals)
	}
}

// closeGapBy tries the prices that serve on a part of a node until one bounds it near enough, those
// that bound the whole best first.
func (p *prover) closeGapBy(n, whole *node) bool {
	if p.inherit(n, whole); p.isGapClosed(n.bound) {
		return true
	}
	for _, by := range p.active {
		if p.tryDuals(n, by); p.isGapClosed(n.bound) {
			return true
		}
	}
	return false
}
