package season

import (
	"cmp"
	"container/heap"
	"math"
	"slices"
)

// node is a set of settings: how every place is held, each burner lit on one of a run of
// days, put out on one of another, and its level stepped on one of a third. What holds for
// its widest run of choices and its shortest burning holds for every setting in it.
type node struct {
	at      holds
	f       *field    // what may be chosen; nil before it is opened, when runs and choices are all
	from    [][2]int  // by burner: first and last of the field's begins
	to      [][2]int  // and of its ends
	turn    [][2]int  // and of its turns
	may     [][]int32 // by group: the choices within its widest run
	always  []bool    // by group: whether one of them wants nothing that is short
	burning float64   // cost of the shortest burning
	bound   float64   // no plan within costs less
	by      int       // the prices that show it; -1: by a search of all whole numbers
	tried   int       // of the prices that serve, those tried on it
	order   int       // in which it was made
	depth   int       // times that it was split from all settings of its field
	relaxed bool      // its own prices have been looked for
}

// runs are the three runs of days of a node's burners.
type runs [3][][2]int

// nodeOf makes a node out of what may be chosen in a wider one.
func (p *prover) nodeOf(f *field, may [][]int32, r runs) *node {
	n := &node{at: f.at, f: f, from: r[0], to: r[1], turn: r[2], bound: math.Inf(-1), may: make([][]int32, len(may)), always: make([]bool, len(may))}
	for g, all := range may {
		n.may[g] = all
		if slices.ContainsFunc(all, func(i int32) bool { return !n.allows(&f.choices[g][i]) }) {
			n.may[g] = slices.DeleteFunc(slices.Clone(all), func(i int32) bool { return !n.allows(&f.choices[g][i]) })
		}
		n.always[g] = slices.ContainsFunc(n.may[g], func(i int32) bool { return f.choices[g][i].route.direct })
	}
	for i, b := range f.burners {
		n.burning += b.least(span{f.begins[i][n.from[i][0]], f.ends[i][n.to[i][0]]}, n.turns(i))
	}
	return n
}

// turns are the days on which a burner's level may step.
func (n *node) turns(burner int) []int {
	return n.f.turns[burner][n.turn[burner][0] : n.turn[burner][1]+1]
}

// whole is the node of all settings of a field.
func (p *prover) whole(f *field) *node {
	var r runs
	for i := range f.burners {
		for k, days := range [][][]int{f.begins, f.ends, f.turns} {
			r[k] = append(r[k], [2]int{0, len(days[i]) - 1})
		}
	}
	may := make([][]int32, len(f.choices))
	for g, all := range f.choices {
		for i := range all {
			may[g] = append(may[g], int32(i))
		}
	}
	return p.nodeOf(f, may, r)
}

// allows reports whether a choice can be made within the longest burning of the node.
func (n *node) allows(c *choice) bool {
	for i, used := range c.use {
		if used.from != never && (used.from < n.f.begins[i][n.from[i][1]] || used.to > n.f.ends[i][n.to[i][1]]) {
			return false
		}
		if b := n.f.burners[i]; b.at == c.place && !b.lamps && (c.steps[1] < n.turn[i][0] || c.steps[0] > n.turn[i][1]) {
			return false
		}
	}
	return true
}

// isOne reports whether the node is one single setting.
func (n *node) isOne() bool {
	for _, runs := range (runs{n.from, n.to, n.turn}) {
		if slices.ContainsFunc(runs, func(r [2]int) bool { return r[0] != r[1] }) {
			return false
		}
	}
	return n.f != nil
}

// split parts a node in two, where most money is at stake.
func (p *prover) split(n *node) [2]*node {
	side, at := n.stake()
	part := func(low bool) *node {
		r := runs{slices.Clone(n.from), slices.Clone(n.to), slices.Clone(n.turn)}
		one := &r[side][at]
		if half := (one[0] + one[1]) / 2; low {
			one[1] = half
		} else {
			one[0] = half + 1
		}
		child := p.nodeOf(n.f, n.may, r)
		p.made++
		child.order, child.depth = p.made, n.depth+1
		if n.bound > child.bound {
			child.bound, child.by = n.bound, n.by
		}
		if n.by >= 0 {
			p.try(child, n.by)
		}
		return child
	}
	return [2]*node{part(true), part(false)}
}

// stake finds the run of days, of which burner, on which most money hangs.
func (n *node) stake() (side, burner int) {
	for i, r := range n.turn {
		if r[0] != r[1] {
			return 2, i
		}
	}
	most := -1.0
	for i, b := range n.f.burners {
		lit, out, from, to, turns := n.f.begins[i], n.f.ends[i], n.from[i], n.to[i], n.turns(i)
		longest := span{lit[from[1]], out[to[1]]}
		long := b.most(longest, turns)
		for k, less := range []float64{
			b.most(span{lit[from[0]], out[to[1]]}, turns), b.most(span{lit[from[1]], out[to[0]]}, turns), b.least(longest, turns),
		} {
			if r := [][2]int{from, to, n.turn[i]}[k]; r[0] != r[1] && long-less > most {
				most, side, burner = long-less, k, i
			}
		}
	}
	return side, burner
}

// wantsPrices reports whether a node's own prices are worth looking for: at the root of levels
// that do not step and at
// the leaves, since those between are bound well enough by either.
func (n *node) wantsPrices() bool { return !n.relaxed && (n.isOne() || n.depth == 0 && !n.hasSteps()) }

func (n *node) hasSteps() bool { return slices.ContainsFunc(n.at, hold.steps) }

// mostDives is how many of the most promising levels are followed down to one setting before
// the tree is searched, so that there is a plan to hold bounds against.
const mostDives = 2

// nearEnough is the gap within which a plan known beforehand serves as well.
const nearEnough = 0.3

// dive follows the most promising half of a node down to one setting and solves it.
func (p *prover) dive(n *node) error {
	p.opened(n)
	if err := p.relax(n); err != nil {
		return err
	}
	for !n.isOne() {
		halves := p.split(n)
		p.tighten(halves[0])
		p.tighten(halves[1])
		if n = halves[0]; halves[1].bound < n.bound {
			n = halves[1]
		}
	}
	if !n.relaxed {
		if err := p.relax(n); err != nil {
			return err
		}
	}
	return p.close(n)
}

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
	open := tree(roots)
	heap.Init(&open)
	if p.Solver != nil && p.Relax != nil && !p.isWithin(open[0].bound, nearEnough) {
		for i := range min(mostDives, len(open)) {
			if err := p.dive(open[i]); err != nil {
				return err
			}
		}
		heap.Init(&open)
	}
	for splits := 0; len(open) > 0 && p.ctx.Err() == nil && splits < mostSplits; {
		n := open[0]
		if p.told.Bound = n.bound; p.isNear(n.bound) || p.isSpent() {
			break
		}
		p.tell()
		var err error
		switch {
		case p.tighten(n):
			heap.Fix(&open, 0)
		case n.f == nil:
			p.opened(n)
			heap.Fix(&open, 0)
		case n.wantsPrices():
			err = p.relax(n)
			heap.Fix(&open, 0)
		case n.isOne():
			if p.Solver != nil {
				err = p.close(n)
			}
			p.leaves = append(p.leaves, heap.Pop(&open).(*node))
		default:
			halves := p.split(heap.Pop(&open).(*node))
			heap.Push(&open, halves[0])
			heap.Push(&open, halves[1])
			splits++
		}
		if err != nil {
			return err
		}
	}
	p.leaves = append(p.leaves, open...)
	return nil
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
