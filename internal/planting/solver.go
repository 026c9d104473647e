package planting

import (
	"context"

	"eyeup/internal/garden"
	"eyeup/internal/highs"
	"eyeup/solve"
)

// mostNodes is how many branches are looked into where nobody says, so that there always is
// an answer; the gap that is left is told.
const mostNodes = 5000

// Solver is the solver of every question that needs one. Its program is compiled when it is
// first needed and kept in the cache folder of this user; where there is none, or the program
// can't be run here, the plain one takes its place, whose gap is wider and told.
func Solver(ctx context.Context, p *solve.Programme, limits solve.Limits, start []float64) (solve.Answer, error) {
	engine, err := highs.Open(ctx, garden.SolverFolder())
	if err != nil {
		return solve.Plain(ctx, p, limits, start)
	}
	defer engine.Close()
	asked := limits
	if asked.Nodes == 0 {
		asked.Nodes = mostNodes
	}
	answer, err := engine.Solve(ctx, p, asked, start)
	if err != nil {
		return solve.Plain(ctx, p, limits, start)
	}
	return answer, nil
}
