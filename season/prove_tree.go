package season

import (
	"cmp"
	"container/heap"
	"math"
	"slices"
)

// search goes through the tree of settings, the most promising first, until the best plan
// found and the bound of all that is left are near enough, ctx ends, or it has solved or
// split as often as it may.
func (p *prover) search(roots []*node) error {
	if len(roots) == 0 {
		return nil
	}
	for _, n := range roots {
		p.tighten(n)
	}
	var open tree
	for _, n := range roots {
		if n.shut {
			p.leaves = append(p.leaves, n)
		} else {
			open = append(open, n)
		}
	}
	heap.Init(&open)
	pool := len(p.pool)
	for splits := 0; len(open) > 0 && p.ctx.Err() == nil && splits < mostSplits; {
		n := open[0]
		if p.told.Bound = n.bound; p.isNear(n.bound) {
			break
		}
		p.tell()
		v, err := p.visit(n)
		if err != nil {
			return err
		}
		heap.Pop(&open)
		if v.solve != nil {
			if err := p.relaxWith(&open, v.solve); err != nil {
				return err
			}
		}
		splits += len(v.parts) / 2
		for _, part := range v.parts {
			heap.Push(&open, part)
		}
		if v.done {
			p.leaves = append(p.leaves, n)
		}
		if len(p.pool) > pool+manyBlends {
			pool = len(p.pool)
			p.unblend(slices.Concat(open, p.leaves)...)
		}
	}
	p.leaves = append(p.leaves, open...)
	return nil
}

// searchAndClose searches, and where that comes not near enough looks for a better plan in
// whole plants at the setting of the best, and searches on.
func (p *prover) searchAndClose(roots []*node) error {
	if err := p.search(roots); err != nil || len(p.leaves) == 0 || p.Relax == nil || p.best == nil || p.best.counts == nil {
		return err
	}
	if bound := p.leastBound(); p.isNear(bound) || p.ctx.Err() != nil {
		return nil
	}
	before := p.best
	if err := p.close(p.only(p.best)()[0]); err != nil || p.best == before {
		return err
	}
	roots, p.leaves = p.leaves, nil
	return p.search(roots)
}

// leastBound is the least bound of the leaves.
func (p *prover) leastBound() float64 {
	bound := math.Inf(1)
	for _, n := range p.leaves {
		bound = math.Min(bound, n.bound)
	}
	return bound
}

// relaxWith solves a setting for its prices, and unless a mate works beside it that of the next
// most promising node, if that wants one solved too: always both, so that it comes out the same
// on one core as on two.
func (p *prover) relaxWith(open *tree, first *node) error {
	both := []*node{first}
	if p.Relax != nil && !p.paired && len(*open) > 0 && !p.isNear((*open)[0].bound) {
		next := heap.Pop(open).(*node)
		v, err := p.visit(next)
		if err != nil {
			return err
		}
		for _, part := range v.parts {
			heap.Push(open, part)
		}
		if v.done {
			p.leaves = append(p.leaves, next)
		}
		if v.solve != nil {
			both = append(both, v.solve)
		}
	}
	return p.relax(both...)
}

// visited is what becomes of a node that was looked at: the nodes to be looked at in its place,
// itself among them or two parts of it, and a setting whose prices are wanted; done where no
// more can be done for it.
type visited struct {
	parts []*node
	solve *node
	done  bool
}

// visit takes the most promising node a step further. It tries the prices that serve, blends
// of them, and those of the setting that is likeliest within it; where they bound that well,
// or can't bound it better, it splits the node.
func (p *prover) visit(n *node) (visited, error) {
	switch {
	case p.tighten(n):
		return visited{parts: []*node{n}}, nil
	case n.hasTurns():
		return visited{parts: p.split(n, n.stake(everyBurner))}, nil
	}
	used, one, uncounted := p.likeliest(n, n.by)
	near, before := p.nearBy(one, n), n.bound
	if p.try(n, one.by); n.bound > before {
		return visited{parts: []*node{n}}, nil
	}
	var days []span
	if one.by != n.by && p.best != nil {
		var other *node
		if days, other, _ = p.likeliest(n, one.by); p.blend(n, one, other) {
			return visited{parts: []*node{n}}, nil
		}
	}
	if key := one.key(); !near && !p.solved[key] && !p.isSpent() {
		p.solved[key] = true
		return visited{parts: []*node{n}, solve: one.ready()}, nil
	}
	if n.isOne() {
		if n.shut = true; p.Solver == nil || p.isSpent() {
			return visited{done: true}, nil
		}
		return visited{done: true}, p.close(n.ready())
	}
	return visited{parts: p.split(n, p.cutOf(n, used, days, uncounted))}, nil
}

// cutOf finds where to split a node: between the likeliest settings by two sorts of prices;
// else where what burns beside the houses is not counted, or where most money is at stake.
func (p *prover) cutOf(n *node, used, days []span, uncounted float64) cut {
	if days != nil {
		if c, is := n.between(used, days); is {
			return c
		}
	}
	if uncounted > uncountedShare*Share*p.scaleOfBest() && slices.ContainsFunc(n.others, n.isLoose) {
		return n.stake(n.isLoose)
	}
	return n.stake(everyBurner)
}

func everyBurner(int) bool { return true }

// isLoose reports whether a burner that is not swept may burn on various days.
func (n *node) isLoose(burner int) bool {
	return slices.Contains(n.others, burner) && n.least[burner] != n.widest[burner]
}

// uncountedShare is how much of the gap that is aimed at may be left uncounted of what burns
// beside the houses when a node's likeliest setting is solved.
const uncountedShare = 0.5

func (p *prover) scaleOfBest() float64 {
	if p.best == nil {
		return 0
	}
	return p.scale(p.best)
}

// tree is nodes that are open, that with the lowest bound first.
type tree []*node

func (t tree) Len() int      { return len(t) }
func (t tree) Swap(i, j int) { t[i], t[j] = t[j], t[i] }
func (t tree) Less(i, j int) bool {
	return cmp.Or(cmp.Compare(t[i].bound, t[j].bound), cmp.Compare(t[i].order, t[j].order)) < 0
}

// Push adds a node, as package heap wants it.
func (t *tree) Push(n any) { *t = append(*t, n.(*node)) }

// Pop takes the last one away, as package heap wants it.
func (t *tree) Pop() any {
	last := len(*t) - 1
	n := (*t)[last]
	*t = (*t)[:last]
	return n
}
