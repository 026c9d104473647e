package quantity

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The figures follow from the factors tested in units_test.go.
func TestShown(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{US.Temperature(Fahrenheit(50)), "50 °F"},
		{Metric.Temperature(Fahrenheit(50)), "10 °C"},
		{US.FineTemperature(Celsius(10.1)), "50.2 °F"},
		{Metric.FineTemperature(Celsius(-0.04)), "0.0 °C"},
		{US.Difference(1), "1.8 °F"},
		{Metric.Difference(-1), "-1.0 °C"},
		{US.Length(27 * Foot), "27 ft"},
		{US.Length(45 * Centimetre), "17.7 in"},
		{Metric.Length(7.3 * Metre), "7.3 m"},
		{Metric.Length(110 * Centimetre), "110 cm"},
		{Metric.Height(110 * Centimetre), "110 cm"},
		{US.Height(85 * Centimetre), "33 in"},
		{US.Height(110 * Centimetre), "3.5 ft"},
		{US.Height(91 * Centimetre), "3 ft"},
		{US.Area(14 * SquareMetre), "151 ft²"},
		{Metric.Area(14 * SquareMetre), "14 m²"},
		{US.Volume(2 * CubicFoot), "2 ft³"},
		{US.Volume(2.8 * Litre), "0.74 gal"},
		{Metric.Volume(2 * CubicFoot), "56.6 L"},
		{Metric.Volume(2 * CubicMetre), "2 m³"},
		{US.Mass(23 * Kilogram), "50.7 lb"},
		{US.Mass(100 * Gram), "3.53 oz"},
		{Metric.Mass(100 * Gram), "100 g"},
		{Metric.Mass(23 * Kilogram), "23 kg"},
		{US.Power(6 * Kilowatt), "6 kW"},
		{Metric.Power(180), "180 W"},
		{US.HeaterPower(20 * ThousandBtuPerHour), "20000 Btu/h"},
		{Metric.HeaterPower(6 * Kilowatt), "6 kW"},
		{US.Energy(1234 * KilowattHour), "1234 kWh"},
		{US.Transmittance(3.6), "0.634 Btu/h/ft²/°F"},
		{Metric.Transmittance(3.6), "3.6 W/m²/K"},
		{US.Conductance(110), "209 Btu/h/°F"},
		{Metric.Conductance(110), "110 W/K"},
		{US.Area(0), "0 ft²"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

// What is shown can be typed again, and is off by half of its last figure at most.
func TestShownIsRead(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.SampledFrom([]System{Metric, US}).Draw(t, "system")
		x := math.Exp(rapid.Float64Range(-3, 9).Draw(t, "logarithm"))
		for _, c := range []struct {
			text string
			read func(string) (float64, error)
		}{
			{s.Length(Length(x)), as(ParseLength)}, {s.Area(Area(x)), as(ParseArea)},
			{s.Volume(Volume(x)), as(ParseVolume)}, {s.Mass(Mass(x)), as(ParseMass)}, {s.Power(Power(x)), as(ParsePower)},
			{s.HeaterPower(Power(x)), as(ParsePower)}, {s.Transmittance(Transmittance(x)), as(ParseTransmittance)},
			{s.Conductance(Conductance(x)), as(ParseConductance)},
		} {
			got, err := c.read(c.text)
			if err != nil || math.Abs(got-x) > 0.0051*x {
				t.Fatalf("%g was shown as %q and read as %g, %v", x, c.text, got, err)
			}
		}
		warmth := Celsius(x/100 - 20)
		got, err := ParseTemperature(s.FineTemperature(warmth))
		if err != nil || math.Abs(float64(got.Sub(warmth))) > 0.0501 {
			t.Fatalf("%v was shown as %q and read as %v, %v", warmth, s.FineTemperature(warmth), got, err)
		}
	})
}

func TestSystemIsRead(t *testing.T) {
	for _, s := range []System{Metric, US} {
		if got, err := ParseSystem(s.String()); err != nil || got != s {
			t.Errorf("%v: %v, %v", s, got, err)
		}
	}
	if _, err := ParseSystem("imperial"); err == nil {
		t.Error("imperial was taken")
	}
}
