package air_test

import (
	"math"
	"strings"
	"testing"

	"eyeup/air"
	"eyeup/quantity"
)

func TestCheckSaysWhatCannotBe(t *testing.T) {
	const sea = quantity.Pressure(101325)
	for _, row := range []struct {
		temperature quantity.Temperature
		humidity    quantity.Share
		pressure    quantity.Pressure
		says        string // empty: nothing is wrong
	}{
		{celsius(25), 0.6, sea, ""},
		{celsius(-100), 0, 20_000, ""},
		{celsius(100), 1, 120_000, ""},
		{celsius(101), 0.6, sea, "101 °C lies outside"},
		{quantity.Unknown(), 0.6, sea, "NaN °C lies outside"},
		{celsius(25), 60, sea, "6000 % lies outside"},
		{celsius(25), quantity.Share(math.NaN()), sea, "relative humidity"},
		{celsius(25), 0.6, 1013, "1.013 kPa lies outside"},
	} {
		err := air.Check(row.temperature, row.humidity, row.pressure)
		switch {
		case row.says == "" && err != nil:
			t.Errorf("%+v refused: %v", row, err)
		case row.says != "" && (err == nil || !strings.Contains(err.Error(), row.says)):
			t.Errorf("%+v: error %v, want one that says %q", row, err, row.says)
		}
	}
}

// TestOutsideIsNotKnown: what lies outside a function's range is never drawn to its edge.
func TestOutsideIsNotKnown(t *testing.T) {
	const sea = quantity.Pressure(101325)
	for what, got := range map[string]float64{
		"saturation at -200 °C":        float64(air.Saturation(celsius(-200))),
		"saturation of the unknown":    float64(air.Saturation(quantity.Unknown())),
		"over ice at 5 °C":             float64(air.OverIce(celsius(5))),
		"over water at 250 °C":         float64(air.OverWater(celsius(250))),
		"vapour at 101 %":              float64(air.Vapour(celsius(20), 1.01)),
		"deficit at -1 %":              float64(air.Deficit(celsius(20), -0.01)),
		"dew point of nothing":         air.DewPoint(0).Celsius(),
		"dew point of less":            air.DewPoint(-5).Celsius(),
		"dew point past the pole":      air.DewPoint(1e12).Celsius(),
		"frost point of nothing":       air.FrostPoint(0).Celsius(),
		"ratio of boiling air":         air.HumidityRatio(sea, sea),
		"vapour of a ratio below 0":    float64(air.VapourOfRatio(-0.01, sea)),
		"wet bulb at 120 %":            air.WetBulb(celsius(20), 1.2, sea).Celsius(),
		"wet bulb of far too wet air":  air.WetBulbOfRatio(celsius(20), 0.03, sea).Celsius(),
		"wet bulb where water boils":   air.WetBulb(celsius(100), 0.5, sea).Celsius(),
		"wet bulb above the dry":       air.FromWetBulb(celsius(20), celsius(21), sea),
		"wet bulb too low to be":       air.FromWetBulb(celsius(40), celsius(0), sea),
		"pressure on the way to space": float64(air.PressureAt(50_000)),
	} {
		if !math.IsNaN(got) {
			t.Errorf("%s = %g, want it not known", what, got)
		}
	}
}
