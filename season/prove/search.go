package prove

import (
	"cmp"
	"container/heap"
	"math"
	"slices"

	"eyeup/season"
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
	var open openNodes
	for _, n := range roots {
		if n.exhausted {
			p.leaves = append(p.leaves, n)
		} else {
			open = append(open, n)
		}
	}
	heap.Init(&open)
	pool := len(p.pool)
	for splits := 0; len(open) > 0 && p.problem.ctx.Err() == nil && splits < mostBranchings; {
		n := open[0]
		if p.progress.Bound = n.bound; p.isGapClosed(n.bound) {
			break
		}
		p.reportProgress()
		v, err := p.expand(n)
		if err != nil {
			return err
		}
		heap.Pop(&open)
		if v.solve != nil {
			if err := p.relaxNext(&open, v.solve); err != nil {
				return err
			}
		}
		splits += len(v.open) / 2
		for _, part := range v.open {
			heap.Push(&open, part)
		}
		if v.done {
			p.leaves = append(p.leaves, n)
		}
		if len(p.pool) > pool+mixesBetweenDrops {
			pool = len(p.pool)
			p.dropUnusedMixes(slices.Concat(open, p.leaves)...)
		}
	}
	p.leaves = append(p.leaves, open...)
	return nil
}

// searchAndSolve searches, and where that comes not near enough looks for a better plan in
// whole plants at the setting of the best, and searches on.
func (p *prover) searchAndSolve(roots []*node) error {
	if err := p.search(roots); err != nil || len(p.leaves) == 0 || p.problem.planner.Ports.Relax == nil || p.incumbent == nil || p.incumbent.counts == nil {
		return err
	}
	if bound := p.leastBound(); p.isGapClosed(bound) || p.problem.ctx.Err() != nil {
		return nil
	}
	before := p.incumbent
	if err := p.solveWhole(p.onlySettingOf(p.incumbent)()[0]); err != nil || p.incumbent == before {
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

// relaxNext solves a setting for its prices, and unless a second prover works beside it that of the next
// most promising node, if that wants one solved too: always both, so that it comes out the same
// on one core as on two.
func (p *prover) relaxNext(open *openNodes, first *node) error {
	both := []*node{first}
	if p.problem.planner.Ports.Relax != nil && !p.paired && len(*open) > 0 && !p.isGapClosed((*open)[0].bound) {
		next := heap.Pop(open).(*node)
		v, err := p.expand(next)
		if err != nil {
			return err
		}
		for _, part := range v.open {
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

// expansion is what becomes of a node that was looked at: the nodes to be looked at in its place,
// itself among them or two parts of it, and a setting whose prices are wanted; done where no
// more can be done for it.
type expansion struct {
	open  []*node
	solve *node
	done  bool
}

// expand takes the most promising node a step further. It tries the prices that serve, mixes
// of them, and those of the setting that is likeliest within it; where they bound that well,
// or can't bound it better, it splits the node.
func (p *prover) expand(n *node) (expansion, error) {
	switch {
	case p.tighten(n):
		return expansion{open: []*node{n}}, nil
	case n.hasStepRange():
		return expansion{open: p.branch(n, n.costliestRange(anyHeater))}, nil
	}
	used, one, uncounted := p.minimiser(n, n.duals)
	near, before := p.closeGapBy(one, n), n.bound
	if p.tryDuals(n, one.duals); n.bound > before {
		return expansion{open: []*node{n}}, nil
	}
	var days []season.Days
	if one.duals != n.duals && p.incumbent != nil {
		var other *node
		if days, other, _ = p.minimiser(n, one.duals); p.mixDuals(n, one, other) {
			return expansion{open: []*node{n}}, nil
		}
	}
	if key := one.key(); !near && !p.solved[key] && !p.isSpent() {
		p.solved[key] = true
		return expansion{open: []*node{n}, solve: one.listAllowed()}, nil
	}
	if n.isSingle() {
		if n.exhausted = true; p.problem.planner.Ports.Solver == nil || p.isSpent() {
			return expansion{done: true}, nil
		}
		return expansion{done: true}, p.solveWhole(n.listAllowed())
	}
	return expansion{open: p.branch(n, p.branchingOf(n, used, days, uncounted))}, nil
}

// branchingOf finds where to split a node: between the likeliest settings by two sorts of prices;
// else where what is on beside the houses is not counted, or where most money is at stake.
func (p *prover) branchingOf(n *node, used, days []season.Days, uncounted float64) branching {
	if days != nil {
		if c, is := n.parting(used, days); is {
			return c
		}
	}
	if uncounted > uncountedOfGap*TargetGap*p.incumbentScale() && slices.ContainsFunc(n.others, n.isOpen) {
		return n.costliestRange(n.isOpen)
	}
	return n.costliestRange(anyHeater)
}

func anyHeater(int) bool { return true }

// isOpen reports whether a heater whose days are not searched may be on on various days.
func (n *node) isOpen(heater int) bool {
	return slices.Contains(n.others, heater) && n.shortest[heater] != n.longest[heater]
}

// uncountedShare is how much of the gap that is aimed at may be left uncounted of what is on
// beside the houses when a node's likeliest setting is solved.
const uncountedOfGap = 0.5

func (p *prover) incumbentScale() float64 {
	if p.incumbent == nil {
		return 0
	}
	return p.scale(p.incumbent)
}

// openNodes is nodes that are open, that with the lowest bound first.
type openNodes []*node

func (t openNodes) Len() int      { return len(t) }
func (t openNodes) Swap(i, j int) { t[i], t[j] = t[j], t[i] }
func (t openNodes) Less(i, j int) bool {
	return cmp.Or(cmp.Compare(t[i].bound, t[j].bound), cmp.Compare(t[i].order, t[j].order)) < 0
}

// Push adds a node, as package heap wants it.
func (t *openNodes) Push(n any) { *t = append(*t, n.(*node)) }

// Pop takes the last one away, as package heap wants it.
func (t *openNodes) Pop() any {
	last := len(*t) - 1
	n := (*t)[last]
	*t = (*t)[:last]
	return n
}
