package table

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"eyeup/quantity"
	"eyeup/weather/reading"
)

// What a column holds, beside the elements of a day.
const (
	nothing reading.Element = -1 - iota
	date
	station
)

// names are the words by which a column is known.
var names = map[string]reading.Element{
	"date": date, "day": date, "station": station,
	"low": reading.Low, "min": reading.Low, "minimum": reading.Low, "tmin": reading.Low,
	"high": reading.High, "max": reading.High, "maximum": reading.High, "tmax": reading.High,
	"sun": reading.Sun, "radiation": reading.Sun, "dew point": reading.DewPoint, "soil": reading.Soil,
}

// unit turns a number as it is written into that of the element: °C, or J/m².
type unit func(float64) float64

var temperatures = map[string]unit{
	"c":     func(x float64) float64 { return x },
	"f":     func(x float64) float64 { return quantity.Fahrenheit(x).Celsius() },
	"0.1 c": func(x float64) float64 { return x / 10 },
}

var suns = map[string]unit{
	"mj/m2":  func(x float64) float64 { return x * float64(quantity.MegajoulePerSquareMetre) },
	"kwh/m2": func(x float64) float64 { return x * float64(quantity.KilowattHour) },
	"wh/m2":  func(x float64) float64 { return x * float64(quantity.KilowattHour) / 1000 },
	"j/cm2":  func(x float64) float64 { return x * 1e4 },
}

// column is one column of the table.
type column struct {
	name  string
	holds reading.Element
	unit  unit // nil where the heading does not say
}

// Recognises reports whether a file that begins with head has a heading with a date and
// a temperature.
func Recognises(head []byte) bool {
	rest := reading.WithoutMark(head)
	for len(rest) > 0 {
		end := bytes.IndexAny(rest, "\r\n")
		if end < 0 {
			end = len(rest)
		}
		line := rest[:end]
		rest = bytes.TrimLeft(rest[end:], "\r\n")
		if isAside(line) {
			continue
		}
		all, _, err := columnsOf(line)
		return err == nil && holds(all, date) && (holds(all, reading.Low) || holds(all, reading.High))
	}
	return false
}

// isAside reports whether a line is blank or a remark.
func isAside(line []byte) bool {
	line = bytes.TrimSpace(line)
	return len(line) == 0 || line[0] == '#'
}

func holds(all []column, e reading.Element) bool {
	return slices.ContainsFunc(all, func(c column) bool { return c.holds == e })
}

// columnsOf reads the heading and finds what parts its fields.
func columnsOf(line []byte) ([]column, byte, error) {
	separator := byte(',')
	for _, s := range []byte{'\t', ';'} {
		if bytes.IndexByte(line, s) >= 0 {
			separator = s
			break
		}
	}
	fields, err := reading.Fields(nil, line, separator)
	if err != nil {
		return nil, 0, err
	}
	var all []column
	for _, f := range fields {
		c, err := columnOf(string(f))
		if err != nil {
			return nil, 0, err
		}
		if c.holds != nothing && holds(all, c.holds) {
			return nil, 0, fmt.Errorf("the heading has two columns for the same thing; the second is %q", f)
		}
		all = append(all, c)
	}
	return all, separator, nil
}

// columnOf reads one name of the heading, with its unit if it has one.
func columnOf(text string) (column, error) {
	name, unitText := text, ""
	if open := strings.IndexAny(text, "(["); open >= 0 {
		name, unitText = text[:open], strings.Trim(text[open:], "()[] ")
	} else if stem, tail, ok := cutLast(text, "_"); ok && len(tail) == 1 {
		name, unitText = stem, tail
	}
	c := column{name: text, holds: nothing}
	key := strings.ReplaceAll(strings.ToLower(strings.TrimSpace(name)), "_", " ")
	if e, known := names[key]; known {
		c.holds = e
	}
	if c.holds < 0 || unitText == "" {
		return c, nil
	}
	if c.unit = unitOf(c.holds, unitText); c.unit == nil {
		return c, fmt.Errorf("the column %q has a unit not known here; %s", text, unitsFor(c.holds))
	}
	return c, nil
}

func cutLast(s, sep string) (before, after string, found bool) {
	i := strings.LastIndex(s, sep)
	if i < 0 {
		return s, "", false
	}
	return s[:i], s[i+len(sep):], true
}

// unitOf returns the unit that a text names for an element, or nil.
func unitOf(e reading.Element, text string) unit {
	text = strings.ToLower(text)
	text = strings.NewReplacer("°", "", "²", "2", "^", "", "deg", "", "celsius", "c", "fahrenheit", "f").Replace(text)
	text = strings.TrimSpace(text)
	if e == reading.Sun {
		return suns[text]
	}
	return temperatures[text]
}

// unitsFor says how the unit of an element may be written.
func unitsFor(e reading.Element) string {
	if e == reading.Sun {
		return `write MJ/m2, kWh/m2, Wh/m2 or J/cm2 in brackets after the name, like "sun (MJ/m2)"`
	}
	return `write C, F or 0.1 C in brackets after the name, like "low (C)"`
}
