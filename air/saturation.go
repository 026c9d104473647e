package air

import (
	"math"

	"eyeup/quantity"
)

// OverWater returns the saturation vapour pressure over liquid water. The formula holds
// for 0 to 200 °C and is used down to -100 °C for water that has not frozen; else NaN.
// Source: Hyland & Wexler 1983, as in the ASHRAE Handbook of Fundamentals, chapter 1.
func OverWater(t quantity.Temperature) quantity.Pressure {
	if !(t.Celsius() >= coldest && t.Celsius() <= 200) {
		return unknown()
	}
	k := t.Kelvins()
	ln := -5800.2206/k + 1.3914993 - 0.048640239*k + 4.1764768e-5*k*k -
		1.4452093e-8*k*k*k + 6.5459673*math.Log(k)
	return quantity.Pressure(math.Exp(ln))
}

// OverIce returns the saturation vapour pressure over ice. Valid -100 to 0.01 °C, else NaN.
// Source: Hyland & Wexler 1983, as in the ASHRAE Handbook of Fundamentals, chapter 1.
func OverIce(t quantity.Temperature) quantity.Pressure {
	if !(t.Celsius() >= coldest && t.Celsius() <= triplePoint) {
		return unknown()
	}
	k := t.Kelvins()
	ln := -5674.5359/k + 6.3925247 - 0.009677843*k + 6.2215701e-7*k*k +
		2.0747825e-9*k*k*k - 9.484024e-13*k*k*k*k + 4.1635019*math.Log(k)
	return quantity.Pressure(math.Exp(ln))
}

// triplePoint is where ice, water and vapour stand side by side, in °C.
const triplePoint = 0.01

// OverSurface returns the saturation vapour pressure over what water is at that
// temperature: ice up to 0.01 °C, liquid above. Valid -100 to 200 °C, else NaN.
func OverSurface(t quantity.Temperature) quantity.Pressure {
	if t.Celsius() <= triplePoint {
		return OverIce(t)
	}
	return OverWater(t)
}

// FrostPoint returns the temperature of a surface on which air of the given vapour pressure
// just begins to leave frost or, above freezing, dew. Not known outside -100 to 100 °C.
// It inverts OverSurface by halving, to 1e-9 K.
func FrostPoint(vapour quantity.Pressure) quantity.Temperature {
	if !(vapour >= OverSurface(quantity.Celsius(coldest)) && vapour <= OverSurface(quantity.Celsius(hottest))) {
		return quantity.Unknown()
	}
	return halve(coldest, hottest, func(t quantity.Temperature) bool { return OverSurface(t) > vapour })
}

// halve returns where tooWarm turns from false to true between low and high, in °C.
func halve(low, high float64, tooWarm func(quantity.Temperature) bool) quantity.Temperature {
	for high-low > 1e-9 {
		middle := (low + high) / 2
		if tooWarm(quantity.Celsius(middle)) {
			high = middle
		} else {
			low = middle
		}
	}
	return quantity.Celsius((low + high) / 2)
}
