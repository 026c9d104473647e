package culture

import (
	"fmt"
	"strconv"
	"strings"

	"eyeup/quantity"
)

// Unit is the unit of a figure as it is shown.
type Unit string

// The units of figures.
const (
	Celsius    Unit = "°C"
	DegreeDays Unit = "°C·d"
	Days       Unit = "d"
	Weeks      Unit = "weeks"
	Hours      Unit = "h"
	Minutes    Unit = "min"
	Share      Unit = "share"
	Times      Unit = "times"
	Each       Unit = "each"
	Light      Unit = "mol/m²/d"
	Area       Unit = "m²"
	PerArea    Unit = "/m²"
	Depth      Unit = "cm"
	Kelvin     Unit = "K" // a difference of temperatures
	Litres     Unit = "L"
)

// limits are the plausible range of figures by unit.
var limits = map[Unit][2]float64{
	Celsius: {-40, 60}, DegreeDays: {1, 5000}, Days: {-60, 400}, Weeks: {0, 60}, Hours: {0, 48},
	Minutes: {0, 240}, Share: {0, 1}, Times: {0.01, 20}, Each: {0, 1000}, Light: {0.1, 60},
	Area: {0.0001, 10}, PerArea: {0.1, 1000}, Depth: {0, 60},
	Kelvin: {0, 20}, Litres: {0, 1000},
}

// check returns an error for a value outside the unit's plausible range.
func (u Unit) check(v float64) error {
	l, known := limits[u]
	if !known {
		return fmt.Errorf("%q is not a unit of any figure", string(u))
	}
	if !(v >= l[0] && v <= l[1]) {
		return fmt.Errorf("%g %s lies outside %g to %g %s; check the number and its unit", v, u, l[0], l[1], u)
	}
	return nil
}

// parse reads a number with its unit, such as "9 °C", "48F", "40 days", "6 in". The unit may
// be missing only for a share, a count or a multiple.
func (u Unit) parse(text string) (float64, error) {
	v, err := u.read(text)
	if err != nil {
		return 0, err
	}
	return v, u.check(v)
}

func (u Unit) read(text string) (float64, error) {
	switch u {
	case Celsius:
		t, err := quantity.ParseTemperature(text)
		return t.Celsius(), err
	case Area:
		a, err := quantity.ParseArea(text)
		return float64(a), err
	case Depth:
		l, err := quantity.ParseLength(text)
		return float64(l / quantity.Centimetre), err
	case Light:
		d, err := quantity.ParseDailyLight(text)
		return float64(d), err
	}
	return u.readPlain(strings.TrimSpace(text))
}

// spellings are ways to type units that package quantity does not know, with their size in the
// figure's unit.
var spellings = map[Unit]map[string]float64{
	DegreeDays: {"°C·d": 1, "C·d": 1, "C.d": 1, "Cd": 1, "°F·d": 5. / 9, "F·d": 5. / 9, "F.d": 5. / 9, "Fd": 5. / 9},
	Days:       {"d": 1, "day": 1, "days": 1}, Weeks: {"weeks": 1, "week": 1, "w": 1},
	Hours: {"h": 1, "hour": 1, "hours": 1}, Minutes: {"min": 1, "minute": 1, "minutes": 1},
	Share: {"": 1, "share": 1, "%": 0.01}, Times: {"": 1, "times": 1}, Each: {"": 1, "each": 1},
	PerArea: {"/m²": 1, "/m2": 1, "/ft²": 1 / float64(quantity.SquareFoot), "/ft2": 1 / float64(quantity.SquareFoot)},
}

func (u Unit) readPlain(text string) (float64, error) {
	end := strings.IndexFunc(text, func(r rune) bool { return !strings.ContainsRune("+-0123456789.", r) })
	if end < 0 {
		end = len(text)
	}
	v, err := strconv.ParseFloat(text[:end], 64)
	if err != nil {
		return 0, fmt.Errorf("%q is not a number with its unit; write it like %q", text, "12 "+string(u))
	}
	typed := strings.TrimSpace(text[end:])
	size, known := spellings[u][typed]
	switch {
	case known:
		return v * size, nil
	case typed == "":
		return 0, fmt.Errorf("%g has no unit; write %g %s", v, v, u)
	}
	return 0, fmt.Errorf("%q is not a unit of this figure, which is in %s; write it like %q", typed, u, "12 "+string(u))
}
