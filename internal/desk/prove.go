package desk

import (
	"context"
	"fmt"

	"eyeup/civil"
	"eyeup/internal/highs"
	"eyeup/season"
	"eyeup/solve"
)

// Prove works out the season of a garden as it stands today, like Season, but looks for the
// best plans and says how much better any other could be. say may be nil. When ctx ends it
// takes the best so far. Where the solver can't be run it fails, and Season serves.
func Prove(ctx context.Context, g *Garden, today civil.Date, say func(season.Progress), asked ...Asked) (*SeasonAnswer, error) {
	engine, err := highs.Open(context.WithoutCancel(ctx), solverFolder())
	if err != nil {
		return nil, fmt.Errorf("nothing can be proved on this machine: %w; ask for the season without proof", err)
	}
	defer engine.Close()
	return seasonBy(g, today, func(b season.Brief) (*season.Result, error) {
		b.Solver, b.Relax = engine.Solve, relaxing(engine)
		return season.Prove(ctx, b, say)
	}, asked)
}

// relaxing answers programmes without whole numbers.
func relaxing(engine *highs.Engine) season.Relax {
	return func(ctx context.Context, p *solve.Programme) (solve.Relaxation, error) {
		h, err := engine.Hold(ctx, p)
		if err != nil {
			return solve.Relaxation{}, err
		}
		defer h.Close()
		return h.Relax(ctx, solve.Limits{})
	}
}
