package air_test

import (
	"testing"

	"eyeup/air"
	"eyeup/quantity"
)

// The values of this file are those of the tests of PsychroLib 3066345d (2023-01-06), which
// quote the ASHRAE Handbook of Fundamentals 2017, chapter 1, tables 2 and 3 and example 1.
// The tables were made with newer coefficients than Hyland & Wexler's: the handbook's own
// claim is agreement within 300 parts in a million, and that is the tolerance.
const handbook = 3e-4

func nearly(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	near(t, what, got, want, share*want)
}

func TestSaturationTable(t *testing.T) {
	near(t, "at -60 °C, Pa", float64(air.OverSurface(celsius(-60))), 1.08, 0.01)
	for c, want := range map[float64]float64{
		-20: 103.24, -5: 401.74, 5: 872.6, 25: 3169.7, 50: 12351.3, 100: 101418, 150: 476101.4,
	} {
		nearly(t, "saturation, Pa", float64(air.OverSurface(celsius(c))), want, handbook)
	}
	// Hyland & Wexler's formula reckoned apart in R 4.2.2.
	for c, want := range map[float64]float64{5: 872.49, 25: 3169.2, 50: 12349.9} {
		nearly(t, "Hyland & Wexler, Pa", float64(air.OverWater(celsius(c))), want, 1e-4)
	}
}

func TestSaturationRatioTable(t *testing.T) {
	for _, row := range []struct{ celsius, want, share float64 }{
		{-20, 6.373e-4, 0.01}, {-5, 0.0024863, 0.005}, {5, 0.005425, 0.005},
		{25, 0.020173, 0.005}, {50, 0.086863, 0.01}, {85, 0.838105, 0.02},
	} {
		nearly(t, "humidity ratio at saturation", air.SaturationRatio(celsius(row.celsius), 101325), row.want, row.share)
	}
}

func TestMoistAirTable(t *testing.T) {
	near(t, "humidity ratio", air.HumidityRatio(3169.7, 95461), 0.0213603998, 1e-6)
	// Reckoned apart in R 4.2.2 with Hyland & Wexler's saturation.
	near(t, "humidity ratio at 25 °C and 80 %", air.HumidityRatio(0.80*air.OverWater(celsius(25)), 101325), 0.015962, 1e-6)
	nearly(t, "density, kg/m³", air.Density(celsius(30), 0.02, 95461), 1.08411986, handbook)
	nearly(t, "enthalpy, J/kg", air.Enthalpy(celsius(30), 0.02), 81316, handbook)
	nearly(t, "ratio from 30 and 25 °C", air.FromWetBulb(celsius(30), celsius(25), 95461), 0.0192281274, handbook)
	nearly(t, "ratio from -1 and -5 °C", air.FromWetBulb(celsius(-1), celsius(-5), 95461), 0.00120399819, handbook)
	near(t, "wet bulb at 7 °C and 61 %", air.WetBulb(celsius(7), 0.61, 100_000).Celsius(), 3.92667, 0.01)
}

// TestHandbookExample works example 1 of chapter 1: 40 °C dry, 20 °C wet, at sea level.
func TestHandbookExample(t *testing.T) {
	dry, sea := celsius(40), air.PressureAt(0)
	w := air.FromWetBulb(dry, celsius(20), sea)
	vapour := air.VapourOfRatio(w, sea)
	near(t, "humidity ratio", w, 0.0065, 0.0001)
	near(t, "relative humidity", float64(vapour/air.OverWater(dry)), 0.14, 0.01)
	near(t, "enthalpy, kJ/kg", air.Enthalpy(dry, w)/1000, 56.7, 0.1)
	near(t, "volume, m³/kg", air.Volume(dry, w, sea), 0.896, 0.01)
	near(t, "dew point by the handbook", air.FrostPoint(vapour).Celsius(), 7, 0.5)
	near(t, "dew point by FAO", air.DewPoint(vapour).Celsius(), 7, 0.5)
}

func TestStandardAtmosphere(t *testing.T) {
	for metres, want := range map[quantity.Length]float64{
		-500: 107478, 0: 101325, 500: 95461, 1000: 89875, 4000: 61640,
	} {
		near(t, "pressure, Pa", float64(air.PressureAt(metres)), want, 1)
	}
}
