package logger

import (
	"bytes"
	"slices"
	"strings"

	"eyeup/quantity"
	"eyeup/weather/reading"
)

// holds is the content of a column.
type holds int

const (
	nothing holds = iota
	when          // a time, alone or after its date
	day
	warmth
	damp
)

var names = map[string]holds{
	"time": when, "timestamp": when, "datetime": when, "date": day, "day": day,
	"temperature": warmth, "temp": warmth, "humidity": damp, "rh": damp, "relative humidity": damp,
}

// column is one column of the table.
type column struct {
	name  string
	holds holds
	unit  string // "C" or "F" if the heading of a temperature gives it
}

// separators are the field separators, in the order in which they are tried.
var separators = []byte{'\t', ';', ','}

// columnsOf reads a heading and its separator; false if the line is not a heading.
func columnsOf(line []byte) (all []column, separator byte, found bool) {
	at := slices.IndexFunc(separators, func(s byte) bool { return bytes.IndexByte(line, s) >= 0 })
	if at < 0 {
		return nil, 0, false
	}
	fields, err := reading.Fields(nil, line, separators[at])
	if err != nil {
		return nil, 0, false
	}
	for _, f := range fields {
		all = append(all, columnOf(string(f)))
	}
	has := func(h holds) bool { return slices.ContainsFunc(all, func(c column) bool { return c.holds == h }) }
	return all, separators[at], (has(when) || has(day)) && has(warmth)
}

// columnOf reads one name of the heading, with its unit if it has one.
func columnOf(text string) column {
	name, unit := text, ""
	if open := strings.IndexAny(text, "([,"); open >= 0 {
		name, unit = text[:open], strings.Trim(text[open:], "()[], ")
	}
	key := strings.ReplaceAll(strings.ToLower(strings.TrimSpace(name)), "_", " ")
	c := column{name: text, holds: names[key]}
	if key == "date time" || key == "date-time" {
		c.holds = when
	}
	if c.holds == warmth {
		c.unit = unitOf(unit)
	}
	return c
}

// unitOf returns C or F; empty for anything else.
func unitOf(text string) string {
	switch strings.ToLower(strings.NewReplacer("°", "", "º", "", "deg", "").Replace(strings.TrimSpace(text))) {
	case "c", "celsius":
		return "C"
	case "f", "fahrenheit":
		return "F"
	}
	return ""
}

// celsius converts a number in C or F to °C.
func celsius(v float64, unit string) float64 {
	if unit == "F" {
		return quantity.Fahrenheit(v).Celsius()
	}
	return v
}
