package season

import (
	"math"
)

// found is a plan with what it comes to, in the figures of the programmes.
type found struct {
	at       holds
	turn     []int          // by burner: the day on which its level steps
	counts   [][]int        // by group and choice of its field; nil for a plan made otherwise
	field    *field         // nil for a plan made otherwise
	made     []portion      // of a plan made otherwise
	wayless  map[*batch]int // of such a plan: plants that find no way
	used     []span         // by burner
	left     int            // plants left out
	plants   int
	gain     float64 // weeks of flower, all plants together
	heat     float64
	pots     float64
	worse    float64 // what stretched days take off the worth of plants
	light    float64
	hands    float64
	ofLimits []float64 // what it takes of every limit
}

// money is what a plan costs.
func (f *found) money() float64 { return f.heat + f.pots + f.light + f.hands }

// foundIn reads a plan out of the values of a programme.
func (p *prover) foundIn(n *node, s *stated, values []float64) *found {
	counts, left := make([][]int, len(n.f.choices)), 0
	for g, all := range n.f.choices {
		counts[g] = make([]int, len(all))
	}
	for i, c := range s.columns {
		plants := int(math.Round(values[i]))
		switch {
		case c.group >= 0 && c.choice >= 0:
			counts[c.group][c.choice] = plants
		case c.group >= 0:
			left += plants
		}
	}
	return p.foundOf(n, counts, left)
}

// foundOf is the plan of a node that raises so many plants by each choice; nil where a step
// of level does not fall into the use of its place, which is then held at one level.
func (p *prover) foundOf(n *node, counts [][]int, left int) *found {
	var turn []int
	for i := range n.f.burners {
		turn = append(turn, n.turns(i)[0])
	}
	f := p.sumUp(n.f, turn, counts, left)
	for i, b := range n.f.burners {
		if n.at[b.at].steps() && !b.lamps && (turn[i] <= f.used[i].from || turn[i] >= f.used[i].to) {
			return nil
		}
	}
	return f
}

// sumUp reckons what a plan comes to.
func (p *prover) sumUp(f *field, turn []int, counts [][]int, left int) *found {
	sum := &found{at: f.at, turn: turn, field: f, counts: counts, left: left, ofLimits: make([]float64, p.rowCount())}
	for range f.burners {
		sum.used = append(sum.used, span{never, 0})
	}
	for g, all := range f.choices {
		for i := range all {
			sum.add(all[i], counts[g][i])
		}
	}
	return p.bill(sum)
}

// add counts so many plants of a choice.
func (f *found) add(c *choice, n int) {
	if n == 0 {
		return
	}
	f.plants += n
	f.gain += float64(n) * c.gain
	f.pots += float64(n) * c.money
	f.heat += float64(n) * c.warm
	f.worse += float64(n) * c.worse
	for _, list := range [][]take{c.takes, c.hours} {
		for _, t := range list {
			f.ofLimits[t.row] += float64(n) * t.amount
		}
	}
	for i, used := range c.use {
		if used.from != never {
			f.used[i] = span{min(f.used[i].from, used.from), max(f.used[i].to, used.to)}
		}
	}
}

// bill adds what is paid for all plants together: heat, lamps, hired hands.
func (p *prover) bill(sum *found) *found {
	for i, b := range p.burners(sum.at) {
		if cost := b.cost(sum.used[i], sum.turn[i]); b.lamps {
			sum.light += cost
		} else {
			sum.heat += cost
		}
	}
	for row, used := range sum.ofLimits {
		if row >= p.hoursRow(0) {
			sum.hands += p.hired * math.Max(0, used-p.limit[row])
		}
	}
	return sum
}

// weigh reckons what an assignment made otherwise comes to.
func (p *prover) weigh(at levels, a assignment) *found {
	sum := &found{at: steady(at).with(a.steps), made: a.portions, wayless: a.left, ofLimits: make([]float64, p.rowCount())}
	for _, of := range p.slots {
		sum.used = append(sum.used, span{never, 0})
		turn := never
		if s, is := a.steps[of.at]; is && !of.lamps {
			turn = s.day
		}
		sum.turn = append(sum.turn, turn)
	}
	for _, of := range a.portions {
		c := p.choiceOf(of.batch, of.outcome, at, p.takesOf(of.outcome, float64(p.Fits)))
		sum.add(&c, of.count)
	}
	for _, n := range a.left {
		sum.left += n
	}
	return p.bill(sum)
}
