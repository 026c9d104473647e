package prove

import (
	"bytes"
	"encoding/json"
	"runtime"
	"testing"
)

// TestOneCoreFindsTheSame has a season proved on one core and holds it to what all cores found,
// to the last digit.
func TestOneCoreFindsTheSame(t *testing.T) {
	many, err := json.Marshal(provedCrowd(t))
	if err != nil {
		t.Fatal(err)
	}
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	one, err := json.Marshal(proved(t, crowded(t)))
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(one, many) {
		t.Error("one core found another season than all cores")
	}
}

// TestProversLearnTheSame has two provers work beside each other and holds what each knows to what
// both have learnt.
func TestProversLearnTheSame(t *testing.T) {
	b := proving(t, crowded(t))
	p := newProver(newProblem(t.Context(), planned(t, b), nil))
	m := p.second()
	usual := p.evaluate(p.problem.planner.AssignUsual())
	known := len(p.solvedDuals)
	all, err := p.provePair(m, []float64{0.3, 0.9}, "", []*solution{usual})
	if err != nil {
		t.Fatal(err)
	}
	if len(p.solvedDuals) != len(m.solvedDuals) || len(p.solvedDuals) <= known {
		t.Fatalf("one knows %d prices, the other %d; at first there were %d", len(p.solvedDuals), len(m.solvedDuals), known)
	}
	seen := func(of *prover) map[*float64]bool {
		known := map[*float64]bool{}
		for _, i := range of.solvedDuals {
			known[&of.pool[i].row[0]] = true
		}
		return known
	}
	mine, theirs := seen(p), seen(m)
	for x := range mine {
		if !theirs[x] {
			t.Error("prices that one knows and the other does not")
		}
	}
	for i, one := range all {
		for _, n := range one.leaves {
			if n.duals >= len(one.pool) {
				t.Errorf("plan %d: a leaf leans on prices %d of %d", i, n.duals, len(one.pool))
			}
		}
	}
}
