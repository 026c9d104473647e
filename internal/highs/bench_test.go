package highs

import (
	"context"
	"testing"

	"eyeup/solve"
)

// BenchmarkOpenFirst compiles the solver with nothing kept; BenchmarkOpenAgain takes the
// compiled code out of its folder.
func BenchmarkOpenFirst(b *testing.B) {
	for b.Loop() {
		openOnce(b, "")
	}
}

func BenchmarkOpenAgain(b *testing.B) {
	folder := b.TempDir()
	openOnce(b, folder)
	for b.Loop() {
		openOnce(b, folder)
	}
}

func openOnce(b *testing.B, folder string) {
	e, err := Open(context.Background(), folder)
	if err != nil {
		b.Fatal(err)
	}
	if err := e.Close(); err != nil {
		b.Fatal(err)
	}
}

// BenchmarkHold puts a season of 40 batches into the solver.
func BenchmarkHold(b *testing.B) {
	e, p := engine(b), garden(1, 40, 23)
	for b.Loop() {
		h, err := e.Hold(context.Background(), p)
		if err != nil {
			b.Fatal(err)
		}
		h.Close()
	}
}

// BenchmarkRelax and BenchmarkRelaxAgain answer it without whole numbers: from nothing, and
// after every cost has changed by a few parts in a hundred.
func BenchmarkRelax(b *testing.B) {
	for b.Loop() {
		h, err := engine(b).Hold(context.Background(), garden(1, 40, 23))
		if err != nil {
			b.Fatal(err)
		}
		relax(b, h)
		h.Close()
	}
}

func BenchmarkRelaxAgain(b *testing.B) {
	p := garden(1, 40, 23)
	h, err := engine(b).Hold(context.Background(), p)
	if err != nil {
		b.Fatal(err)
	}
	defer h.Close()
	relax(b, h)
	costs, times := make([]float64, len(p.Columns)), 0
	for b.Loop() {
		times++
		for i, c := range p.Columns {
			costs[i] = c.Cost * (1 + 0.03*float64((i*7+times)%5-2))
		}
		if err := h.Costs(costs, 0); err != nil {
			b.Fatal(err)
		}
		relax(b, h)
	}
}

func relax(b *testing.B, h *Held) {
	if r, err := h.Relax(context.Background(), solve.Limits{}); err != nil || r.State != solve.Proved {
		b.Fatal(r.State, err)
	}
}

// BenchmarkPlain40 answers a season by arithmetic alone. BenchmarkWhole40 and
// BenchmarkWhole120 prove seasons to half a part in a hundred; BenchmarkBoth40 and
// BenchmarkBoth120 start the proof from the plain answer, if it is not proof enough.
func BenchmarkPlain40(b *testing.B)  { proved(b, 40, plain) }
func BenchmarkPlain120(b *testing.B) { proved(b, 120, plain) }
func BenchmarkWhole40(b *testing.B)  { proved(b, 40, engine(b).Solve) }
func BenchmarkWhole120(b *testing.B) { proved(b, 120, engine(b).Solve) }
func BenchmarkBoth40(b *testing.B)   { proved(b, 40, both(b)) }
func BenchmarkBoth120(b *testing.B)  { proved(b, 120, both(b)) }

func plain(ctx context.Context, p *solve.Programme, limits solve.Limits, start []float64) (solve.Answer, error) {
	return solve.Plain(ctx, p, solve.Limits{}, start)
}

func both(b *testing.B) solve.Solver {
	return func(ctx context.Context, p *solve.Programme, limits solve.Limits, start []float64) (solve.Answer, error) {
		a, err := solve.Plain(ctx, p, limits, start)
		if err != nil || a.State == solve.Proved {
			return a, err
		}
		return engine(b).Solve(ctx, p, limits, a.Values)
	}
}

func proved(b *testing.B, batches int, by solve.Solver) {
	p := garden(1, batches, 23)
	for b.Loop() {
		a, err := by(context.Background(), p, solve.Limits{Share: 0.005}, nil)
		if err != nil || a.Values == nil {
			b.Fatal(a.State, err)
		}
		b.ReportMetric(100*a.Gap, "gap-%")
	}
}
