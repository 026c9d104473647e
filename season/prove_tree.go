package season

import (
	"math"
	"slices"
)

// node is a set of settings: the levels of a field, each heated place warmed from one of a
// run of days to one of another. What it holds for its widest run of choices and its shortest
// heating holds for every setting in it.
type node struct {
	f        *field
	from, to [][2]int // by heated place: first and last of the field's begins and ends
	heat     float64  // of the shortest heating
	bound    float64  // no plan within costs less
	by       int      // the prices that show it; -1: by a search of all whole numbers
	tried    int      // prices tried on it
	root     bool     // all settings of its field
	relaxed  bool     // its own prices have been looked for
}

func (p *prover) nodeOf(f *field, from, to [][2]int) *node {
	n := &node{f: f, from: from, to: to, bound: math.Inf(-1)}
	for hot := range f.hot {
		n.heat += f.warmth[hot].cost(span{f.begins[hot][from[hot][0]], f.ends[hot][to[hot][0]]})
	}
	p.tighten(n)
	return n
}

// whole is the node of all settings of a field.
func (p *prover) whole(f *field) *node {
	var from, to [][2]int
	for hot := range f.hot {
		from, to = append(from, [2]int{0, len(f.begins[hot]) - 1}), append(to, [2]int{0, len(f.ends[hot]) - 1})
	}
	n := p.nodeOf(f, from, to)
	n.root = true
	return n
}

// allows reports whether a choice can be made within the longest heating of the node.
func (n *node) allows(c *choice) bool {
	for hot, used := range c.use {
		if used.from != never && (used.from < n.f.begins[hot][n.from[hot][1]] || used.to > n.f.ends[hot][n.to[hot][1]]) {
			return false
		}
	}
	return true
}

// isOne reports whether the node is one single setting.
func (n *node) isOne() bool {
	one := func(r [2]int) bool { return r[0] == r[1] }
	return !slices.ContainsFunc(n.from, func(r [2]int) bool { return !one(r) }) && !slices.ContainsFunc(n.to, func(r [2]int) bool { return !one(r) })
}

// split parts a node in two, where most heat is at stake.
func (p *prover) split(n *node) [2]*node {
	most, side, at := -1.0, 0, 0
	for hot := range n.f.hot {
		b, e, w := n.f.begins[hot], n.f.ends[hot], n.f.warmth[hot]
		long := w.cost(span{b[n.from[hot][1]], e[n.to[hot][1]]})
		for i, r := range [][2]int{n.from[hot], n.to[hot]} {
			if r[0] == r[1] {
				continue
			}
			short := span{b[n.from[hot][0]], e[n.to[hot][1]]}
			if i == 1 {
				short = span{b[n.from[hot][1]], e[n.to[hot][0]]}
			}
			if stake := long - w.cost(short); stake > most {
				most, side, at = stake, i, hot
			}
		}
	}
	part := func(low bool) *node {
		from, to := slices.Clone(n.from), slices.Clone(n.to)
		r := &[][][2]int{from, to}[side][at]
		if half := (r[0] + r[1]) / 2; low {
			r[1] = half
		} else {
			r[0] = half + 1
		}
		child := p.nodeOf(n.f, from, to)
		if n.bound > child.bound {
			child.bound, child.by = n.bound, n.by
		}
		return child
	}
	return [2]*node{part(true), part(false)}
}

// search goes through the tree of settings, the most promising first, until the best plan
// found and the bound of all that is left are near enough, ctx ends, or it has solved as
// often as it may.
func (p *prover) search(open []*node) error {
	for p.ctx.Err() == nil {
		at := leastBound(open)
		if at < 0 {
			break
		}
		n := open[at]
		if p.told.Bound = n.bound; p.isNear(n.bound) || p.solves() {
			break
		}
		p.tell()
		switch {
		case !n.relaxed && (n.isOne() || n.root):
			if err := p.relax(n); err != nil {
				return err
			}
		case n.isOne():
			if err := p.close(n); err != nil {
				return err
			}
			p.leaves = append(p.leaves, n)
			open = slices.Delete(open, at, at+1)
		default:
			open = slices.Delete(open, at, at+1)
			halves := p.split(n)
			open = append(open, halves[0], halves[1])
		}
	}
	p.leaves = append(p.leaves, open...)
	return nil
}

// leastBound returns the node with the lowest bound, the first of several; -1 for none.
func leastBound(open []*node) int {
	best := -1
	for i, n := range open {
		if best < 0 || n.bound < open[best].bound {
			best = i
		}
	}
	return best
}
