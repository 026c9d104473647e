package sun

import (
	"math"

	"eyeup/quantity"
)

// meanBeyond is the sun's power above the air that Ineichen & Perez reckon with, in W/m².
const meanBeyond = 1364

// ClearHour returns the sun under a cloudless sky: on level ground, the beam on a surface
// turned towards the sun, and the light of the sky on level ground. Mass is how many times
// the air straight overhead the light passes through, see AirMass; turbidity is Linke's,
// some 2 for clean winter air and 3 to 5 for summer haze. All 0 when the sun is down.
// Source: Ineichen & Perez 2002, Solar Energy 73:151.
func ClearHour(s Sky, mass, turbidity float64, elevation quantity.Length) (level, beam, diffuse quantity.Irradiance) {
	c := s.Height()
	if c <= 0 {
		return 0, 0, 0
	}
	z := float64(elevation)
	near, far := math.Exp(-z/8000), math.Exp(-z/1250)
	g := (5.09e-5*z + 0.868) * meanBeyond * c *
		math.Exp(-(3.92e-5*z+0.0387)*mass*(near+far*(turbidity-1)))
	b := meanBeyond * (0.664 + 0.163/near) * math.Exp(-0.09*mass*(turbidity-1))
	most := g * (1 - (0.1-0.2*math.Exp(-turbidity))/(0.1+0.882/near)) / c
	b = min(b, most)
	return quantity.Irradiance(g), quantity.Irradiance(b), quantity.Irradiance(g - b*c)
}

// AirMass returns how many times the air straight overhead the sun's light passes through
// at sea level. Not a number when the sun is down.
// Source: Kasten & Young 1989, Applied Optics 28:4735.
func AirMass(s Sky) float64 {
	if s.Zenith > 90 {
		return math.NaN()
	}
	return 1 / (s.Height() + 0.50572*math.Pow(96.07995-s.Zenith, -1.6364))
}
