package season

import "testing"

// BenchmarkGather gathers the ways through the glass of a few years with all steps of level.
func BenchmarkGather(b *testing.B) {
	brief := crowded(b)
	m := makerOf(b, brief)
	for b.Loop() {
		p := newProver(newProblem(b.Context(), m, nil))
		p.problem.columns.allSteps = true
		at := make(levels, len(p.problem.planner.Given.Places))
		at[2] = 1
		h := steady(at)
		h[2] = hold{level: 2, lower: 1}
		p.subproblem(h)
	}
}
