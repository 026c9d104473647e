package place

import (
	"math"

	"eyeup/quantity"
	"eyeup/weather"
)

// Soil is the thermal properties of a ground.
type Soil struct {
	Conducts float64 // thermal conductivity, W/mK
	Holds    float64 // heat capacity, J/m³K
}

// Reach returns the damping depth for a swing of the given period in seconds: there it is down
// to 37 % and lags by a sixth of the period. It is √(2κ/(Cω)). Source: MacKay 2009,
// Sustainable Energy, ch. E.
func (s Soil) Reach(period float64) quantity.Length {
	return quantity.Length(math.Sqrt(2 * s.Conducts / (s.Holds * 2 * math.Pi / period)))
}

// PeakFlux returns the highest heat flux through the surface, in W/m², for a swing of the
// given amplitude. Source: as for Reach.
func (s Soil) PeakFlux(swing quantity.Difference, period float64) float64 {
	return float64(swing) * math.Sqrt(s.Holds*s.Conducts*2*math.Pi/period)
}

// wave returns the remaining share of a swing at a depth in damping depths, and its lag as a
// share of the period.
func wave(depth float64) (gain, lag float64) { return math.Exp(-depth), depth / (2 * math.Pi) }

// year is the period of the yearly swing, in days.
const year = 365

// underFloor is the soil whose temperature at one metre the floor of a house feels, with a
// medium diffusivity of 5e-7 m²/s. Assumption.
var underFloor = Soil{Conducts: 1.0, Holds: 2e6}

// deepGround returns the temperature one metre under the floor for every day: the yearly swing
// of the outside air, damped and delayed. A span shorter than a year shows no swing, so its
// mean is used.
func deepGround(h *weather.Hours) []float64 {
	all := make([]float64, h.Span.Days())
	mean := yearMean(h)
	var cosine, sine float64
	if len(all) >= year {
		for day := range year {
			turn := 2 * math.Pi * (float64(day) + 0.5) / year
			air := dayMean(h, day)
			cosine += 2 * air * math.Cos(turn) / year
			sine += 2 * air * math.Sin(turn) / year
		}
	}
	gain, lag := wave(1 / float64(underFloor.Reach(year*86400)))
	for day := range all {
		turn := 2 * math.Pi * ((float64(day)+0.5)/year - lag)
		all[day] = mean + gain*(cosine*math.Cos(turn)+sine*math.Sin(turn))
	}
	return all
}

// dayMean returns the mean air temperature of a day.
func dayMean(h *weather.Hours, day int) float64 {
	var sum float64
	for _, t := range h.Air[24*day : 24*day+24] {
		sum += t
	}
	return sum / 24
}

// yearMean returns the mean air temperature of the first year of h, or of all of it if
// shorter.
func yearMean(h *weather.Hours) float64 {
	n := min(len(h.Air), 24*year)
	var sum float64
	for _, t := range h.Air[:n] {
		sum += t
	}
	return sum / max(float64(n), 1)
}
