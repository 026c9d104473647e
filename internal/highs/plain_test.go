package highs

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"eyeup/solve"
)

// TestPlainIsHonest holds what Plain says of random programmes to what HiGHS finds: its bound
// is one, its values hold, and what it calls infeasible is.
func TestPlainIsHonest(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 1)) // the programmes that are held to GLPK
	tried, found := 0, 0
	for i := range 200 {
		p := drawn(r)
		if i%4 != 0 {
			continue // a quarter of them, to be quick
		}
		best, err := engine(t).Solve(context.Background(), p, solve.Limits{}, nil)
		if err != nil {
			t.Fatal(err)
		}
		a, err := solve.Plain(context.Background(), p, solve.Limits{Iterations: 300, Nodes: 1}, nil)
		if err != nil {
			t.Fatal(err)
		}
		near := 1e-6 * math.Max(1, math.Abs(best.Objective))
		if best.State == solve.Proved {
			tried++
		}
		switch {
		case a.State == solve.Unbounded:
			t.Errorf("programme %d: Plain cannot know that it is unbounded", i)
		case a.State == solve.Infeasible:
			if best.State != solve.Infeasible {
				t.Errorf("programme %d: infeasible, but HiGHS finds it %v", i, best.State)
			}
		case a.Bound > best.Objective+near:
			t.Errorf("programme %d: bound %v above the least cost %v", i, a.Bound, best.Objective)
		case a.Values != nil:
			found++
			holds(t, i, p, a)
			if a.Objective < best.Bound-near {
				t.Errorf("programme %d: cost %v below HiGHS's bound %v", i, a.Objective, best.Bound)
			}
		}
	}
	if found < tried*8/10 {
		t.Errorf("Plain found values for %d of %d programmes that have some", found, tried)
	}
}

// holds checks that an answer's values keep the programme.
func holds(t *testing.T, i int, p *solve.Programme, a solve.Answer) {
	t.Helper()
	v, err := p.Check(a.Values)
	if err != nil || !v.Holds(solve.Tolerance) {
		t.Errorf("programme %d: the answer does not hold: %+v, %v", i, v, err)
	}
}

// TestPlainOnSeasons holds Plain's gap on programmes of the shape it is for, and its bound to
// the best there can be without whole numbers, as HiGHS finds it.
func TestPlainOnSeasons(t *testing.T) {
	for seed := range uint64(2) {
		p := garden(seed+1, 40, 23)
		a, err := solve.Plain(context.Background(), p, solve.Limits{}, nil)
		if err != nil {
			t.Fatal(err)
		}
		holds(t, int(seed), p, a)
		h, err := engine(t).Hold(context.Background(), p)
		if err != nil {
			t.Fatal(err)
		}
		defer h.Close()
		r, err := h.Relax(context.Background(), solve.Limits{})
		if err != nil || r.State != solve.Proved {
			t.Fatal(r.State, err)
		}
		t.Logf("season %d: gap %.2f %%, bound %.2f %% below the linear optimum", seed, 100*a.Gap, 100*(r.Objective-a.Bound)/math.Abs(r.Objective))
		if a.Bound > r.Objective || r.Objective-a.Bound > 0.002*math.Abs(r.Objective) {
			t.Errorf("season %d: bound %v, linear optimum %v", seed, a.Bound, r.Objective)
		}
		if a.Gap > 0.01 {
			t.Errorf("season %d: a gap of %v", seed, a.Gap)
		}
	}
}
