package desk

import (
	"context"
	"os"
	"path/filepath"

	"eyeup/internal/highs"
	"eyeup/solve"
)

// Solver is the solver of every question that needs one. Its program is compiled when it is
// first needed and kept in the cache folder of this user; where there is none, or the program
// can't be run here, the plain one takes its place, whose gap is wider and told.
func Solver(ctx context.Context, p *solve.Programme, limits solve.Limits, start []float64) (solve.Answer, error) {
	engine, err := highs.Open(ctx, solverFolder())
	if err != nil {
		return solve.Plain(ctx, p, limits, start)
	}
	defer engine.Close()
	answer, err := engine.Solve(ctx, p, limits, start)
	if err != nil {
		return solve.Plain(ctx, p, limits, start)
	}
	return answer, nil
}

// solverFolder is where compiled code is kept; empty where nothing can be.
func solverFolder() string {
	cache, err := os.UserCacheDir()
	if err != nil {
		return ""
	}
	folder := filepath.Join(cache, "eyeup", "solver")
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return ""
	}
	return folder
}

// Quickly is the plain solver: it needs no program compiled, and tells a wider gap.
func Quickly(ctx context.Context, p *solve.Programme, limits solve.Limits, start []float64) (solve.Answer, error) {
	return solve.Plain(ctx, p, limits, start)
}
