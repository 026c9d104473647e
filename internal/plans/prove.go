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

// Prove works out the season of a garden as it stands today, like Season, but looks for the
// best plans and says how much better any other could be. say may be nil. When ctx ends it
// takes the best so far. Where the solver can't be run it fails, and Season serves.
func Prove(ctx context.Context, g *garden.Garden, followed *Followed, today civil.Date, say func(Progress), asked ...Asked) (*SeasonAnswer, error) {
	engine, err := highs.Open(context.WithoutCancel(ctx), garden.SolverFolder())
	if err != nil {
		return nil, fmt.Errorf("nothing can be proved on this machine: %w; ask for the season without proof", err)
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

// WriteProgramme writes what a proved plan was weighed by, with its heat and lamps settled, in
// the form that other solvers read.
func (a *SeasonAnswer) WriteProgramme(w io.Writer, plan string) error {
	p, err := a.provedBy.Programme(plan)
	if err != nil {
		return err
	}
	return p.WriteMPS(w)
}

// WriteCertificate writes all that it takes to add the proof of a plan up again, and adds it
// up first.
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

// DropProof lets go of the proof, which is large: neither WriteProgramme nor WriteCertificate is
// asked for after it.
func (a *SeasonAnswer) DropProof() { a.provedBy = nil }
