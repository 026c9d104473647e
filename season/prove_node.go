package season

import (
	"fmt"
	"math"
	"slices"
)

// node is a set of settings: how every place is held, each burner lit on one of a run of
// days, put out on one of another, and its level stepped on one of a third.
type node struct {
	at      holds
	f       *field    // what may be chosen
	from    [][2]int  // by burner: first and last of the field's begins
	to      [][2]int  // and of its ends
	turn    [][2]int  // and of its turns
	least   []span    // by burner: the shortest burning
	widest  []span    // and the longest
	houses  []int     // the burners that are swept, see sweep
	others  []int     // those that are not
	beside  float64   // cost of the shortest burning of the others
	burning float64   // and of all
	bound   float64   // no plan within costs less
	by      int       // the prices that show it; -1: by a search of all whole numbers
	tried   int       // of the prices that serve, those tried on it
	order   int       // in which it was made
	good    []priced  // those of them that bound it best, the best first
	shut    bool      // nothing more can be done for it
	may     [][]int32 // by group: the choices within its longest burning; nil before it is asked for
	always  []bool    // by group: whether one of them wants nothing that is short
}

// runs are the three runs of days of a node's burners.
type runs [3][][2]int

// nodeOf makes a node out of runs of a field's days.
func (p *prover) nodeOf(f *field, r runs) *node {
	p.made++
	n := &node{at: f.at, f: f, from: r[0], to: r[1], turn: r[2], bound: math.Inf(-1), order: p.made}
	for i, b := range f.burners {
		least := span{f.begins[i][r[0][i][0]], f.ends[i][r[1][i][0]]}
		n.least = append(n.least, least)
		n.widest = append(n.widest, span{f.begins[i][r[0][i][1]], f.ends[i][r[1][i][1]]})
		cost := b.least(least, n.turns(i))
		n.burning += cost
		if !b.lamps && p.isOpen(b.at) && b.hold.level > 0 && len(n.houses) < mostSwept {
			n.houses = append(n.houses, i)
		} else {
			n.beside += cost
			n.others = append(n.others, i)
		}
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
	return p.nodeOf(f, r)
}

// ready lists the choices within a node.
func (n *node) ready() *node {
	if n.may != nil {
		return n
	}
	n.may, n.always = make([][]int32, len(n.f.choices)), make([]bool, len(n.f.choices))
	for g, all := range n.f.choices {
		for i, c := range all {
			if n.allows(c) {
				n.may[g] = append(n.may[g], int32(i))
				n.always[g] = n.always[g] || c.route.direct
			}
		}
	}
	return n
}

// allows reports whether a choice can be made within the longest burning of the node.
func (n *node) allows(c *choice) bool {
	for i, used := range c.use {
		if used.from != never && (used.from < n.widest[i].from || used.to > n.widest[i].to) {
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
	return true
}

// key tells a single setting from every other.
func (n *node) key() string { return fmt.Sprint(n.at.key(), n.least, n.widest, n.turn) }

// split parts a node in two: a run of days of a burner up to a place in its list, and after it.
func (p *prover) split(n *node, c cut) []*node {
	part := func(low bool) *node {
		r := runs{slices.Clone(n.from), slices.Clone(n.to), slices.Clone(n.turn)}
		if one := &r[c.side][c.burner]; low {
			one[1] = c.at
		} else {
			one[0] = c.at + 1
		}
		child := p.nodeOf(n.f, r)
		p.inherit(child, n)
		return child
	}
	return []*node{part(true), part(false)}
}

// cut is where a node is split.
type cut struct{ side, burner, at int }

// between finds where to split a node so that two settings are parted: halfway between them,
// where the most money lies between them. It reports whether there is such a place.
func (n *node) between(a, b []span) (c cut, is bool) {
	most := 0.0
	for i, burner := range n.f.burners {
		turns := n.turns(i)
		for side, change := range []span{{b[i].from, a[i].to}, {a[i].from, b[i].to}} {
			days, r := n.f.begins[i], n.from[i]
			one, other := a[i].from, b[i].from
			if side == 1 {
				days, r, one, other = n.f.ends[i], n.to[i], a[i].to, b[i].to
			}
			first, second := slices.Index(days, one), slices.Index(days, other)
			if apart := math.Abs(burner.least(change, turns) - burner.least(a[i], turns)); first >= 0 && second >= 0 && first != second && apart > most {
				at := (first + second - 1) / 2
				if at >= r[0] && at < r[1] {
					most, c, is = apart, cut{side, i, at}, true
				}
			}
		}
	}
	return c, is
}

// stake finds the run of days, of which burner, on which most money hangs.
func (n *node) stake(serves func(burner int) bool) cut {
	half := func(side, burner int) cut {
		r := (runs{n.from, n.to, n.turn})[side][burner]
		return cut{side, burner, (r[0] + r[1]) / 2}
	}
	for i, r := range n.turn {
		if r[0] != r[1] {
			return half(2, i)
		}
	}
	side, burner := 0, 0
	most := -1.0
	for i, b := range n.f.burners {
		if !serves(i) {
			continue
		}
		from, to, turns := n.from[i], n.to[i], n.turns(i)
		long := b.most(n.widest[i], turns)
		for k, less := range []float64{
			b.most(span{n.least[i].from, n.widest[i].to}, turns), b.most(span{n.widest[i].from, n.least[i].to}, turns), b.least(n.widest[i], turns),
		} {
			if r := [][2]int{from, to, n.turn[i]}[k]; r[0] != r[1] && long-less > most {
				most, side, burner = long-less, k, i
			}
		}
	}
	return half(side, burner)
}

func (n *node) hasTurns() bool {
	return slices.ContainsFunc(n.turn, func(r [2]int) bool { return r[0] != r[1] })
}
