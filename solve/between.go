package solve

import "math"

// between is an interval that contains a number. Sums and products that are not exact are
// rounded outwards by one floating-point step, which exceeds their error.
type between struct{ low, high float64 }

func exactly(x float64) between { return between{x, x} }

func (a between) plus(b between) between {
	return between{sumBelow(a.low, b.low), -sumBelow(-a.high, -b.high)}
}

func (a between) minus(b between) between { return a.plus(between{-b.high, -b.low}) }

// times multiplies by a finite number.
func (a between) times(f float64) between {
	if f == 0 {
		return between{}
	}
	if f < 0 {
		a, f = between{-a.high, -a.low}, -f
	}
	return between{productBelow(f, a.low), -productBelow(f, -a.high)}
}

// sumBelow returns a + b, or the next smaller number if the rounded sum may exceed the true
// one. The rounding error is found as in Knuth, The Art of Computer Programming 2, 4.2.2
// theorem B.
func sumBelow(a, b float64) float64 {
	s := a + b
	part := s - a
	lost := (a - (s - part)) + (b - part)
	if lost >= 0 {
		return s
	}
	return down(s)
}

// faint is the size below which products may lose digits to underflow.
const faint = 1e-280

// productBelow does for products what sumBelow does for sums.
func productBelow(a, b float64) float64 {
	p := float64(a * b) // the conversion prevents a fused multiply-add
	if a == 0 || b == 0 || math.Abs(p) > faint && math.FMA(a, b, -p) >= 0 {
		return p
	}
	return down(p)
}

func down(x float64) float64 { return math.Nextafter(x, math.Inf(-1)) }
func up(x float64) float64   { return math.Nextafter(x, math.Inf(1)) }
