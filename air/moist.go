package air

import (
	"math"

	"eyeup/quantity"
)

// waterToAir is the molar mass of water over that of dry air.
const waterToAir = 0.621945

// gasConstant is that of dry air, in J/kg·K. Source: ASHRAE Handbook of Fundamentals, chapter 1.
const gasConstant = 287.042

// Heat of dry air, of vapour, of water and of ice, in kJ/kg·K, and of turning water and ice
// into vapour at 0 °C, in kJ/kg. Source: ASHRAE Handbook of Fundamentals, chapter 1.
const (
	heatOfAir       = 1.006
	heatOfVapour    = 1.86
	heatOfWater     = 4.186
	heatOfIce       = 2.1
	heatToBoil      = 2501.0
	heatToSublimate = 2830.0
)

// PressureAt returns the pressure of the standard atmosphere at an elevation of -5000 to
// 11,000 m, else NaN. Source: ASHRAE Handbook of Fundamentals, chapter 1, equation 3.
func PressureAt(elevation quantity.Length) quantity.Pressure {
	if !(elevation >= -5000 && elevation <= 11000) {
		return unknown()
	}
	return quantity.Pressure(101325 * math.Pow(1-2.25577e-5*float64(elevation), 5.2559))
}

// HumidityRatio returns the kilograms of water in the air for each kilogram of dry air,
// from vapour pressure and total pressure. NaN unless 0 <= vapour < total.
func HumidityRatio(vapour, total quantity.Pressure) float64 {
	if !(vapour >= 0 && vapour < total) {
		return math.NaN()
	}
	return waterToAir * float64(vapour/(total-vapour))
}

// VapourOfRatio returns the vapour pressure of air of a humidity ratio, which is 0 or more.
func VapourOfRatio(ratio float64, total quantity.Pressure) quantity.Pressure {
	if !(ratio >= 0) {
		return unknown()
	}
	return total * quantity.Pressure(ratio/(waterToAir+ratio))
}

// SaturationRatio returns the humidity ratio of air that can hold no more, over ice below
// freezing. NaN where the air would boil.
func SaturationRatio(t quantity.Temperature, total quantity.Pressure) float64 {
	return HumidityRatio(OverSurface(t), total)
}

// Enthalpy returns the heat in moist air counted from dry air at 0 °C, in J for each
// kilogram of dry air. Source: ASHRAE Handbook of Fundamentals, chapter 1, equation 30.
func Enthalpy(t quantity.Temperature, ratio float64) float64 {
	c := t.Celsius()
	return 1000 * (heatOfAir*c + ratio*(heatToBoil+heatOfVapour*c))
}

// Volume returns the cubic metres that hold one kilogram of dry air and its vapour.
// Source: ASHRAE Handbook of Fundamentals, chapter 1, equation 26.
func Volume(t quantity.Temperature, ratio float64, total quantity.Pressure) float64 {
	return gasConstant * t.Kelvins() * (1 + ratio/waterToAir) / float64(total)
}

// Density returns the mass of moist air in kg/m³.
func Density(t quantity.Temperature, ratio float64, total quantity.Pressure) float64 {
	return (1 + ratio) / Volume(t, ratio, total)
}

// FromWetBulb returns the humidity ratio of air with a dry and a wet-bulb temperature, the
// wet bulb iced below 0 °C. NaN when the wet bulb is the warmer, and when no air could be
// so dry. Source: ASHRAE Handbook of Fundamentals, chapter 1, equations 33 and 35.
func FromWetBulb(dry, wet quantity.Temperature, total quantity.Pressure) float64 {
	if wet.Above(dry) {
		return math.NaN()
	}
	ratio := byWetBulb(dry, wet, total)
	if !(ratio >= 0) {
		return math.NaN()
	}
	return ratio
}

func byWetBulb(dry, wet quantity.Temperature, total quantity.Pressure) float64 {
	t, w := dry.Celsius(), wet.Celsius()
	most := SaturationRatio(wet, total)
	if w < 0 {
		return ((heatToSublimate-(heatOfIce-heatOfVapour)*w)*most - heatOfAir*(t-w)) /
			(heatToSublimate + heatOfVapour*t - heatOfIce*w)
	}
	return ((heatToBoil-(heatOfWater-heatOfVapour)*w)*most - heatOfAir*(t-w)) /
		(heatToBoil + heatOfVapour*t - heatOfWater*w)
}

// WetBulb returns what a wet-bulb thermometer shows in air of a relative humidity of 0 to
// 1, reckoned over ice below freezing. Not known outside -100 to 100 °C or where the air
// would boil. See WetBulbOfRatio.
func WetBulb(t quantity.Temperature, humidity quantity.Share, total quantity.Pressure) quantity.Temperature {
	if !isUsual(t) || !(humidity >= 0 && humidity <= 1) {
		return quantity.Unknown()
	}
	return WetBulbOfRatio(t, HumidityRatio(quantity.Pressure(humidity)*OverSurface(t), total), total)
}

// WetBulbOfRatio returns what a wet-bulb thermometer shows in air of a humidity ratio. It
// may stand up to 1 K above the dry one, where ice gathers frost from air that is not yet
// saturated over water. It inverts FromWetBulb by halving, to 1e-9 K; not known outside
// -100 to 100 °C or for more water than that.
func WetBulbOfRatio(t quantity.Temperature, ratio float64, total quantity.Pressure) quantity.Temperature {
	most := SaturationRatio(t, total)
	if !isUsual(t) || !(ratio >= 0) || math.IsNaN(most) {
		return quantity.Unknown()
	}
	highest := t.Celsius()
	if ratio > most {
		highest++
	}
	isTooWarm := func(wet quantity.Temperature) bool { return byWetBulb(t, wet, total) > ratio }
	if ratio > most && !isTooWarm(quantity.Celsius(highest)) {
		return quantity.Unknown()
	}
	return halve(max(coldest, t.Celsius()-maxDepression), highest, isTooWarm)
}

// maxDepression is further than a wet bulb can stand below a dry one between -100 and
// 100 °C, in K: bone-dry air at 100 °C has its wet bulb near 33 °C.
const maxDepression = 80
