package air

import (
	"math"

	"eyeup/quantity"
)

// Constants of the saturation curve of FAO 56 (equation 11), after Tetens 1930 and Murray 1967.
const (
	tetensAtFreezing = 610.8 // Pa
	tetensRise       = 17.27
	tetensShift      = 237.3 // °C
)

// Saturation returns the vapour pressure of air that can hold no more water, over water
// also below freezing. Valid -100 to 100 °C, else NaN. Source: FAO 56, equation 11.
func Saturation(t quantity.Temperature) quantity.Pressure {
	if !isUsual(t) {
		return unknown()
	}
	c := t.Celsius()
	return quantity.Pressure(tetensAtFreezing * math.Exp(tetensRise*c/(c+tetensShift)))
}

// Slope returns how fast Saturation rises with warmth, in Pa/K. Valid -100 to 100 °C,
// else NaN. Source: FAO 56, equation 13, whose printed 4098 is 17.27 x 237.3.
func Slope(t quantity.Temperature) float64 {
	c := t.Celsius() + tetensShift
	return tetensRise * tetensShift * float64(Saturation(t)) / (c * c)
}

// DewPoint returns the temperature at which air of the given vapour pressure is
// saturated: the inverse of Saturation. Not known for a vapour pressure that is not above
// nothing or whose dew point lies outside -100 to 100 °C. Source: FAO 56, equation 3-11.
func DewPoint(vapour quantity.Pressure) quantity.Temperature {
	l := math.Log(float64(vapour) / tetensAtFreezing)
	t := quantity.Celsius(tetensShift * l / (tetensRise - l))
	if !(l < tetensRise) || !isUsual(t) {
		return quantity.Unknown()
	}
	return t
}

// Vapour returns the vapour pressure of air at a relative humidity of 0 to 1; NaN outside.
func Vapour(t quantity.Temperature, humidity quantity.Share) quantity.Pressure {
	if !(humidity >= 0 && humidity <= 1) {
		return unknown()
	}
	return quantity.Pressure(humidity) * Saturation(t)
}

// Deficit returns how far the vapour pressure lies below saturation, which is how hard the
// air pulls water out of what lies in it. Humidity is 0 to 1; NaN outside.
func Deficit(t quantity.Temperature, humidity quantity.Share) quantity.Pressure {
	return Saturation(t) - Vapour(t, humidity)
}

// Humidity returns the relative humidity of air at t whose dew point is given. It is above
// 1 when the dew point is the higher: air over water can't be so, and the caller says what
// is wrong.
func Humidity(t, dewPoint quantity.Temperature) quantity.Share {
	return quantity.Share(Saturation(dewPoint) / Saturation(t))
}

// DaySaturation returns the mean saturation of a day from its lowest and highest
// temperature; the curve bends, so that it lies above the saturation of the mean.
// Source: FAO 56, equation 12.
func DaySaturation(low, high quantity.Temperature) quantity.Pressure {
	return (Saturation(low) + Saturation(high)) / 2
}

// DayVapour returns a day's vapour pressure from its extremes of temperature and of
// relative humidity, the highest humidity falling in the coldest hour.
// Source: FAO 56, equation 17.
func DayVapour(low, high quantity.Temperature, most, least quantity.Share) quantity.Pressure {
	return (Vapour(low, most) + Vapour(high, least)) / 2
}

// DayVapourOfMean returns a day's vapour pressure from its extremes of temperature and its
// mean relative humidity, where no more is known. Source: FAO 56, equation 19.
func DayVapourOfMean(low, high quantity.Temperature, mean quantity.Share) quantity.Pressure {
	return (Vapour(low, mean) + Vapour(high, mean)) / 2
}

// ventilated is the coefficient of a wet-bulb thermometer in an air stream of some 5 m/s,
// in 1/K. Source: FAO 56, equation 16.
const ventilated = 0.000662

// VapourFromWetBulb returns the vapour pressure that a ventilated pair of dry and wet
// thermometers shows, the wet one free of ice. Source: FAO 56, equation 15.
func VapourFromWetBulb(dry, wet quantity.Temperature, pressure quantity.Pressure) quantity.Pressure {
	return Saturation(wet) - quantity.Pressure(ventilated*float64(pressure)*float64(dry.Sub(wet)))
}

// PsychrometricConstant returns FAO 56's gamma (equation 8), in Pa/K.
func PsychrometricConstant(pressure quantity.Pressure) float64 {
	return 0.665e-3 * float64(pressure)
}

// PressureByFAO returns the air pressure at an elevation as FAO 56 reckons it (equation 7):
// at 20 °C, some 0.4 % above PressureAt in the hills.
func PressureByFAO(elevation quantity.Length) quantity.Pressure {
	return 101.3 * quantity.Kilopascal * quantity.Pressure(math.Pow((293-0.0065*float64(elevation))/293, 5.26))
}
