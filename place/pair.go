package place

import "math"

// pair is two bodies that exchange heat: the floor of a house, and its air with everything
// that stands in it. With the air at a and the floor at f,
//
//	airHeat·da/dt   = gain + heat − airLoss·(a−out) − coupling·(a−f)
//	floorHeat·df/dt = floorGain + coupling·(a−f) − edge·(f−out) − deep·(f−ground)
//
// where everything but a and f is constant for an hour. Losses are in W/K, heat capacities in
// J/K.
type pair struct {
	airLoss, coupling  float64
	edge, deep         float64
	airHeat, floorHeat float64
}

// twin is a value for the air and one for the floor.
type twin struct{ air, floor float64 }

// matrix is a linear map from twin to twin.
type matrix struct{ aa, af, fa, ff float64 }

func (m matrix) of(x twin) twin {
	return twin{m.aa*x.air + m.af*x.floor, m.fa*x.air + m.ff*x.floor}
}

// stride is the exact solution over a time dt for given losses. With M the matrix of the
// equations and r = M·x + b the rates of change at the start,
//
//	x(dt)        = x + dt·φ1(M·dt)·r,  φ1(z) = (e^z − 1)/z
//	mean over dt = x + dt·φ2(M·dt)·r,  φ2(z) = (e^z − 1 − z)/z²
//
// Neither needs the inverse of M, so a body without losses is no special case. For
// φ-functions: Hochbruck & Ostermann 2010, Acta Numerica 19:209.
type stride struct {
	pair
	end, mean matrix
}

// strideOf prepares a step of dt seconds.
func strideOf(p pair, dt float64) stride {
	a := -(p.airLoss + p.coupling) / p.airHeat * dt
	b := p.coupling / p.airHeat * dt
	c := p.coupling / p.floorHeat * dt
	d := -(p.coupling + p.edge + p.deep) / p.floorHeat * dt
	middle, half := (a+d)/2, math.Sqrt((a-d)*(a-d)/4+b*c)
	high1, high2 := phis(middle + half)
	low1, low2 := phis(middle - half)
	apply := func(high, low float64) matrix {
		mean, slope := (high+low)/2, 0.0
		if half > 1e-12 {
			slope = (high - low) / (2 * half)
		}
		return matrix{
			dt * (mean + slope*(a-middle)), dt * slope * b,
			dt * slope * c, dt * (mean + slope*(d-middle)),
		}
	}
	return stride{p, apply(high1, low1), apply(high2, low2)}
}

// phis returns φ1 and φ2 of z; it uses their series where the differences would lose digits.
func phis(z float64) (one, two float64) {
	if math.Abs(z) < 0.05 {
		two = 1.0/2 + z*(1.0/6+z*(1.0/24+z*(1.0/120+z*(1.0/720+z*(1.0/5040+z/40320)))))
		return 1 + z*two, two
	}
	one = math.Expm1(z) / z
	return one, (one - 1) / z
}

// drive is the outside influences on the pair during one step: temperatures in °C, gains in W.
type drive struct{ out, ground, gain, floorGain float64 }

// rates returns how fast both bodies warm at the start of the step without heating, K/s.
func (s *stride) rates(x twin, d drive) twin {
	crossing := s.coupling * (x.air - x.floor)
	return twin{
		(d.gain - s.airLoss*(x.air-d.out) - crossing) / s.airHeat,
		(d.floorGain + crossing - s.edge*(x.floor-d.out) - s.deep*(x.floor-d.ground)) / s.floorHeat,
	}
}

// step returns both bodies at the end of the step, and their means over it.
func (s *stride) step(x twin, d drive) (end, mean twin) {
	r := s.rates(x, d)
	e, m := s.end.of(r), s.mean.of(r)
	return twin{x.air + e.air, x.floor + e.floor}, twin{x.air + m.air, x.floor + m.floor}
}

// heatToEnd returns the constant heat in W with which the air ends the step at the temperature
// at, when it would end at free without heat. The problem is linear, so the answer is exact.
func (s *stride) heatToEnd(at, free float64) float64 {
	return (at - free) * s.airHeat / s.end.aa
}

// heated returns end and mean after adding heat through the step.
func (s *stride) heated(end, mean twin, heat float64) (twin, twin) {
	k := heat / s.airHeat
	end.air += s.end.aa * k
	end.floor += s.end.fa * k
	mean.air += s.mean.aa * k
	mean.floor += s.mean.fa * k
	return end, mean
}
