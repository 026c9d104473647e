package season

import (
	"cmp"
	"slices"
)

// mostSwept is how many houses of a node are swept day by day; what else burns, lamps and
// further houses, is taken at the shortest while choices are taken at the longest.
const mostSwept = 2

// sweep reckons what is least within a node at some prices, over all days on which its houses
// may be lit and put out: what burns there is paid for, and each group takes the way that is
// cheapest where these burn. Valid by weak duality, whoever found the prices. There is one, used
// again for each.
type sweep struct {
	*prover
	n      *node
	x      *prices
	houses []lighting // those of the node
	room   [mostSwept]lighting
	taken  []*choice // by group: the cheapest for which no house burns; nil: left out, or nothing burns
	base   []float64 // what it costs

	each  [][]float64 // of a pair of houses: by day lit and put out, what each group saves; the first house's last
	known []bool      // which of the second house's are
}

// boundOf returns a cost below which no plan within a node can lie, whoever found the prices.
func (p *prover) boundOf(n *node, x *prices) float64 {
	bound, _ := p.sweep(n, x).least()
	return bound
}

// sweep readies a sweep: what each group does where no house burns, and what it saves where
// one does.
func (p *prover) sweep(n *node, x *prices) *sweep {
	s := &p.swept
	s.prover, s.n, s.x = p, n, x
	s.base = append(s.base[:0], p.idleOf(x, n.f.through[0])...)
	s.taken = append(s.taken[:0], make([]*choice, len(p.groups))...)
	s.houses = s.room[:len(n.houses)]
	for h, i := range n.houses {
		one := &s.houses[h]
		one.burner, one.savings, one.serve = i, one.savings[:0], one.serve[:0]
	}
	for _, through := range n.f.through {
		for g, all := range p.offersOf(x, through, n.f.through[0]) {
			s.unlit(g, all)
		}
	}
	for g := range p.groups { // so that what one group saves stands together
		for _, through := range n.f.through[1:] {
			s.lit(g, p.offersOf(x, through, n.f.through[0])[g])
		}
	}
	return s
}

// unlit takes the cheapest offer to a group for which no house burns.
func (s *sweep) unlit(g int, all []offer) {
	for _, o := range all {
		if o.cost >= s.base[g] {
			return
		}
		if s.houseOf(o.choice) < 0 && s.n.allows(o.choice) {
			s.base[g], s.taken[g] = o.cost, o.choice
			return
		}
	}
}

// lit notes what a group saves by offers for which a house burns.
func (s *sweep) lit(g int, all []offer) {
	for _, o := range all {
		if o.cost >= s.base[g] {
			return
		}
		h := s.houseOf(o.choice)
		if h < 0 || !s.n.allows(o.choice) {
			continue
		}
		one := &s.houses[h]
		use, least := o.use[one.burner], s.n.least[one.burner]
		days := span{min(use.from, least.from), max(use.to, least.to)}
		one.savings = append(one.savings, saving{g, float64(s.groups[g].want) * (s.base[g] - o.cost), days, o.choice})
	}
}

// houseOf returns which of the swept houses burns for a choice, -1 where none does.
func (s *sweep) houseOf(c *choice) int {
	for h := range s.houses {
		if c.use[s.houses[h].burner].from != never {
			return h
		}
	}
	return -1
}

// least returns the least cost, and the days on which the houses burn then.
func (s *sweep) least() (float64, []lit) {
	total := s.x.rest + s.beside()
	for g, cost := range s.base {
		total += float64(s.groups[g].want) * cost
	}
	for h := range s.houses {
		s.light(&s.houses[h])
	}
	switch len(s.houses) {
	case 0:
		return total, nil
	case 1:
		best := slices.MinFunc(s.houses[0].serve, func(a, b lit) int { return cmp.Compare(a.net, b.net) })
		return total + best.net, []lit{best}
	}
	net, best := s.pair(&s.houses[0], &s.houses[1])
	return total + net, best
}

// beside is what all else that burns costs at the least, once the dues of all plants are
// taken in.
func (s *sweep) beside() float64 {
	total := s.n.beside
	for i, one := range s.x.dues {
		if one != nil && !slices.Contains(s.n.houses, i) {
			total += one.least(s.n, i)
		}
	}
	return total
}

// likeliest returns the days on which all burns where the bound of a node lies at some
// prices, the part of the node with these days for its houses, and what all else that burns
// costs there beyond what the bound counts.
func (p *prover) likeliest(n *node, by int) (used []span, one *node, uncounted float64) {
	used, one, uncounted, _ = p.likeliestBy(n, p.pool[max(by, 0)])
	return used, one, uncounted
}

// likeliestBy also returns the bound.
func (p *prover) likeliestBy(n *node, x *prices) (used []span, one *node, uncounted, bound float64) {
	s := p.sweep(n, x)
	bound, best := s.least()
	used = slices.Clone(n.least)
	for h, days := range best {
		used[s.houses[h].burner] = days.span
	}
	uncounted = -s.beside()
	for g, group := range s.groups {
		c, saved := s.taken[g], 0.0
		for h, days := range best {
			if v := s.houses[h].within(g, days.span); v != nil && v.amount > saved {
				saved, c = v.amount, v.choice
			}
		}
		if c != nil {
			uncounted -= float64(group.want) * s.x.duesFor(g, c)
			n.spanning(used, c)
		}
	}
	for _, i := range n.others {
		uncounted += n.f.burners[i].least(used[i], n.turns(i))
	}
	return used, p.litOn(n, s, best), uncounted, bound
}

// litOn is the part of a node whose houses burn on certain days.
func (p *prover) litOn(n *node, s *sweep, best []lit) *node {
	f, r := *n.f, runs{slices.Clone(n.from), slices.Clone(n.to), n.turn}
	f.begins, f.ends = slices.Clone(f.begins), slices.Clone(f.ends)
	for h, days := range best {
		i := s.houses[h].burner
		f.begins[i], f.ends[i], r[0][i], r[1][i] = []int{days.from}, []int{days.to}, [2]int{}, [2]int{}
	}
	return p.nodeOf(&f, r)
}

// spanning widens the days on which all that burns is used by those that a choice wants, but
// for the houses swept, which burn long enough.
func (n *node) spanning(used []span, c *choice) {
	for i, use := range c.use {
		if use.from != never && !slices.Contains(n.houses, i) {
			used[i] = span{min(used[i].from, use.from), max(used[i].to, use.to)}
		}
	}
}
