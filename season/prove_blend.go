package season

import "slices"

// worthwhile is how much of what a node's bound lacks a blend of prices must make good to be
// kept.
const worthwhile = 0.1

// mostMixes is how many mixes of prices are tried at a time on a node with several houses; with one
// house prices pull apart less, and one does.
const mostMixes = 3

// duel is prices of which each bounds some settings of a node well and others badly, and those
// settings: worth is what each bounds each by.
type duel struct {
	by       []int // of the pool
	settings []*node
	worth    [][]float64 // by prices and setting
}

// blend mixes the prices that bound a node with others that bound its likeliest setting better
// (other is the likeliest by those), so that the worst of these is bounded as well as can be, and
// keeps the mix where it bounds the node enough better. A mix of prices bounds as truly as any of
// them.
func (p *prover) blend(n, one, other *node) bool {
	d := &duel{settings: []*node{other}}
	p.joins(d, n.by)
	p.meets(d, one)
	best, bound, mixes := (*prices)(nil), n.bound, 1
	if len(n.houses) > 1 {
		mixes = mostMixes
	}
	for range mixes {
		x := p.mixedBy(d)
		_, next, _, b := p.likeliestBy(n, x)
		if b > bound {
			best, bound = x, b
		}
		if p.isNear(bound) {
			break
		}
		p.nearBy(next, n)
		if !p.meets(d, next) {
			break
		}
	}
	lacks := p.costOf(p.best) - Share*p.scale(p.best) - n.bound
	if best == nil || bound < n.bound+worthwhile*lacks {
		return false
	}
	p.pool = append(p.pool, best)
	p.try(n, len(p.pool)-1)
	best.forget() // many are kept, and few are tried on many nodes
	return true
}

// joins adds prices to a duel, and reports whether they are new to it.
func (p *prover) joins(d *duel, by int) bool {
	if by < 0 || slices.Contains(d.by, by) {
		return false
	}
	var worth []float64
	for _, s := range d.settings {
		worth = append(worth, p.boundOf(s, p.pool[by]))
	}
	d.by, d.worth = append(d.by, by), append(d.worth, worth)
	return true
}

// meets adds a setting to a duel, with the prices that bound it best, and reports whether either
// is new to it.
func (p *prover) meets(d *duel, s *node) bool {
	fresh := !slices.ContainsFunc(d.settings, func(known *node) bool { return known.key() == s.key() })
	if fresh {
		d.settings = append(d.settings, s)
		for k, by := range d.by {
			d.worth[k] = append(d.worth[k], p.boundOf(s, p.pool[by]))
		}
	}
	return p.joins(d, s.by) || fresh
}

// duelRounds is how many rounds a duel is played for.
const duelRounds = 200

// shares plays a duel: in turn the setting that is bounded worst by what was played so far, and the
// prices that do best against the settings so far. The shares of what was played come near those
// that bound the worst setting best.
//
// Source: Brown, Iterative solution of games by fictitious play, in Activity Analysis of Production
// and Allocation (1951), 374-376; from memory.
func (d *duel) shares() []float64 {
	played, bySetting, byPrices := make([]float64, len(d.by)), make([]float64, len(d.settings)), make([]float64, len(d.by))
	for range duelRounds {
		k := slices.Index(byPrices, slices.Max(byPrices))
		played[k] += 1.0 / duelRounds
		for j, w := range d.worth[k] {
			bySetting[j] += w
		}
		j := slices.Index(bySetting, slices.Min(bySetting))
		for k := range d.by {
			byPrices[k] += d.worth[k][j]
		}
	}
	return played
}

// mixedBy mixes the prices of a duel by their shares.
func (p *prover) mixedBy(d *duel) *prices {
	var x *prices
	sum := 0.0
	for k, share := range d.shares() {
		if share == 0 {
			continue
		}
		if sum += share; x == nil {
			x = p.pool[d.by[k]]
			continue
		}
		x = p.mixed(p.pool[d.by[k]], x, share/sum)
	}
	return x
}

// manyBlends is how many prices are added before those that nothing leans on are let go of.
const manyBlends = 256

// unblend lets go of blends on which no node leans.
func (p *prover) unblend(nodes ...*node) {
	kept := map[int]bool{}
	for _, n := range nodes {
		kept[n.by] = true
		for _, one := range n.good {
			kept[one.by] = true
		}
	}
	for _, i := range p.latest {
		kept[i] = true
	}
	for i := range p.pool {
		if !kept[i] {
			p.pool[i] = p.pool[0] // prices of nothing, which bound too
		}
	}
}

// mixed is prices of which a share is taken from a and the rest from b.
func (p *prover) mixed(a, b *prices, share float64) *prices {
	mix := func(a, b []float64) []float64 {
		c := make([]float64, len(a))
		for i := range c {
			c[i] = share*a[i] + (1-share)*b[i]
		}
		return c
	}
	x := p.pricesOf(mix(a.by, b.by))
	if a.dues == nil && b.dues == nil {
		return x
	}
	x.dues = make([]*dues, len(p.slots))
	for i := range x.dues {
		one, other := a.duesOn(i), b.duesOn(i)
		if one == nil && other == nil {
			continue
		}
		if one == nil {
			one = p.noDues(p.slots[i])
		}
		if other == nil {
			other = p.noDues(p.slots[i])
		}
		d := &dues{monday: one.monday, row: one.row, room: mix(one.room, other.room), all: mix(one.all, other.all)}
		for g := range one.upTo {
			d.upTo = append(d.upTo, mix(one.upTo[g], other.upTo[g]))
		}
		x.dues[i] = d
	}
	return x
}

// duesOn returns the dues for a burner; nil where there are none.
func (x *prices) duesOn(burner int) *dues {
	if x.dues == nil {
		return nil
	}
	return x.dues[burner]
}
