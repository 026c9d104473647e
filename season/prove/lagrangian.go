package prove

import (
	"cmp"
	"slices"

	"eyeup/season"
)

// mostSearched is how many houses of a node are gone through day by day; what else is on, lamps and
// further houses, is taken at the shortest while choices are taken at the longest.
const mostHouses = 2

// lagrangian reckons what is least within a node at some prices, over all days on which its houses
// may be switched on and off: what is on there is paid for, and each group takes the way that is
// cheapest where these are on. Valid by weak duality, whoever found the prices. There is one, used
// again for each.
type lagrangian struct {
	p      *prover
	n      *node
	duals  *duals
	houses []houseSavings // those of the node
	spare  [mostHouses]houseSavings
	chosen []*season.Choice // by group: the cheapest that needs no house heated; nil: left out, or no heater is on
	base   []float64        // what it costs

	saved   [][]float64 // of a pair of houses: by day switched on and off, what each group saves; the first house's last
	isKnown []bool      // which of the second house's are
}

// boundOf returns a cost below which no plan within a node can lie, whoever found the prices.
func (p *prover) boundOf(n *node, x *duals) float64 {
	bound, _ := p.lagrangianOf(n, x).minimum()
	return bound
}

// lagrangianOf prepares a Lagrangian bound: what each group does where no house is heated, and what it saves where
// one does.
func (p *prover) lagrangianOf(n *node, x *duals) *lagrangian {
	s := &p.lagrangian
	s.p, s.n, s.duals = p, n, x
	s.base = append(s.base[:0], p.unheatedCost(x, n.sub.ways[0])...)
	s.chosen = append(s.chosen[:0], make([]*season.Choice, len(p.problem.groups))...)
	s.houses = s.spare[:len(n.houses)]
	for h, i := range n.houses {
		one := &s.houses[h]
		one.heater, one.savings, one.runs = i, one.savings[:0], one.runs[:0]
	}
	for _, through := range n.sub.ways {
		for g, all := range p.candidatesOf(x, through, n.sub.ways[0]) {
			s.takeUnheated(g, all)
		}
	}
	for g := range p.problem.groups { // so that what one group saves stands together
		for _, through := range n.sub.ways[1:] {
			s.noteSavings(g, p.candidatesOf(x, through, n.sub.ways[0])[g])
		}
	}
	return s
}

// takeUnheated takes the cheapest offer to a group that needs no house heated.
func (s *lagrangian) takeUnheated(g int, all []candidate) {
	for _, o := range all {
		if o.cost >= s.base[g] {
			return
		}
		if s.houseOf(o.Choice) < 0 && s.n.allows(o.Choice) {
			s.base[g], s.chosen[g] = o.cost, o.Choice
			return
		}
	}
}

// noteSavings notes what a group saves by offers that need a house heated.
func (s *lagrangian) noteSavings(g int, all []candidate) {
	for _, o := range all {
		if o.cost >= s.base[g] {
			return
		}
		h := s.houseOf(o.Choice)
		if h < 0 || !s.n.allows(o.Choice) {
			continue
		}
		one := &s.houses[h]
		use, least := o.Use[one.heater], s.n.shortest[one.heater]
		days := season.Days{From: min(use.From, least.From), To: max(use.To, least.To)}
		one.savings = append(one.savings, saving{g, float64(s.p.problem.groups[g].Want) * (s.base[g] - o.cost), days, o.Choice})
	}
}

// houseOf returns which of the searched houses is heated for a choice, -1 where none does.
func (s *lagrangian) houseOf(c *season.Choice) int {
	for h := range s.houses {
		if c.Use[s.houses[h].heater].From != season.Never {
			return h
		}
	}
	return -1
}

// minimum returns the least cost, and the days on which the houses are heated then.
func (s *lagrangian) minimum() (float64, []heatedRun) {
	total := s.duals.constant + s.othersLeast()
	for g, cost := range s.base {
		total += float64(s.p.problem.groups[g].Want) * cost
	}
	for h := range s.houses {
		s.fillRuns(&s.houses[h])
	}
	switch len(s.houses) {
	case 0:
		return total, nil
	case 1:
		best := slices.MinFunc(s.houses[0].runs, func(a, b heatedRun) int { return cmp.Compare(a.net, b.net) })
		return total + best.net, []heatedRun{best}
	}
	net, best := s.pairHouses(&s.houses[0], &s.houses[1])
	return total + net, best
}

// othersLeast is what all else that is on costs at the least, once the dual prices of heaters of all plants are
// taken in.
func (s *lagrangian) othersLeast() float64 {
	total := s.n.othersCost
	for i, one := range s.duals.heaters {
		if one != nil && !slices.Contains(s.n.houses, i) {
			total += one.leastCost(s.n, i)
		}
	}
	return total
}

// minimiser returns the days on which all is on where the bound of a node lies at some
// prices, the part of the node with these days for its houses, and what all else that is on
// costs there beyond what the bound counts.
func (p *prover) minimiser(n *node, by int) (used []season.Days, one *node, uncounted float64) {
	used, one, uncounted, _ = p.minimiserBy(n, p.pool[max(by, 0)])
	return used, one, uncounted
}

// minimiserBy also returns the bound.
func (p *prover) minimiserBy(n *node, x *duals) (used []season.Days, one *node, uncounted, bound float64) {
	s := p.lagrangianOf(n, x)
	bound, best := s.minimum()
	used = slices.Clone(n.shortest)
	for h, days := range best {
		used[s.houses[h].heater] = days.Days
	}
	uncounted = -s.othersLeast()
	for g, group := range s.p.problem.groups {
		c, saved := s.chosen[g], 0.0
		for h, days := range best {
			if v := s.houses[h].bestOf(g, days.Days); v != nil && v.amount > saved {
				saved, c = v.amount, v.Choice
			}
		}
		if c != nil {
			uncounted -= float64(group.Want) * s.duals.heaterShare(g, c)
			n.widen(used, c)
		}
	}
	for _, i := range n.others {
		uncounted += n.sub.heaters[i].LeastCost(used[i], n.stepDays(i))
	}
	return used, p.restrictedTo(n, s, best), uncounted, bound
}

// restrictedTo is the part of a node whose houses are heated on certain days.
func (p *prover) restrictedTo(n *node, s *lagrangian, best []heatedRun) *node {
	f, r := *n.sub, dayRanges{slices.Clone(n.on), slices.Clone(n.off), n.step}
	f.onDays, f.offDays = slices.Clone(f.onDays), slices.Clone(f.offDays)
	for h, days := range best {
		i := s.houses[h].heater
		f.onDays[i], f.offDays[i], r[0][i], r[1][i] = []int{days.From}, []int{days.To}, [2]int{}, [2]int{}
	}
	return p.newNode(&f, r)
}

// widen widens the days on which all that is on is used by those that a choice wants, but
// for the houses searched day by day, which are heated long enough.
func (n *node) widen(used []season.Days, c *season.Choice) {
	for i, use := range c.Use {
		if use.From != season.Never && !slices.Contains(n.houses, i) {
			used[i] = season.Days{From: min(used[i].From, use.From), To: max(used[i].To, use.To)}
		}
	}
}
