package odds

import (
	"math"
	"slices"
)

// Sample is a set of figures in rising order. Infinite ones stand for "never" (+Inf)
// and "always" (-Inf) and keep their place in the count.
type Sample []float64

// Sorted returns a sample of the figures, leaving them as they are.
func Sorted(figures []float64) Sample {
	s := slices.Clone(figures)
	slices.Sort(s)
	return s
}

// Type is one of the ways to place a quantile between the figures of a sample, by the
// numbers of Hyndman & Fan 1996 (The American Statistician 50:361).
type Type int

// The types offered. Type8 is near median-unbiased whatever the distribution, and is the
// one used wherever no other is named.
const (
	Hazen   Type = 5
	Weibull Type = 6
	Type7   Type = 7
	Type8   Type = 8
	Type9   Type = 9
	Cunnane Type = 10 // plotting position 0.4, no number of Hyndman & Fan
)

// offset gives a = b of the plotting position (i-a)/(n+1-2a).
func (t Type) offset() float64 {
	switch t {
	case Hazen:
		return 0.5
	case Weibull:
		return 0
	case Type7:
		return 1
	case Type9:
		return 3.0 / 8
	case Cunnane:
		return 0.4
	default:
		return 1.0 / 3
	}
}

// At returns the type-8 quantile at share p, 0 to 1. See AtType.
func (s Sample) At(p float64) float64 { return s.AtType(p, Type8) }

// AtType returns the quantile at share p, 0 to 1: the figure below which that share of
// cases lies. Where either neighbour is infinite the answer is that infinity, never a
// mean with it. An empty sample gives NaN, and so does a share outside 0 to 1.
func (s Sample) AtType(p float64, t Type) float64 {
	n := float64(len(s))
	if n == 0 || !(p >= 0 && p <= 1) {
		return math.NaN()
	}
	a := t.offset()
	h := p*(n+1-2*a) + a
	h = min(max(h, 1), n)
	i := int(math.Floor(h + 4*epsilon))
	share := h - float64(i)
	lower := s[i-1]
	if share <= 4*epsilon || i == len(s) {
		return lower
	}
	upper := s[i]
	switch {
	case math.IsInf(lower, 0):
		return lower
	case math.IsInf(upper, 0):
		return upper
	}
	return lower + share*(upper-lower)
}

// epsilon is the rounding that a position may carry and still be a whole number.
const epsilon = 2.220446049250313e-16
