package quantity

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"time"
)

// number is a decimal number at the beginning of a text; a point divides its decimals.
var number = regexp.MustCompile(`^[+-]?[0-9]+(\.[0-9]+)?([eE][+-]?[0-9]+)?`)

// ParseTemperature reads a temperature with its scale: 70F, 21 °C. It refuses what lies
// below absolute zero.
func ParseTemperature(s string) (Temperature, error) {
	amount, name, err := temperatures.split(s)
	if err != nil {
		return Temperature{}, err
	}
	t := Celsius(amount)
	if name == "F" {
		t = Fahrenheit(amount)
	}
	if !t.IsPossible() {
		return Temperature{}, fmt.Errorf("%q lies below absolute zero (-273.15 °C); check its number and scale", s)
	}
	return t, nil
}

// ParseDifference reads a temperature difference: 1.0 K, -2F (two Fahrenheit steps colder).
func ParseDifference(s string) (Difference, error) { return parse[Difference](s, &differences) }

// ParseLength reads a length: 7.3 m, 45 cm, 27 ft, 6 in. It may be negative.
func ParseLength(s string) (Length, error) { return parse[Length](s, &lengths) }

// ParseArea reads an area: 3.0 m2, 32 sq ft.
func ParseArea(s string) (Area, error) { return parse[Area](s, &areas) }

// ParseVolume reads a volume: 56 L, 2 ft3, 5 gal. Gallons are US gallons; a quart must say
// whether it is a dry or a liquid one.
func ParseVolume(s string) (Volume, error) { return parse[Volume](s, &volumes) }

// ParseMass reads a mass: 3 kg, 51 lb.
func ParseMass(s string) (Mass, error) { return parse[Mass](s, &masses) }

// ParsePower reads a power: 6 kW, 180 W, 20000 Btu/h.
func ParsePower(s string) (Power, error) { return parse[Power](s, &powers) }

// ParseEnergy reads an energy: 120 kWh, 3 therms.
func ParseEnergy(s string) (Energy, error) { return parse[Energy](s, &energies) }

// ParseConductance reads the heat that flows for each degree: 110 W/K, 60 Btu/h/F.
func ParseConductance(s string) (Conductance, error) { return parse[Conductance](s, &conductances) }

// ParseTransmittance reads a U value: 3.6 W/m2/K, 0.65 Btu/h/ft2/F.
func ParseTransmittance(s string) (Transmittance, error) {
	return parse[Transmittance](s, &transmittances)
}

// ParsePhotonFlux reads light for plants: 150 umol/m2/s.
func ParsePhotonFlux(s string) (PhotonFlux, error) { return parse[PhotonFlux](s, &photonFluxes) }

// ParseDailyLight reads the light of a day for plants: 12 mol/m2.
func ParseDailyLight(s string) (DailyLight, error) { return parse[DailyLight](s, &dailyLights) }

// ParseRate reads a number of times an hour: 1.0 /h.
func ParseRate(s string) (Rate, error) { return parse[Rate](s, &rates) }

// ParsePressure reads a pressure: 101.3 kPa, 1013 hPa.
func ParsePressure(s string) (Pressure, error) { return parse[Pressure](s, &pressures) }

// ParseShare reads a part of a whole: 52%. It refuses what lies outside 0 to 100 %.
func ParseShare(s string) (Share, error) {
	amount, _, err := shares.split(s)
	if err != nil {
		return 0, err
	}
	if amount < 0 || amount > 100 {
		return 0, fmt.Errorf("%q lies outside 0%% to 100%%; check the number", s)
	}
	return Share(amount / 100), nil
}

// ParseDuration reads a time: 14 h, 45 min. It refuses what is beyond some 290 years.
func ParseDuration(s string) (time.Duration, error) {
	seconds, err := parse[float64](s, &durations)
	if err != nil {
		return 0, err
	}
	if math.Abs(seconds) >= math.MaxInt64/1e9 {
		return 0, fmt.Errorf("%q is too long a time to reckon with; check the number", s)
	}
	return time.Duration(math.Round(seconds * float64(time.Second))), nil
}

// parse reads a number and a unit of m, and returns the amount in the SI unit.
func parse[T ~float64](s string, m *measure) (T, error) {
	amount, name, err := m.split(s)
	if err != nil {
		return 0, err
	}
	u, _ := m.find(name)
	amount = u.si(amount)
	if math.IsInf(amount, 0) {
		return 0, fmt.Errorf("%q is larger than can be reckoned with; check the number", s)
	}
	return T(amount), nil
}

// split reads a number and a unit of m, and returns the usual spelling of the unit.
func (m *measure) split(s string) (amount float64, name string, err error) {
	amount, rest, err := leadingNumber(s, m.example("12"))
	if err != nil {
		return 0, "", err
	}
	if rest == "" {
		return 0, "", fmt.Errorf("%q has no unit; write the %s such as %s", s, m.noun, m.example(strings.TrimSpace(s)))
	}
	u, ok := m.find(rest)
	if !ok {
		return 0, "", m.unknown(s, rest)
	}
	return amount, u.names[0], nil
}

// leadingNumber splits a text into the number it begins with and the rest. The example
// shows how the whole is written.
func leadingNumber(s, example string) (amount float64, rest string, err error) {
	text := strings.TrimSpace(strings.Replace(s, "\u2212", "-", 1))
	digits := number.FindString(text)
	if digits == "" {
		return 0, "", fmt.Errorf("%q does not begin with a number; write it such as %s", s, example)
	}
	rest = strings.TrimSpace(text[len(digits):])
	if strings.HasPrefix(rest, ",") || strings.HasPrefix(rest, ".") {
		return 0, "", fmt.Errorf("%q: write the number without commas and with a point before its decimals", s)
	}
	amount, err = strconv.ParseFloat(digits, 64)
	if err != nil {
		return 0, "", fmt.Errorf("%q is larger than can be reckoned with; check the number", s)
	}
	return amount, rest, nil
}

// unknown says what is wrong with a unit that is not one of m's.
func (m *measure) unknown(s, name string) error {
	all := strings.Join(m.offered(), ", ")
	if o, ok := m.other(name); ok {
		return fmt.Errorf("%q is no %s (%s is a unit of %s); the units are %s", s, m.noun, name, o.noun, all)
	}
	if near, ok := Nearest(name, m.spellings()); ok {
		return fmt.Errorf("%q: there is no unit of %s %q; did you mean %s", s, m.noun, name, near)
	}
	return fmt.Errorf("%q: there is no unit of %s %q; the units are %s", s, m.noun, name, all)
}

// example shows the number with the units it could have.
func (m *measure) example(digits string) string {
	names := m.offered()
	if len(names) > 2 {
		names = names[:2]
	}
	for i, name := range names {
		names[i] = digits + " " + name
	}
	return strings.Join(names, " or ")
}
