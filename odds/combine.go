package odds

import "math"

// Combined returns what follows from several uncertain figures. It reckons with every
// figure at its middle, and then moves each in turn to either end; the effects down and
// up are added as independent errors are, as the roots of sums of squares. A figure that
// is not a number is handed on as it is and adds no spread. Source: JCGM 100:2008 (the
// GUM), 5.1.2, with steps of the size of the spread in place of slopes.
func Combined(figures []Amount, reckon func(x []float64) float64) Amount {
	x := make([]float64, len(figures))
	for i, f := range figures {
		x[i] = f.Middle
	}
	middle := reckon(x)
	var down, up float64
	for i, f := range figures {
		if math.IsNaN(f.Middle) {
			continue
		}
		x[i] = f.Low
		a := reckon(x) - middle
		x[i] = f.High
		b := reckon(x) - middle
		x[i] = f.Middle
		down += math.Pow(min(a, b, 0), 2)
		up += math.Pow(max(a, b, 0), 2)
	}
	return Amount{middle - math.Sqrt(down), middle, middle + math.Sqrt(up)}
}

// Matching returns the belief with the given mean and variance, both those of a share. A
// variance that no share with this mean can have gives NaN.
func Matching(mean, variance float64) Beta {
	mean = min(max(mean, leastMean), 1-leastMean)
	cases := mean*(1-mean)/variance - 1
	if !(cases > 0) {
		return Beta{math.NaN(), math.NaN()}
	}
	return BetaOf(mean, min(cases, heaviest))
}

// A belief is never quite sure: not nearer to 0 or 1 than leastMean, not heavier than
// heaviest. Both lie far beyond what can be known of stock.
const leastMean, heaviest = 1e-9, 1e6
