package prove

import (
	"fmt"
	"math"
	"slices"

	"eyeup/season"
)

// node is a set of settings: how every place is held, each heater switched on on one of a run of
// days, switched off on one of another, and its level stepped on one of a third.
type node struct {
	at         season.Holds
	sub        *subproblem   // what may be chosen
	on         [][2]int      // by heater: first and last of the field's begins
	off        [][2]int      // and of its ends
	step       [][2]int      // and of its turns
	shortest   []season.Days // by heater: the shortest time on
	longest    []season.Days // and the longest
	houses     []int         // the heated houses whose days are searched one by one, see lagrangian
	others     []int         // those that are not
	othersCost float64       // the least cost of the others
	heatCost   float64       // and of all
	bound      float64       // no plan within costs less
	duals      int           // the prices that show it; -1: by a search of all whole numbers
	tried      int           // of the prices that serve, those tried on it
	order      int           // in which it was made
	bestDuals  []boundBy     // those of them that bound it best, the best first
	exhausted  bool          // nothing more can be done for it
	allowed    [][]int32     // by group: the choices within its longest time on; nil before it is asked for
	direct     []bool        // by group: whether one of them wants nothing that is short
}

// dayRanges are the three runs of days of a node's heaters.
type dayRanges [3][][2]int

// newNode makes a node out of runs of a subproblem's days.
func (p *prover) newNode(f *subproblem, r dayRanges) *node {
	p.nodes++
	n := &node{at: f.at, sub: f, on: r[0], off: r[1], step: r[2], bound: math.Inf(-1), order: p.nodes}
	for i, b := range f.heaters {
		least := season.Days{From: f.onDays[i][r[0][i][0]], To: f.offDays[i][r[1][i][0]]}
		n.shortest = append(n.shortest, least)
		n.longest = append(n.longest, season.Days{From: f.onDays[i][r[0][i][1]], To: f.offDays[i][r[1][i][1]]})
		cost := b.LeastCost(least, n.stepDays(i))
		n.heatCost += cost
		if !b.Lamps && p.problem.planner.IsOpen(b.Place) && b.Hold.Level > 0 && len(n.houses) < mostHouses {
			n.houses = append(n.houses, i)
		} else {
			n.othersCost += cost
			n.others = append(n.others, i)
		}
	}
	return n
}

// stepDays are the days on which a heater's level may step.
func (n *node) stepDays(heater int) []int {
	return n.sub.stepDays[heater][n.step[heater][0] : n.step[heater][1]+1]
}

// root is the node of all settings of a subproblem.
func (p *prover) root(f *subproblem) *node {
	var r dayRanges
	for i := range f.heaters {
		for k, days := range [][][]int{f.onDays, f.offDays, f.stepDays} {
			r[k] = append(r[k], [2]int{0, len(days[i]) - 1})
		}
	}
	return p.newNode(f, r)
}

// listAllowed lists the choices within a node.
func (n *node) listAllowed() *node {
	if n.allowed != nil {
		return n
	}
	n.allowed, n.direct = make([][]int32, len(n.sub.choices)), make([]bool, len(n.sub.choices))
	for g, all := range n.sub.choices {
		for i, c := range all {
			if n.allows(c) {
				n.allowed[g] = append(n.allowed[g], int32(i))
				n.direct[g] = n.direct[g] || c.IsDirect()
			}
		}
	}
	return n
}

// allows reports whether a choice can be made within the longest time on of the node.
func (n *node) allows(c *season.Choice) bool {
	for i, used := range c.Use {
		if used.From != season.Never && (used.From < n.longest[i].From || used.To > n.longest[i].To) {
			return false
		}
		if b := n.sub.heaters[i]; b.Place == c.Place && !b.Lamps && (c.Steps[1] < n.step[i][0] || c.Steps[0] > n.step[i][1]) {
			return false
		}
	}
	return true
}

// isSingle reports whether the node is one single setting.
func (n *node) isSingle() bool {
	for _, runs := range (dayRanges{n.on, n.off, n.step}) {
		if slices.ContainsFunc(runs, func(r [2]int) bool { return r[0] != r[1] }) {
			return false
		}
	}
	return true
}

// key names a single setting.
func (n *node) key() string { return fmt.Sprint(n.at.Key(), n.shortest, n.longest, n.step) }

// branch parts a node in two: a run of days of a heater up to a place in its list, and after it.
func (p *prover) branch(n *node, c branching) []*node {
	part := func(low bool) *node {
		r := dayRanges{slices.Clone(n.on), slices.Clone(n.off), slices.Clone(n.step)}
		if one := &r[c.end][c.heater]; low {
			one[1] = c.at
		} else {
			one[0] = c.at + 1
		}
		child := p.newNode(n.sub, r)
		p.inherit(child, n)
		return child
	}
	return []*node{part(true), part(false)}
}

// branching is where a node is split.
type branching struct{ end, heater, at int }

// parting finds where to split a node so that two settings are parted: halfway between them,
// where the most money lies between them. It reports whether there is such a place.
func (n *node) parting(a, b []season.Days) (c branching, is bool) {
	most := 0.0
	for i, heater := range n.sub.heaters {
		stepDays := n.stepDays(i)
		for side, change := range []season.Days{{From: b[i].From, To: a[i].To}, {From: a[i].From, To: b[i].To}} {
			days, r := n.sub.onDays[i], n.on[i]
			one, other := a[i].From, b[i].From
			if side == 1 {
				days, r, one, other = n.sub.offDays[i], n.off[i], a[i].To, b[i].To
			}
			first, second := slices.Index(days, one), slices.Index(days, other)
			if apart := math.Abs(heater.LeastCost(change, stepDays) - heater.LeastCost(a[i], stepDays)); first >= 0 && second >= 0 && first != second && apart > most {
				at := (first + second - 1) / 2
				if at >= r[0] && at < r[1] {
					most, c, is = apart, branching{side, i, at}, true
				}
			}
		}
	}
	return c, is
}

// costliestRange finds the run of days, of which heater, on which most money hangs.
func (n *node) costliestRange(serves func(heater int) bool) branching {
	half := func(side, heater int) branching {
		r := (dayRanges{n.on, n.off, n.step})[side][heater]
		return branching{side, heater, (r[0] + r[1]) / 2}
	}
	for i, r := range n.step {
		if r[0] != r[1] {
			return half(2, i)
		}
	}
	side, heater := 0, 0
	most := -1.0
	for i, b := range n.sub.heaters {
		if !serves(i) {
			continue
		}
		from, to, stepDays := n.on[i], n.off[i], n.stepDays(i)
		long := b.MostCost(n.longest[i], stepDays)
		for k, less := range []float64{
			b.MostCost(season.Days{From: n.shortest[i].From, To: n.longest[i].To}, stepDays), b.MostCost(season.Days{From: n.longest[i].From, To: n.shortest[i].To}, stepDays), b.LeastCost(n.longest[i], stepDays),
		} {
			if r := [][2]int{from, to, n.step[i]}[k]; r[0] != r[1] && long-less > most {
				most, side, heater = long-less, k, i
			}
		}
	}
	return half(side, heater)
}

func (n *node) hasStepRange() bool {
	return slices.ContainsFunc(n.step, func(r [2]int) bool { return r[0] != r[1] })
}
