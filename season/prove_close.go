package season

import (
	"math"

	"eyeup/solve"
)

// close solves one setting in whole plants: by rounding, where that comes near enough.
func (p *prover) close(n *node) error {
	if p.isNear(n.bound) {
		return nil
	}
	s := p.state(p.counting, p.groups, n.f, n.may, p.weight, n.burning)
	if !p.meetSteps(s, n) { // whoever steps in vain holds one level, which is looked at elsewhere
		n.bound, n.by = math.Max(n.bound, p.costOfBest()), -1
		return nil
	}
	limits := solve.Limits{Nodes: mostBranches}
	if p.Relax == nil {
		limits.Nodes = mostPlainBranches
	}
	if p.best != nil {
		limits.Apart = Share / 2 * p.scale(p.best)
	}
	answer, err := p.Solver(p.ctx, &s.Programme, limits, nil)
	if err != nil {
		return err
	}
	p.count()
	if bound := math.Min(answer.Bound, p.costOfBest()); bound > n.bound { // a setting without a plan is no better than the best
		n.bound, n.by = bound, -1
	}
	if answer.Values != nil {
		p.consider(p.foundIn(n, s, answer.Values))
	}
	return nil
}

// costOfBest is what the best plan costs; infinite where there is none.
func (p *prover) costOfBest() float64 {
	if p.best == nil {
		return math.MaxFloat64
	}
	return p.costOf(p.best)
}

// meetSteps asks of a programme of one setting that a place whose level steps is used from its
// first day to its last, so that the step falls into its use. It reports whether it can be.
func (p *prover) meetSteps(s *stated, n *node) bool {
	for i, b := range n.f.burners {
		if b.lamps || !n.at[b.at].steps() {
			continue
		}
		if turn := n.turns(i)[0]; turn <= n.least[i].from || turn >= n.least[i].to {
			return false
		}
		first, last := solve.Row{Low: 1, High: math.Inf(1)}, solve.Row{Low: 1, High: math.Inf(1)}
		for at, c := range s.columns {
			if c.group < 0 || c.choice < 0 {
				continue
			}
			use := n.f.choices[c.group][c.choice].use[i]
			if use.from == n.least[i].from {
				first.Terms = append(first.Terms, solve.Term{Column: at, Factor: 1})
			}
			if use.to == n.least[i].to {
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
