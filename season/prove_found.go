package season

import (
	"math"
)

// solution is a plan with what it comes to, in the figures of the programmes.
type solution struct {
	at          holds
	stepDay     []int          // by burner: the day on which its level steps
	counts      [][]int        // by group and choice of its field; nil for a plan made otherwise
	sub         *subproblem    // nil for a plan made otherwise
	portions    []portion      // of a plan made otherwise
	noWay       map[*batch]int // of such a plan: plants that find no way
	used        []span         // by burner
	left        int            // plants left out
	plants      int
	gain        float64 // weeks of flower, all plants together
	heat        float64
	pots        float64
	stretchCost float64 // what stretched days take off the worth of plants
	light       float64
	hands       float64
	taken       []float64 // what it takes of every limit
}

// money is what a plan costs.
func (f *solution) money() float64 { return f.heat + f.pots + f.light + f.hands }

// solutionOf reads a plan out of the values of a programme.
func (p *prover) solutionOf(n *node, s *programme, values []float64) *solution {
	counts, left := make([][]int, len(n.sub.choices)), 0
	for g, all := range n.sub.choices {
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
	return p.newSolution(n, counts, left)
}

// newSolution is the plan of a node that raises so many plants by each choice; nil where a step
// of level does not fall into the use of its place, which is then held at one level.
func (p *prover) newSolution(n *node, counts [][]int, left int) *solution {
	var step []int
	for i := range n.sub.heaters {
		step = append(step, n.stepDays(i)[0])
	}
	f := p.total(n.sub, step, counts, left)
	for i, b := range n.sub.heaters {
		if n.at[b.place].steps() && !b.lamps && (step[i] <= f.used[i].from || step[i] >= f.used[i].to) {
			return nil
		}
	}
	return f
}

// total reckons what a plan comes to.
func (p *prover) total(f *subproblem, step []int, counts [][]int, left int) *solution {
	sum := &solution{at: f.at, stepDay: step, sub: f, counts: counts, left: left, taken: make([]float64, p.problem.planner.rowCount())}
	for range f.heaters {
		sum.used = append(sum.used, span{never, 0})
	}
	for g, all := range f.choices {
		for i := range all {
			sum.add(all[i], counts[g][i])
		}
	}
	return p.addSharedCosts(sum)
}

// add counts so many plants of a choice.
func (f *solution) add(c *choice, n int) {
	if n == 0 {
		return
	}
	f.plants += n
	f.gain += float64(n) * c.gain
	f.pots += float64(n) * c.money
	f.heat += float64(n) * c.benchHeat
	f.stretchCost += float64(n) * c.stretchCost
	for _, list := range [][]take{c.takes, c.hours} {
		for _, t := range list {
			f.taken[t.row] += float64(n) * t.amount
		}
	}
	for i, used := range c.use {
		if used.from != never {
			f.used[i] = span{min(f.used[i].from, used.from), max(f.used[i].to, used.to)}
		}
	}
}

// addSharedCosts adds what is paid for all plants together: heat, lamps, hired hands.
func (p *prover) addSharedCosts(sum *solution) *solution {
	for i, b := range p.heaters(sum.at) {
		if cost := b.cost(sum.used[i], sum.stepDay[i]); b.lamps {
			sum.light += cost
		} else {
			sum.heat += cost
		}
	}
	for row, used := range sum.taken {
		if row >= p.problem.planner.hoursRow(0) {
			sum.hands += p.problem.limits.hired * math.Max(0, used-p.problem.limits.limit[row])
		}
	}
	return sum
}

// evaluate reckons what an assignment made otherwise comes to.
func (p *prover) evaluate(at levels, a assignment) *solution {
	sum := &solution{at: steady(at).with(a.steps), portions: a.portions, noWay: a.left, taken: make([]float64, p.problem.planner.rowCount())}
	for _, of := range p.problem.columns.heaterKeys {
		sum.used = append(sum.used, span{never, 0})
		step := never
		if s, is := a.steps[of.place]; is && !of.lamps {
			step = s.day
		}
		sum.stepDay = append(sum.stepDay, step)
	}
	for _, of := range a.portions {
		c := p.problem.columns.choiceOf(of.batch, of.outcome, at, p.problem.planner.takesOf(of.outcome, float64(p.problem.planner.Asked.Fits)))
		sum.add(&c, of.count)
	}
	for _, n := range a.left {
		sum.left += n
	}
	return p.addSharedCosts(sum)
}
