package odds

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mathext"
)

// Interval is where a share may lie, with the sureness it was asked for: From to To, both
// 0 to 1. Unlike an Amount its ends have no fixed odds of their own.
type Interval struct {
	From float64 `json:"from"`
	To   float64 `json:"to"`
}

// ClopperPearson returns the exact two-sided interval of a share of which k cases in n
// were seen; it holds the truth at least as often as sure (0 to 1, both ends left out)
// says. It fails unless 0 <= k <= n and n >= 1. Source: Clopper & Pearson 1934,
// Biometrika 26:404, in the form of beta quantiles.
func ClopperPearson(k, n int, sure float64) (Interval, error) {
	if err := checkCount(k, n, sure); err != nil {
		return Interval{}, err
	}
	return exact(k, n, (1-sure)/2), nil
}

// LowerBound returns the one-sided Clopper-Pearson lower bound: the share is above it with
// the given sureness. It fails as ClopperPearson does.
func LowerBound(k, n int, sure float64) (float64, error) {
	if err := checkCount(k, n, sure); err != nil {
		return math.NaN(), err
	}
	return exact(k, n, 1-sure).From, nil
}

// UpperBound returns the one-sided Clopper-Pearson upper bound: the share is below it with
// the given sureness. It fails as ClopperPearson does.
func UpperBound(k, n int, sure float64) (float64, error) {
	if err := checkCount(k, n, sure); err != nil {
		return math.NaN(), err
	}
	return exact(k, n, 1-sure).To, nil
}

// exact leaves the share tail out at either end.
func exact(k, n int, tail float64) Interval {
	i := Interval{0, 1}
	if k > 0 {
		i.From = mathext.InvRegIncBeta(float64(k), float64(n-k+1), tail)
	}
	if k < n {
		i.To = mathext.InvRegIncBeta(float64(k+1), float64(n-k), 1-tail)
	}
	return i
}

// Wilson returns the score interval of a share of which k cases in n were seen, without
// continuity correction: right on average, where ClopperPearson is never too narrow.
// It fails as ClopperPearson does. Source: Wilson 1927, J. Am. Stat. Assoc. 22:209.
func Wilson(k, n int, sure float64) (Interval, error) {
	if err := checkCount(k, n, sure); err != nil {
		return Interval{}, err
	}
	z := mathext.NormalQuantile((1 + sure) / 2)
	cases, p := float64(n), float64(k)/float64(n)
	centre := p + z*z/(2*cases)
	half := z * math.Sqrt(p*(1-p)/cases+z*z/(4*cases*cases))
	i := Interval{(centre - half) / (1 + z*z/cases), (centre + half) / (1 + z*z/cases)}
	if k == 0 {
		i.From = 0 // exactly, but for rounding
	}
	if k == n {
		i.To = 1
	}
	return i, nil
}

// Jeffreys returns the interval between the outer quantiles of what is believed of a
// share after k cases in n, when nothing was known before. It fails as ClopperPearson
// does. Source: Brown, Cai & DasGupta 2001, Statistical Science 16:101, whose rule that
// the interval reaches 0 at k = 0 and 1 at k = n is kept.
func Jeffreys(k, n int, sure float64) (Interval, error) {
	if err := checkCount(k, n, sure); err != nil {
		return Interval{}, err
	}
	after, tail := Unseen.After(k, n), (1-sure)/2
	i := Interval{0, 1}
	if k > 0 {
		i.From = after.Quantile(tail)
	}
	if k < n {
		i.To = after.Quantile(1 - tail)
	}
	return i, nil
}

func checkCount(k, n int, sure float64) error {
	if n < 1 || k < 0 || k > n {
		return fmt.Errorf("%d of %d is not a count of cases; give 0 to n cases among at least one", k, n)
	}
	return checkSure(sure)
}

func checkSure(sure float64) error {
	if !(sure > 0 && sure < 1) {
		return fmt.Errorf("a sureness of %g can't be had; give more than 0%% and less than 100%%", sure)
	}
	return nil
}
