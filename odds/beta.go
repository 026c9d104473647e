package odds

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// Beta is what is believed of a share: as though A cases had been seen for it and B
// against it. Both are above 0, or every answer is NaN.
type Beta struct {
	A, B float64
}

// Unseen is the belief of one who has seen nothing: Jeffreys' prior. Even takes every
// share for equally likely: Laplace's.
var (
	Unseen = Beta{0.5, 0.5}
	Even   = Beta{1, 1}
)

// BetaOf returns the belief with the given mean (0 to 1, both ends left out) that weighs
// as much as so many cases seen.
func BetaOf(mean, cases float64) Beta { return Beta{mean * cases, (1 - mean) * cases} }

// After returns the belief once k more cases for it in n were seen, 0 <= k <= n.
func (b Beta) After(k, n int) Beta { return Beta{b.A + float64(k), b.B + float64(n-k)} }

// Mean returns the share to expect.
func (b Beta) Mean() float64 { return b.A / (b.A + b.B) }

// Weight returns how many cases the belief weighs as much as.
func (b Beta) Weight() float64 { return b.A + b.B }

// Below returns the odds that the share is no more than x.
func (b Beta) Below(x float64) float64 {
	switch {
	case !b.valid() || math.IsNaN(x):
		return math.NaN()
	case x <= 0:
		return 0
	case x >= 1:
		return 1
	}
	return mathext.RegIncBeta(b.A, b.B, x)
}

// Quantile returns the share below which the truth lies with odds p, 0 to 1.
func (b Beta) Quantile(p float64) float64 {
	if !b.valid() || !(p >= 0 && p <= 1) {
		return math.NaN()
	}
	return mathext.InvRegIncBeta(b.A, b.B, p)
}

// Amount returns the share with its spread.
func (b Beta) Amount() Amount { return Amount{b.Quantile(0.1), b.Quantile(0.5), b.Quantile(0.9)} }

func (b Beta) valid() bool {
	return b.A > 0 && b.B > 0 && !math.IsInf(b.A, 0) && !math.IsInf(b.B, 0)
}
