package odds

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// JCGM 100:2008, 5.1: variances of a sum add; those of a product add as shares of it.
func TestCombinedAddsAsIndependentErrors(t *testing.T) {
	sum := Combined([]Amount{{7, 10, 13}, {16, 20, 24}}, func(x []float64) float64 { return x[0] + x[1] })
	if sum != (Amount{25, 30, 35}) {
		t.Errorf("3 and 4 together are %v, want 5", sum)
	}
	product := Combined([]Amount{{9.7, 10, 10.3}, {19.2, 20, 20.8}}, func(x []float64) float64 { return x[0] * x[1] })
	if math.Abs(product.High/200-1.05) > 1e-9 || math.Abs(product.Low/200-0.95) > 1e-9 {
		t.Errorf("3 %% and 4 %% together are %v, want 5 %%", product)
	}
	skewed := Combined([]Amount{{1, 2, 8}, Exactly(math.NaN())}, func(x []float64) float64 { return -x[0] })
	if skewed != (Amount{-8, -2, -1}) {
		t.Errorf("turned about: %v", skewed)
	}
}

// The mean and variance of a belief, by the textbook, lead back to it.
func TestMatchingFindsTheBeliefAgain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := Beta{rapid.Float64Range(.1, 500).Draw(t, "for"), rapid.Float64Range(.1, 500).Draw(t, "against")}
		n := b.Weight()
		same := Matching(b.Mean(), b.A*b.B/(n*n*(n+1)))
		if math.Abs(same.A/b.A-1) > 1e-9 || math.Abs(same.B/b.B-1) > 1e-9 {
			t.Errorf("%v became %v", b, same)
		}
	})
	if !math.IsNaN(Matching(.5, .3).Mean()) {
		t.Error("a share that strays more than all or nothing was matched")
	}
	if b := Matching(1, 1e-12); !(b.Mean() > 0.999 && b.Mean() < 1) {
		t.Errorf("a sure share: %v", b)
	}
}
