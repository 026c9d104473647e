package plans

import (
	"context"
	"encoding/json"
	"fmt"
	"io"

	"eyeup/civil"
	"eyeup/internal/garden"
	"eyeup/internal/highs"
	"eyeup/season"
	"eyeup/season/prove"
)

// Progress is how far proving a season has come.
type Progress = prove.Progress

// Prove works out the season of a garden as it stands today, like Season, but searches for the best
// plans and says how much better any other could be. say is called with the progress and may be nil.
// When ctx ends, the best plans found so far are returned. It fails where the solver can't be run; then
// Season still works.
func Prove(ctx context.Context, g *garden.Garden, followed *Followed, today civil.Date, say func(Progress), asked ...Asked) (*SeasonAnswer, error) {
	engine, err := highs.Open(context.WithoutCancel(ctx), garden.SolverFolder())
	if err != nil {
		return nil, fmt.Errorf("the search for the best plans can't run on this machine: %w; work out the season without --prove", err)
	}
	defer engine.Close()
	var proofs *prove.Result
	a, err := seasonBy(g, followed, today, func(b season.Brief) (*season.Result, error) {
		b.Ports.Solver, b.Ports.Relax = engine.Solve, engine.Relax
		if proofs, err = prove.Prove(ctx, b, say); err != nil {
			return nil, err
		}
		return proofs.Season, nil
	}, asked)
	if a != nil {
		a.provedBy = proofs
	}
	return a, err
}

// WriteProgramme writes the mixed-integer programme of a proved plan, with heat and lamps fixed, in the
// MPS format that other solvers read.
func (a *SeasonAnswer) WriteProgramme(w io.Writer, plan string) error {
	p, err := a.provedBy.Programme(plan)
	if err != nil {
		return err
	}
	return p.WriteMPS(w)
}

// WriteCertificate writes, as JSON, all that is needed to check the proof of a plan again. It checks the
// proof first and fails where it does not hold.
func (a *SeasonAnswer) WriteCertificate(w io.Writer, plan string) error {
	c, err := a.provedBy.Certificate(plan)
	if err != nil {
		return err
	}
	if err := c.Check(); err != nil {
		return fmt.Errorf("the proof of %q does not add up: %w; please report this with your garden's folder", plan, err)
	}
	return json.NewEncoder(w).Encode(c)
}

// DropProof frees the proof, which is large. WriteProgramme and WriteCertificate must not be called after
// it.
func (a *SeasonAnswer) DropProof() { a.provedBy = nil }
