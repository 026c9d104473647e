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

// BenchmarkWhole40 and BenchmarkWhole120 prove seasons to half a part in a hundred.
func BenchmarkWhole40(b *testing.B)  { whole(b, 40, 0.005) }
func BenchmarkWhole120(b *testing.B) { whole(b, 120, 0.005) }

// BenchmarkWhole40Fine proves to half a part in a thousand.
func BenchmarkWhole40Fine(b *testing.B) { whole(b, 40, 0.0005) }

func whole(b *testing.B, batches int, share float64) {
	p := garden(1, batches, 23)
	for b.Loop() {
		a, err := engine(b).Solve(context.Background(), p, solve.Limits{Share: share}, nil)
		if err != nil || a.State != solve.Proved {
			b.Fatal(a.State, err)
		}
		b.ReportMetric(100*a.Gap, "gap-%")
		b.ReportMetric(float64(a.Nodes), "nodes")
	}
}
