package prove

import (
	"math"

	"eyeup/season"
)

// solution is a plan with what it comes to, in the figures of the programmes.
type solution struct {
	at          season.Holds
	stepDay     []int             // by heater: the day on which its level steps
	counts      [][]int           // by group and choice of its field; nil for a plan made otherwise
	sub         *subproblem       // nil for a plan made otherwise
	made        season.Assignment // of a plan made otherwise
	used        []season.Days     // by heater
	left        int               // plants left out
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
		if n.at[b.Place].Steps() && !b.Lamps && (step[i] <= f.used[i].From || step[i] >= f.used[i].To) {
			return nil
		}
	}
	return f
}

// total reckons what a plan comes to.
func (p *prover) total(f *subproblem, step []int, counts [][]int, left int) *solution {
	sum := &solution{at: f.at, stepDay: step, sub: f, counts: counts, left: left, taken: make([]float64, p.problem.planner.RowCount())}
	for range f.heaters {
		sum.used = append(sum.used, season.Days{From: season.Never, To: 0})
	}
	for g, all := range f.choices {
		for i := range all {
			sum.add(all[i], counts[g][i])
		}
	}
	return p.addSharedCosts(sum)
}

// add counts so many plants of a choice.
func (f *solution) add(c *season.Choice, n int) {
	if n == 0 {
		return
	}
	f.plants += n
	f.gain += float64(n) * c.Gain
	f.pots += float64(n) * c.Money
	f.heat += float64(n) * c.BenchHeat
	f.stretchCost += float64(n) * c.StretchCost
	for _, list := range [][]season.Take{c.Takes, c.Hours} {
		for _, t := range list {
			f.taken[t.Row] += float64(n) * t.Amount
		}
	}
	for i, used := range c.Use {
		if used.From != season.Never {
			f.used[i] = season.Days{From: min(f.used[i].From, used.From), To: max(f.used[i].To, used.To)}
		}
	}
}

// addSharedCosts adds what is paid for all plants together: heat, lamps, hired hands.
func (p *prover) addSharedCosts(sum *solution) *solution {
	for i, b := range p.heaters(sum.at) {
		if cost := b.Cost(sum.used[i], sum.stepDay[i]); b.Lamps {
			sum.light += cost
		} else {
			sum.heat += cost
		}
	}
	for row, used := range sum.taken {
		if row >= p.problem.planner.HoursRow(0) {
			sum.hands += p.problem.limits.hired * math.Max(0, used-p.problem.limits.limit[row])
		}
	}
	return sum
}

// evaluate reckons what an assignment made otherwise comes to.
func (p *prover) evaluate(at season.Levels, a season.Assignment) *solution {
	sum := &solution{at: season.Steady(at).With(a.Steps), made: a, taken: make([]float64, p.problem.planner.RowCount())}
	for _, of := range p.problem.columns.HeaterKeys {
		sum.used = append(sum.used, season.Days{From: season.Never, To: 0})
		step := season.Never
		if s, is := a.Steps[of.Place]; is && !of.Lamps {
			step = s.Day
		}
		sum.stepDay = append(sum.stepDay, step)
	}
	for _, of := range a.Portions {
		c := p.problem.columns.ChoiceOf(of, at)
		sum.add(&c, of.Count)
	}
	for _, n := range a.Left {
		sum.left += n
	}
	return p.addSharedCosts(sum)
}
