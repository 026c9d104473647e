package prove

import (
	"testing"

	"eyeup/season"
)

// BenchmarkGather gathers the ways through the glass of a few years with all steps of level.
func BenchmarkGather(b *testing.B) {
	brief := crowded(b)
	m := planned(b, brief)
	for b.Loop() {
		p := newProver(newProblem(b.Context(), m, nil))
		p.problem.columns.AllSteps = true
		at := make(season.Levels, len(p.problem.planner.Given.Places))
		at[2] = 1
		h := season.Steady(at)
		h[2] = season.Hold{Level: 2, Lower: 1}
		p.subproblem(h)
	}
}
