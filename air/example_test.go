package air_test

import (
	"fmt"

	"eyeup/air"
	"eyeup/quantity"
)

// Example 3 of FAO 56 (Allen and others 1998): a day between 15 and 24.5 °C.
func ExampleDaySaturation() {
	fmt.Printf("%.2f kPa\n", air.DaySaturation(quantity.Celsius(15), quantity.Celsius(24.5)).Kilopascals())
	// Output: 2.39 kPa
}

// Example 4 of FAO 56: a ventilated pair of thermometers at 1200 m.
func ExampleVapourFromWetBulb() {
	vapour := air.VapourFromWetBulb(quantity.Celsius(25.6), quantity.Celsius(19.5), 87.9*quantity.Kilopascal)
	fmt.Printf("%.2f kPa\n", vapour.Kilopascals())
	// Output: 1.91 kPa
}

// Example 5 of FAO 56: a day of 18 to 25 °C with 82 down to 54 % of humidity.
func ExampleDayVapour() {
	vapour := air.DayVapour(quantity.Celsius(18), quantity.Celsius(25), 0.82, 0.54)
	fmt.Printf("%.2f kPa\n", vapour.Kilopascals())
	// Output: 1.70 kPa
}

// A dry bulb of 30 and a wet one of 25 °C at 500 m, as the tests of PsychroLib 3066345d
// have it from the ASHRAE Handbook of Fundamentals 2017, chapter 1: 0.01923.
func ExampleFromWetBulb() {
	w := air.FromWetBulb(quantity.Celsius(30), quantity.Celsius(25), air.PressureAt(500))
	fmt.Printf("%.4f kg of water to each kg of dry air\n", w)
	// Output: 0.0192 kg of water to each kg of dry air
}
