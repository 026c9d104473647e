package prove

import (
	"math"

	"eyeup/solve"
)

// solveWhole solves one setting in whole plants: by rounding, where that comes near enough.
func (p *prover) solveWhole(n *node) error {
	if p.isGapClosed(n.bound) {
		return nil
	}
	s := p.problem.newProgramme(n.sub, n.allowed, p.weight, n.heatCost)
	if !p.requireSteps(s, n) { // whoever steps in vain holds one level, which is looked at elsewhere
		n.bound, n.duals = math.Max(n.bound, p.incumbentCost()), -1
		return nil
	}
	limits := solve.Limits{Nodes: mostWholeNodes}
	if p.problem.planner.Ports.Relax == nil {
		limits.Nodes = mostPlainNodes
	}
	if p.incumbent != nil {
		limits.Apart = TargetGap / 2 * p.scale(p.incumbent)
	}
	answer, err := p.problem.planner.Ports.Solver(p.problem.ctx, &s.Programme, limits, nil)
	if err != nil {
		return err
	}
	p.count()
	if bound := math.Min(answer.Bound, p.incumbentCost()); bound > n.bound { // a setting without a plan is no better than the best
		n.bound, n.duals = bound, -1
	}
	if answer.Values != nil {
		p.consider(p.solutionOf(n, s, answer.Values))
	}
	return nil
}

// incumbentCost is what the best plan costs; infinite where there is none.
func (p *prover) incumbentCost() float64 {
	if p.incumbent == nil {
		return math.MaxFloat64
	}
	return p.costOf(p.incumbent)
}

// requireSteps asks of a programme of one setting that a place whose level steps is used from its
// first day to its last, so that the step falls into its use. It reports whether it can be.
func (p *prover) requireSteps(s *programme, n *node) bool {
	for i, b := range n.sub.heaters {
		if b.Lamps || !n.at[b.Place].Steps() {
			continue
		}
		if step := n.stepDays(i)[0]; step <= n.shortest[i].From || step >= n.shortest[i].To {
			return false
		}
		first, last := solve.Row{Low: 1, High: math.Inf(1)}, solve.Row{Low: 1, High: math.Inf(1)}
		for at, c := range s.columns {
			if c.group < 0 || c.choice < 0 {
				continue
			}
			use := n.sub.choices[c.group][c.choice].Use[i]
			if use.From == n.shortest[i].From {
				first.Terms = append(first.Terms, solve.Term{Column: at, Factor: 1})
			}
			if use.To == n.shortest[i].To {
				last.Terms = append(last.Terms, solve.Term{Column: at, Factor: 1})
			}
		}
		if len(first.Terms) == 0 || len(last.Terms) == 0 {
			return false
		}
		for _, row := range []solve.Row{first, last} {
			s.Row(row)
			s.rows = append(s.rows, -1)
		}
	}
	return true
}
