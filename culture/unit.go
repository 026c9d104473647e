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
)

// limits are the bounds beyond which a figure of a unit cannot be meant.
var limits = map[Unit][2]float64{
	Celsius: {-40, 60}, DegreeDays: {1, 5000}, Days: {-60, 400}, Weeks: {0, 60}, Hours: {0, 48},
	Minutes: {0, 240}, Share: {0, 1}, Times: {0.01, 20}, Each: {0, 1000}, Light: {0.1, 60},
	Area: {0.0001, 10}, PerArea: {0.1, 1000}, Depth: {0, 60},
}

// aliases are other ways in which a unit is typed.
var aliases = map[Unit]string{
	Celsius: "C", DegreeDays: "C.d Cd °Cd °C.d C·d", Days: "days day", Weeks: "w wk week", Hours: "hours hour",
	Minutes: "minutes minute", Light: "mol mol/m2/d mol/m²", Area: "m2", PerArea: "/m2 per-m2", Times: "x",
}

// check reports a value that the unit cannot have.
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

// parse reads a number with its unit, such as "9 °C", "48F", "40 days"; shares may be
// typed in per cent. A bare number is read only where the unit is a count or a share.
func (u Unit) parse(text string) (float64, error) {
	text = strings.TrimSpace(text)
	end := strings.LastIndexAny(text, "0123456789.") + 1
	if i := strings.IndexFunc(text, func(r rune) bool { return !strings.ContainsRune("+-0123456789.", r) }); i >= 0 {
		end = i
	}
	v, err := strconv.ParseFloat(text[:end], 64)
	if err != nil {
		return 0, fmt.Errorf("%q is not a number with its unit; write it like %q", text, "12 "+string(u))
	}
	if v, err = u.convert(v, strings.TrimSpace(text[end:])); err != nil {
		return 0, err
	}
	return v, u.check(v)
}

// convert takes v from the unit typed to u.
func (u Unit) convert(v float64, typed string) (float64, error) {
	bare := u == Share || u == Times || u == Each
	switch {
	case typed == string(u), typed == "" && bare:
		return v, nil
	case typed == "%" && u == Share:
		return v / 100, nil
	case u == Celsius && (typed == "F" || typed == "°F"):
		return quantity.Fahrenheit(v).Celsius(), nil
	}
	for _, a := range strings.Fields(aliases[u]) {
		if typed == a {
			return v, nil
		}
	}
	if typed == "" {
		return 0, fmt.Errorf("%g stands without its unit; write %g %s", v, v, u)
	}
	return 0, fmt.Errorf("%q is not a unit of this figure, which is in %s; write it like %q", typed, u, "12 "+string(u))
}
