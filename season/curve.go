package season

import (
	"cmp"
	"math"
	"slices"
)

// Points on the price of early: most, and how much dearer than usual the last one may count
// a week of flower. The first counts it for so little that only what is nearly free is done.
const (
	mostPoints = 7
	dearest    = 10.0
	cheapest   = 0.02
)

// proven is the best plan at one weight, with its bound.
type proven struct {
	weight float64
	best   *found
	bound  float64
	leaves []*node
	pool   []*prices
	ended  bool // it was stopped before its bound was near
}

// prove looks for the best plan at a weight within some nodes, and for its bound.
func (p *prover) prove(weight float64, name string, seeds []*found, open func() []*node) (*proven, error) {
	p.at(weight, name)
	for _, f := range seeds {
		p.consider(f)
	}
	if err := p.search(open()); err != nil {
		return nil, err
	}
	bound := math.Inf(1)
	for _, n := range p.leaves {
		bound = math.Min(bound, n.bound)
	}
	p.told.Bound = bound
	p.tell()
	return &proven{weight: weight, best: p.best, bound: bound, leaves: p.leaves, pool: p.pool, ended: !p.isNear(bound)}, nil
}

// everything is the tree's root: all levels of the heated places.
func (p *prover) everything() []*node {
	var all []*node
	for _, at := range p.allLevels() {
		all = append(all, p.whole(p.field(at)))
	}
	return all
}

// only is the one setting of a plan: what burns, and when, is settled and paid for.
func (p *prover) only(f *found) func() []*node {
	return func() []*node {
		one := *p.field(f.at)
		one.begins, one.ends = nil, nil
		for _, used := range f.used {
			one.begins, one.ends = append(one.begins, []int{used.from}), append(one.ends, []int{used.to})
		}
		return []*node{p.whole(&one)}
	}
}

// curve proves plans along the price of early: the cheapest, the earliest, and between them
// where a straight line between two neighbours lies furthest from any plan known. Each is
// the best at the weight that its neighbours make equal.
func (p *prover) curve(own float64, last *proven, seeds []*found) ([]*proven, error) {
	all := []*proven{last}
	add := func(weight float64) error {
		for _, one := range all {
			seeds = append(seeds, one.best)
		}
		one, err := p.prove(weight, "the price of early", seeds, p.everything)
		if err == nil {
			all = append(all, one)
		}
		return err
	}
	for _, weight := range []float64{own * cheapest, own} {
		if err := add(weight); err != nil {
			return nil, err
		}
	}
	tried := map[[2]*found]bool{}
	for p.ctx.Err() == nil && len(distinct(all)) < mostPoints {
		weight, pair, found := widest(distinct(all), tried)
		if !found {
			break
		}
		tried[pair] = true
		if err := add(weight); err != nil {
			return nil, err
		}
	}
	return distinct(all), nil
}

// distinct sorts plans by their money and leaves out what another beats or equals in both
// money and weeks of flower.
func distinct(all []*proven) []*proven {
	sorted := slices.Clone(all)
	slices.SortStableFunc(sorted, func(a, b *proven) int {
		return cmp.Or(cmp.Compare(a.best.money(), b.best.money()), cmp.Compare(b.best.gain, a.best.gain))
	})
	var kept []*proven
	for _, one := range sorted {
		if len(kept) == 0 || one.best.gain > kept[len(kept)-1].best.gain+1e-9 {
			kept = append(kept, one)
		}
	}
	return kept
}

// widest returns the neighbours between which most could lie, and the weight at which they
// are worth the same.
func widest(all []*proven, tried map[[2]*found]bool) (weight float64, pair [2]*found, is bool) {
	far := 0.0
	for i := 1; i < len(all); i++ {
		a, b := all[i-1].best, all[i].best
		money, gain := b.money()-a.money(), b.gain-a.gain
		if two := [2]*found{a, b}; money > 0 && gain > 0 && !tried[two] && money*gain > far {
			far, weight, pair, is = money*gain, money/gain, two, true
		}
	}
	return weight, pair, is
}
