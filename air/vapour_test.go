package air_test

import (
	"math"
	"testing"

	"eyeup/air"
	"eyeup/quantity"
)

// near fails the test when got lies further from want than tolerance.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.10g, want %.10g within %g", what, got, want, tolerance)
	}
}

func celsius(c float64) quantity.Temperature { return quantity.Celsius(c) }

// TestWorkedExamplesOfFAO works the examples of FAO Irrigation and Drainage Paper 56 (Allen
// and others 1998), as the tests of PyETo 79ddd88d cite them by page and the NCAR Command
// Language's pages on satvpr_tdew_fao56 and satvpr_mean_fao56 print them.
func TestWorkedExamplesOfFAO(t *testing.T) {
	high := air.PressureByFAO(1800)
	near(t, "example 2: pressure, kPa", high.Kilopascals(), 81.8, 0.05)
	near(t, "example 2: psychrometric constant, kPa/K", air.PsychrometricConstant(high)/1000, 0.054, 0.0005)

	near(t, "example 3: at 24.5 °C, kPa", air.Saturation(celsius(24.5)).Kilopascals(), 3.075, 0.001)
	near(t, "example 3: at 15 °C, kPa", air.Saturation(celsius(15)).Kilopascals(), 1.705, 0.001)
	near(t, "example 3: mean, kPa", air.DaySaturation(celsius(15), celsius(24.5)).Kilopascals(), 2.39, 0.005)

	wet := air.VapourFromWetBulb(celsius(25.6), celsius(19.5), 87.9*quantity.Kilopascal)
	near(t, "example 4: vapour, kPa", wet.Kilopascals(), 1.91, 0.005)

	low, hot := celsius(18), celsius(25)
	near(t, "example 5: both humidities, kPa", air.DayVapour(low, hot, 0.82, 0.54).Kilopascals(), 1.70, 0.005)
	near(t, "example 5: highest humidity alone, kPa", air.Vapour(low, 0.82).Kilopascals(), 1.69, 0.005)
	near(t, "example 5: mean humidity, kPa", air.DayVapourOfMean(low, hot, 0.68).Kilopascals(), 1.78, 0.005)

	near(t, "example 17: slope at 30.2 °C, kPa/K", air.Slope(celsius(30.2))/1000, 0.246, 0.0005)
	near(t, "example 20: dew point 14.8 °C, kPa", air.Saturation(celsius(14.8)).Kilopascals(), 1.68, 0.005)
}

// TestSaturationOfFAO compares with equation 11 of FAO 56 reckoned apart in R 4.2.2.
func TestSaturationOfFAO(t *testing.T) {
	for c, want := range map[float64]float64{
		-5: 0.42118, 0: 0.61080, 4: 0.81326, 5: 0.87231, 10: 1.22796, 13: 1.49777,
		15: 1.70535, 18: 2.06399, 24.5: 3.07465, 25: 3.16778, 25.6: 3.28277,
	} {
		near(t, "saturation, kPa", air.Saturation(celsius(c)).Kilopascals(), want, 1e-5)
	}
	near(t, "deficit at 25 °C and 60 %, kPa", air.Deficit(celsius(25), 0.60).Kilopascals(), 1.26711, 1e-5)
	near(t, "dew point of 1.70 kPa", air.DewPoint(1.70*quantity.Kilopascal).Celsius(), 14.951, 1e-3)
}
