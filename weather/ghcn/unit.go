package ghcn

import (
	"math"
	"slices"
	"time"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/weather"
	"eyeup/weather/reading"
)

// unit is a unit that a table's temperatures may have.
type unit struct {
	name        string
	written     string // in a heading
	toCelsius   func(float64) float64
	coldest     float64 // of air anywhere, in the unit
	warmest     float64
	wholeAlways bool // never written with a fraction
}

var (
	celsius    = unit{"°C", "C", func(x float64) float64 { return x }, reading.Coldest, reading.Warmest, false}
	fahrenheit = unit{"°F", "F", func(x float64) float64 { return quantity.Fahrenheit(x).Celsius() }, reading.Coldest*9/5 + 32, reading.Warmest*9/5 + 32, false}
	tenths     = unit{"tenths of °C", "0.1 C", func(x float64) float64 { return x / 10 }, reading.Coldest * 10, reading.Warmest * 10, true}
)

// strays is the share of temperatures that may be outside a unit's range, as errors.
const strays = 0.01

// noSummer is a temperature, in °C, that the warmest hundredth of a year's lows and highs
// exceeds wherever there are gardens. The hottest places don't reach it if their °C are read
// as °F (48 °F is 9 °C), or their °F as tenths of °C (118 tenths are 11.8 °C).
const noSummer = 12.0

// evidence is what the temperatures of a table show about their unit.
type evidence struct {
	values    []float64
	fractions bool
	months    map[time.Month]bool
}

// records returns the records once the unit is known.
func (t *table) records() ([]*weather.Record, error) {
	if told := t.units[0]; told.name != "" || t.units[1].name != "" {
		if told.name != t.units[1].name {
			return nil, &reading.Fault{Line: 1, What: "TMAX and TMIN have different units, or only one has", Do: "write the same unit after both"}
		}
		t.drafts.Convert(told.toCelsius)
		return t.drafts.Records()
	}
	e := evidence{months: map[time.Month]bool{}}
	t.drafts.Temperatures(func(date civil.Date, value float64) {
		e.values = append(e.values, value)
		e.fractions = e.fractions || value != math.Trunc(value)
		e.months[date.Month()] = true
	})
	if !t.isDashed {
		if !e.allows(celsius) {
			return nil, e.refuse("more than one temperature in a hundred can't be in °C")
		}
		return t.drafts.Records()
	}
	if len(e.values) == 0 {
		return t.drafts.Records()
	}
	u, err := e.unit()
	if err != nil {
		return nil, err
	}
	t.drafts.Convert(u.toCelsius)
	t.drafts.Note(1, "the file does not say its unit; the temperatures can only be in "+u.name)
	return t.drafts.Records()
}

// allows reports whether the temperatures can be in u.
func (e evidence) allows(u unit) bool {
	out := 0
	for _, v := range e.values {
		if v < u.coldest || v > u.warmest {
			out++
		}
	}
	return float64(out) <= strays*float64(len(e.values)) && !(u.wholeAlways && e.fractions)
}

// unit returns the only possible unit; several are an error. A unit in which a whole year
// would have no summer is impossible.
func (e evidence) unit() (unit, error) {
	slices.Sort(e.values)
	whole := len(e.months) == 12
	var possible []unit
	for _, u := range []unit{celsius, fahrenheit, tenths} {
		if e.allows(u) && !(whole && u.toCelsius(e.values[len(e.values)*99/100]) < noSummer) {
			possible = append(possible, u)
		}
	}
	if len(possible) == 1 {
		return possible[0], nil
	}
	return unit{}, e.refuse("nothing in the file says whether its temperatures are in °C, °F or tenths of °C, and they do not show it")
}

func (e evidence) refuse(what string) error {
	return &reading.Fault{
		Line: 1, What: what,
		Do: `write the unit into the heading after both TMAX and TMIN, without quotation marks: TMAX (C), TMAX (F) or TMAX (0.1 C)`,
	}
}
