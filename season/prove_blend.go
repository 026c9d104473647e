package season

// worthwhile is how much of what a node's bound lacks a blend of prices must make good to be
// kept.
const worthwhile = 0.1

// blend mixes the prices that bound a node with others that bound its likeliest setting better,
// in such a way that the likeliest settings of both come out alike, and keeps the mix where it
// bounds the node enough better. A mix of prices bounds as truly as either.
func (p *prover) blend(n, one, other *node, by int) bool {
	a, b := p.pool[n.by], p.pool[by]
	first, second := p.boundOf(one, b)-p.boundOf(n, b), p.boundOf(other, a)-n.bound
	if !(first > 0) || !(second > 0) {
		return false
	}
	x := p.mixed(a, b, first/(first+second))
	lacks := p.costOf(p.best) - Share*p.scale(p.best) - n.bound
	if p.boundOf(n, x) < n.bound+worthwhile*lacks {
		return false
	}
	p.pool = append(p.pool, x)
	p.try(n, len(p.pool)-1)
	return true
}

// unblend lets go of blends that no leaf leans on.
func (p *prover) unblend() {
	kept := map[int]bool{}
	for _, n := range p.leaves {
		kept[n.by] = true
		if n.by < 0 && len(n.good) > 0 { // a search bounds it, but the certificate adds up prices
			kept[n.good[0].by] = true
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
