package odds

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// Count is how many of N individuals will turn out well, each with the same odds, which
// are known (Of) or only believed (Among).
type Count struct {
	N      int     // individuals, 0 or more
	share  float64 // the odds of each, where known
	belief Beta
	known  bool
}

// Of returns the count among n when each has the odds share, 0 to 1: the binomial.
func Of(n int, share float64) Count { return Count{N: n, share: share, known: true} }

// Among returns the count among n when their odds are only believed: the beta-binomial,
// wider than the binomial with the same mean.
func Among(n int, belief Beta) Count { return Count{N: n, belief: belief} }

// Mean returns the count to expect.
func (c Count) Mean() float64 {
	if c.known {
		return float64(c.N) * c.share
	}
	return float64(c.N) * c.belief.Mean()
}

// Variance returns the mean square of what the count strays from its mean.
func (c Count) Variance() float64 {
	n := float64(c.N)
	if c.known {
		return n * c.share * (1 - c.share)
	}
	a, b := c.belief.A, c.belief.B
	return n * a * b * (a + b + n) / ((a + b) * (a + b) * (a + b + 1))
}

// Exactly returns the odds of k.
func (c Count) Exactly(k int) float64 {
	switch {
	case !c.valid():
		return math.NaN()
	case k < 0 || k > c.N:
		return 0
	case c.known:
		return c.binomial(k)
	}
	n, x := float64(c.N), float64(k)
	a, b := c.belief.A, c.belief.B
	return math.Exp(choose(n, x) + mathext.Lbeta(x+a, n-x+b) - mathext.Lbeta(a, b))
}

func (c Count) binomial(k int) float64 {
	if (c.share == 0 && k == 0) || (c.share == 1 && k == c.N) {
		return 1
	}
	n, x := float64(c.N), float64(k)
	return math.Exp(choose(n, x) + x*math.Log(c.share) + (n-x)*math.Log1p(-c.share))
}

// choose returns the logarithm of the number of ways to take k of n.
func choose(n, k float64) float64 { return -math.Log1p(n) - mathext.Lbeta(n-k+1, k+1) }

// AtLeast returns the odds of k or more.
func (c Count) AtLeast(k int) float64 {
	switch {
	case !c.valid():
		return math.NaN()
	case k <= 0:
		return 1
	case k > c.N:
		return 0
	case c.known && (c.share == 0 || c.share == 1):
		return c.share
	case c.known:
		return mathext.RegIncBeta(float64(k), float64(c.N-k+1), c.share)
	}
	if k > c.N/2 {
		return min(1, c.sum(k, c.N))
	}
	return max(0, 1-c.sum(0, k-1))
}

// AtMost returns the odds of k or fewer.
func (c Count) AtMost(k int) float64 {
	switch {
	case !c.valid():
		return math.NaN()
	case k < 0:
		return 0
	case k >= c.N:
		return 1
	case c.known:
		return 1 - c.AtLeast(k+1)
	}
	return min(1, c.sum(0, k)) // exact in the lower tail, where quantiles look
}

func (c Count) sum(from, to int) float64 {
	sum := 0.0
	for k := from; k <= to; k++ {
		sum += c.Exactly(k)
	}
	return sum
}

// Quantile returns the smallest count that is not passed with odds p or more, p 0 to 1.
// It returns -1 where the figures the count was made of are no odds.
func (c Count) Quantile(p float64) int {
	if !c.valid() || !(p >= 0 && p <= 1) {
		return -1
	}
	low, high := 0, c.N
	for low < high {
		middle := (low + high) / 2
		if c.AtMost(middle) >= p-4*epsilon {
			high = middle
		} else {
			low = middle + 1
		}
	}
	return low
}

// Amount returns the count with its spread.
func (c Count) Amount() Amount {
	return Amount{float64(c.Quantile(0.1)), float64(c.Quantile(0.5)), float64(c.Quantile(0.9))}
}

func (c Count) valid() bool {
	if c.N < 0 {
		return false
	}
	if c.known {
		return c.share >= 0 && c.share <= 1
	}
	return c.belief.valid()
}
