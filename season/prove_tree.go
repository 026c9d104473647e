package season

import (
	"math"
	"slices"
)

// node is a set of settings: the levels of a field, each burner lit on one of a run of days
// and put out on one of another. What holds for its widest run of choices and its shortest
// burning holds for every setting in it.
type node struct {
	f        *field
	from, to [][2]int // by burner: first and last of the field's begins and ends
	may      [][]int  // by group: the choices within its widest run
	always   []bool   // by group: whether one of them wants nothing that is short
	burning  float64  // cost of the shortest burning
	bound    float64  // no plan within costs less
	by       int      // the prices that show it; -1: by a search of all whole numbers
	tried    int      // of the prices that serve, those tried on it
	root     bool     // all settings of its field
	relaxed  bool     // its own prices have been looked for
}

// nodeOf makes a node out of what may be chosen in a wider one.
func (p *prover) nodeOf(f *field, may [][]int, from, to [][2]int) *node {
	n := &node{f: f, from: from, to: to, bound: math.Inf(-1), may: make([][]int, len(may)), always: make([]bool, len(may))}
	for g, all := range may {
		for _, i := range all {
			if n.allows(&f.choices[g][i]) {
				n.may[g] = append(n.may[g], i)
				n.always[g] = n.always[g] || f.choices[g][i].route.direct
			}
		}
	}
	for i := range f.burners {
		n.burning += f.burners[i].cost(span{f.begins[i][from[i][0]], f.ends[i][to[i][0]]})
	}
	return n
}

// whole is the node of all settings of a field.
func (p *prover) whole(f *field) *node {
	var from, to [][2]int
	for i := range f.burners {
		from, to = append(from, [2]int{0, len(f.begins[i]) - 1}), append(to, [2]int{0, len(f.ends[i]) - 1})
	}
	may := make([][]int, len(f.choices))
	for g, all := range f.choices {
		for i := range all {
			may[g] = append(may[g], i)
		}
	}
	n := p.nodeOf(f, may, from, to)
	n.root = true
	return n
}

// allows reports whether a choice can be made within the longest burning of the node.
func (n *node) allows(c *choice) bool {
	for i, used := range c.use {
		if used.from != never && (used.from < n.f.begins[i][n.from[i][1]] || used.to > n.f.ends[i][n.to[i][1]]) {
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

// split parts a node in two, where most money is at stake.
func (p *prover) split(n *node) [2]*node {
	most, side, at := -1.0, 0, 0
	for i, b := range n.f.burners {
		lit, out, from, to := n.f.begins[i], n.f.ends[i], n.from[i], n.to[i]
		long := b.cost(span{lit[from[1]], out[to[1]]})
		for k, short := range []span{{lit[from[0]], out[to[1]]}, {lit[from[1]], out[to[0]]}} {
			if stake := long - b.cost(short); stake > most && [][2]int{from, to}[k][0] != [][2]int{from, to}[k][1] {
				most, side, at = stake, k, i
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
		child := p.nodeOf(n.f, n.may, from, to)
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

// search goes through the tree of settings, the most promising first, until the best plan
// found and the bound of all that is left are near enough, ctx ends, or it has solved as
// often as it may.
func (p *prover) search(open []*node) error {
	p.suit(open)
	for p.ctx.Err() == nil {
		at := leastBound(open)
		if at < 0 {
			break
		}
		n := open[at]
		if p.told.Bound = n.bound; p.isNear(n.bound) || p.isSpent() {
			break
		}
		p.tell()
		switch {
		case p.tighten(n):
		case !n.relaxed && (n.isOne() || n.root):
			if err := p.relax(n); err != nil {
				return err
			}
		case n.isOne() && p.Solver == nil:
			p.leaves = append(p.leaves, n)
			open = slices.Delete(open, at, at+1)
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
