package growth

import "math"

// Lognormal is the lognormal distribution with median Middle and standard deviation Sigma of
// the logarithm. Both are above 0; Middle has the unit of the variable.
type Lognormal struct{ Middle, Sigma float64 }

// Below returns the share that lies below x.
func (l Lognormal) Below(x float64) float64 {
	if x <= 0 {
		return 0
	}
	return 0.5 * math.Erfc(-math.Log(x/l.Middle)/(l.Sigma*math.Sqrt2))
}

// At returns the figure below which a share p lies: 0 for none, infinite for all.
func (l Lognormal) At(p float64) float64 {
	return l.Middle * math.Exp(l.Sigma*math.Sqrt2*math.Erfinv(2*p-1))
}

// Weibull is the Weibull distribution with the given Shape and Scale, both above 0. It rises
// faster from its start than a Lognormal and suits lots that emerge all at once.
type Weibull struct{ Shape, Scale float64 }

// Below returns the share that lies below x.
func (w Weibull) Below(x float64) float64 {
	if x <= 0 {
		return 0
	}
	return -math.Expm1(-math.Pow(x/w.Scale, w.Shape))
}

// At returns the figure below which a share p lies: 0 for none, infinite for all.
func (w Weibull) At(p float64) float64 {
	return w.Scale * math.Pow(-math.Log1p(-p), 1/w.Shape)
}
