package air

import (
	"fmt"
	"math"

	"eyeup/quantity"
)

// The range of temperatures for which this package answers, in °C. It is that of the
// handbook's formulas over ice and water, cut at the boiling point.
const (
	coldest = -100.0
	hottest = 100.0
)

// The range of air pressures that Check accepts, in Pa: from the highest peak to the
// deepest mine, with room to spare.
const (
	thinnest = 20_000
	densest  = 120_000
)

// Check returns an error that says which of the three can't be: a temperature outside
// -100 to 100 °C, a relative humidity outside 0 to 1, a pressure outside 20 to 120 kPa.
func Check(t quantity.Temperature, humidity quantity.Share, pressure quantity.Pressure) error {
	switch {
	case !isUsual(t):
		return fmt.Errorf("a temperature of %g °C lies outside -100 to 100 °C; give that of the air, such as 25C or 77F", t.Celsius())
	case !(humidity >= 0 && humidity <= 1):
		return fmt.Errorf("a relative humidity of %g %% lies outside 0 to 100 %%; give it in per cent, such as 60", humidity.Percent())
	case !(pressure >= thinnest && pressure <= densest):
		return fmt.Errorf("an air pressure of %g kPa lies outside 20 to 120 kPa; at sea level it is near 101 kPa", pressure.Kilopascals())
	}
	return nil
}

func isUsual(t quantity.Temperature) bool {
	return t.Celsius() >= coldest && t.Celsius() <= hottest
}

// unknown is the pressure of what can't be reckoned.
func unknown() quantity.Pressure { return quantity.Pressure(math.NaN()) }
