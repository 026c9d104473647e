package air_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"eyeup/air"
	"eyeup/quantity"
)

func drawTemperature(t *rapid.T, low, high float64) quantity.Temperature {
	return celsius(rapid.Float64Range(low, high).Draw(t, "celsius"))
}

func TestDewPointInvertsSaturation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := drawTemperature(t, -30, 50)
		got := air.DewPoint(air.Saturation(want))
		if math.Abs(float64(got.Sub(want))) > 1e-9 {
			t.Fatalf("dew point of saturation at %v is %v", want, got)
		}
	})
}

func TestFrostPointInvertsSaturation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := drawTemperature(t, -60, 60)
		got := air.FrostPoint(air.OverSurface(want))
		if math.Abs(float64(got.Sub(want))) > 0.02 { // ice and water meet at 0.01 °C within a hair
			t.Fatalf("frost point of saturation at %v is %v", want, got)
		}
	})
}

func TestWetBulbInvertsFromWetBulb(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		dry := drawTemperature(t, -40, 60)
		humidity := quantity.Share(rapid.Float64Range(0.01, 1).Draw(t, "humidity"))
		pressure := quantity.Pressure(rapid.Float64Range(60e3, 105e3).Draw(t, "pressure"))
		wet := air.WetBulb(dry, humidity, pressure)
		if wet.Above(dry.Add(1e-6)) {
			t.Fatalf("a wet bulb of %v above a dry one of %v", wet, dry)
		}
		if math.Abs(wet.Celsius()) < 1e-6 {
			return // at 0 °C the iced and the wet thermometer differ
		}
		want := air.HumidityRatio(quantity.Pressure(humidity)*air.OverSurface(dry), pressure)
		if got := air.FromWetBulb(dry, wet, pressure); math.Abs(got-want) > 1e-9 {
			t.Fatalf("dry %v, wet %v: humidity ratio %g, want %g", dry, wet, got, want)
		}
	})
}

func TestRatioAndVapourAreInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		total := quantity.Pressure(rapid.Float64Range(60e3, 105e3).Draw(t, "total"))
		vapour := total * quantity.Pressure(rapid.Float64Range(0, 0.9).Draw(t, "share"))
		got := air.VapourOfRatio(air.HumidityRatio(vapour, total), total)
		if math.Abs(float64(got-vapour)) > 1e-9*float64(total) {
			t.Fatalf("vapour of %v Pa came back as %v Pa", vapour, got)
		}
	})
}

func TestDrierAirPullsHarder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := drawTemperature(t, -30, 50)
		dry := quantity.Share(rapid.Float64Range(0, 0.99).Draw(t, "dry"))
		if !(air.Deficit(at, dry) > air.Deficit(at, dry+0.01)) {
			t.Fatalf("at %v the deficit does not fall with humidity", at)
		}
		if !(air.Deficit(at.Add(1), dry) > air.Deficit(at, dry)) {
			t.Fatalf("at %v the deficit does not rise with warmth", at)
		}
	})
}

// TestFamiliesAgree holds the claim of the package comment: between -20 and 50 °C FAO's
// curve and the handbook's over water differ by less than one per cent.
func TestFamiliesAgree(t *testing.T) {
	for c := -20.0; c <= 50; c++ {
		plain, full := float64(air.Saturation(celsius(c))), float64(air.OverWater(celsius(c)))
		nearly(t, "FAO against the handbook", plain, full, 0.01)
	}
}

// TestWetBulbOverIce: air at -10 °C that is saturated over water leaves frost, and warms an
// iced wet bulb above the dry one, by less than half a kelvin.
func TestWetBulbOverIce(t *testing.T) {
	dry, sea := celsius(-10), quantity.Pressure(101325)
	ratio := air.HumidityRatio(air.OverWater(dry), sea)
	wet := air.WetBulbOfRatio(dry, ratio, sea)
	if above := wet.Sub(dry); !(above > 0 && above < 0.5) {
		t.Errorf("the iced bulb stands %g K above the dry one", float64(above))
	}
}
