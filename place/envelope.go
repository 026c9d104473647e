package place

import "eyeup/quantity"

// airHeat is the heat capacity of a cubic metre of air in Wh/K: 0.336 at 20 °C, 0.361 at 0 °C
// (density times 1006 J/kg, at sea level).
const airHeat = 0.336

// AirExchange returns the heat loss per kelvin of a space with the given air changes an hour.
func AirExchange(v quantity.Volume, changes quantity.Rate) quantity.Conductance {
	return quantity.Conductance(airHeat * float64(v) * float64(changes))
}

// Part is one piece of the envelope of a space.
type Part struct {
	Area quantity.Area
	U    quantity.Transmittance
}

// Through returns the heat loss per kelvin through all parts together.
func Through(parts ...Part) quantity.Conductance {
	var sum quantity.Conductance
	for _, p := range parts {
		sum += p.U.Over(p.Area)
	}
	return sum
}

// Layered returns the transmittance of two layers in series.
func Layered(u, v quantity.Transmittance) quantity.Transmittance { return 1 / (1/u + 1/v) }
