package planting

import (
	"context"

	"eyeup/internal/garden"
	"eyeup/internal/highs"
	"eyeup/solve"
)

// mostNodes limits the branch and bound search unless the caller does, so that it always ends. The answer
// reports the gap that is left.
const mostNodes = 5000

// Solver solves integer programmes with HiGHS. HiGHS is compiled at first use and kept in the user's cache
// folder. If it can't run here, solve.Plain takes its place; its gap is wider, and is reported too.
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
