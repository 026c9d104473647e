package quantity

import (
	"fmt"
	"math"
	"strconv"
)

// System is how a garden likes its measures shown. It changes nothing that is reckoned,
// and every measure it shows can be read again.
type System int

// The systems there are.
const (
	Metric System = iota // °C, metres, litres, kilograms
	US                   // °F, feet, cubic feet and gallons, pounds
)

// ParseSystem reads "us" or "metric".
func ParseSystem(s string) (System, error) {
	switch s {
	case "metric":
		return Metric, nil
	case "us":
		return US, nil
	}
	return Metric, fmt.Errorf("%q is no way to show measures; write us or metric", s)
}

// String returns "us" or "metric".
func (s System) String() string {
	if s == US {
		return "us"
	}
	return "metric"
}

// Temperature shows a temperature in whole degrees: 50 °F.
func (s System) Temperature(t Temperature) string { return s.degrees(t, 0) }

// FineTemperature shows a temperature to a tenth of a degree: 50.2 °F.
func (s System) FineTemperature(t Temperature) string { return s.degrees(t, 1) }

func (s System) degrees(t Temperature, decimals int) string {
	if s == US {
		return fixed(t.Fahrenheit(), decimals) + " °F"
	}
	return fixed(t.Celsius(), decimals) + " °C"
}

// Difference shows a temperature difference to a tenth of a degree: 1.8 °F.
func (s System) Difference(d Difference) string {
	if s == US {
		return fixed(d.Fahrenheits(), 1) + " °F"
	}
	return fixed(float64(d), 1) + " °C"
}

// Length shows a length: below two metres in centimetres or below three feet in inches.
func (s System) Length(l Length) string {
	size := Length(math.Abs(float64(l)))
	switch {
	case s == US && size < 3*Foot:
		return figure(float64(l/Inch)) + " in"
	case s == US:
		return figure(float64(l/Foot)) + " ft"
	case size < 2*Metre:
		return figure(float64(l/Centimetre)) + " cm"
	default:
		return figure(float64(l)) + " m"
	}
}

// Height shows how tall a plant grows: 120 cm; below three feet whole inches, else half feet.
func (s System) Height(l Length) string {
	switch {
	case s != US:
		return fmt.Sprintf("%.0f cm", float64(l/Centimetre))
	case l < 3*Foot-Inch/2:
		return fmt.Sprintf("%.0f in", float64(l/Inch))
	}
	return strconv.FormatFloat(math.Round(2*float64(l/Foot))/2, 'f', -1, 64) + " ft"
}

// Area shows an area: 14 m², 151 ft².
func (s System) Area(a Area) string {
	if s == US {
		return figure(float64(a/SquareFoot)) + " ft²"
	}
	return figure(float64(a)) + " m²"
}

// Volume shows a volume: litres, or cubic metres from one up; US gallons, or cubic feet
// from a half up.
func (s System) Volume(v Volume) string {
	size := Volume(math.Abs(float64(v)))
	switch {
	case s == US && size < CubicFoot/2:
		return figure(float64(v/USGallon)) + " gal"
	case s == US:
		return figure(float64(v/CubicFoot)) + " ft³"
	case size < CubicMetre:
		return figure(v.Litres()) + " L"
	default:
		return figure(float64(v)) + " m³"
	}
}

// Mass shows a mass: grams, or kilograms from one up; ounces, or pounds from one up.
func (s System) Mass(m Mass) string {
	size := Mass(math.Abs(float64(m)))
	switch {
	case s == US && size < Pound:
		return figure(float64(m/Pound)*16) + " oz"
	case s == US:
		return figure(float64(m/Pound)) + " lb"
	case size < Kilogram:
		return figure(float64(m/Gram)) + " g"
	default:
		return figure(float64(m)) + " kg"
	}
}

// Power shows electric power, in watts, or kilowatts from one up, in either system.
func (s System) Power(p Power) string {
	if math.Abs(float64(p)) < float64(Kilowatt) {
		return figure(float64(p)) + " W"
	}
	return figure(float64(p/Kilowatt)) + " kW"
}

// HeaterPower shows the power of a heater: in kilowatts, or in Btu/h, as US heaters that
// burn something are sold.
func (s System) HeaterPower(p Power) string {
	if s == US {
		return figure(float64(p/BtuPerHour)) + " Btu/h"
	}
	return s.Power(p)
}

// Energy shows an energy in kilowatt-hours, in either system.
func (s System) Energy(e Energy) string { return figure(e.KilowattHours()) + " kWh" }

// Transmittance shows a U value: 3.6 W/m²/K, 0.634 Btu/h/ft²/°F.
func (s System) Transmittance(u Transmittance) string {
	if s == US {
		return figure(float64(u/BtuPerHourFootFahrenheit)) + " Btu/h/ft²/°F"
	}
	return figure(float64(u)) + " W/m²/K"
}

// Conductance shows the heat that flows for each degree: 110 W/K, 209 Btu/h/°F.
func (s System) Conductance(c Conductance) string {
	if s == US {
		return figure(float64(c.At(FahrenheitStep)/BtuPerHour)) + " Btu/h/°F"
	}
	return figure(float64(c)) + " W/K"
}

// figure writes an amount to three digits, or to whole ones where it has more.
func figure(x float64) string {
	decimals := 0
	if size := math.Abs(x); size > 0 && size < 100 {
		decimals = 2 - int(math.Floor(math.Log10(size)))
	}
	text := fixed(x, decimals)
	rounded, _ := strconv.ParseFloat(text, 64) // what was written can be read
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

// fixed writes an amount with so many decimals, and nothing as 0, never -0.
func fixed(x float64, decimals int) string {
	text := strconv.FormatFloat(x, 'f', decimals, 64)
	if rounded, err := strconv.ParseFloat(text, 64); err == nil && rounded == 0 {
		return strconv.FormatFloat(0, 'f', decimals, 64)
	}
	return text
}
