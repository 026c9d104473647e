package logger

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"eyeup/civil"
	"eyeup/place"
	"eyeup/weather/reading"
)

// Bounds of what a place for plants can have been, °C.
const coldest, warmest = -45.0, 60.0

// Record is what a logger wrote down.
type Record struct {
	Series   place.Series
	Readings int      // taken
	Missing  int      // lines without a temperature
	Passed   []string // columns that nothing is read from
}

// Read reads a logger's file. What it refuses it refuses with a *reading.Fault.
func Read(r io.Reader) (*Record, error) {
	var t file
	lines := reading.NewLines(r)
	for {
		line, ok := lines.Next()
		if !ok {
			break
		}
		if trimmed := bytes.TrimSpace(line); len(trimmed) == 0 || trimmed[0] == '#' {
			continue
		}
		if t.columns == nil {
			t.heading(line)
			continue
		}
		if err := t.line(lines.Number(), line); err != nil {
			return nil, err
		}
	}
	if err := lines.Err(); err != nil {
		return nil, err
	}
	switch {
	case t.columns == nil:
		return nil, &reading.Fault{What: "no line names a time and a temperature", Do: `begin the file with a heading like "time,temperature (C),humidity (%)"`}
	case t.record.Readings == 0:
		return nil, &reading.Fault{What: "there is no reading under the heading", Do: "look whether the logger was read out to its end"}
	}
	t.record.Series = t.hours.series()
	return &t.record, nil
}

// file is a logger's file while it is read.
type file struct {
	columns   []column
	separator byte
	fields    [][]byte
	hours     hours
	record    Record
}

// heading takes a line as the heading if it is one; what stands before it is passed over.
func (t *file) heading(line []byte) {
	all, separator, found := columnsOf(line)
	if !found {
		return
	}
	t.columns, t.separator = all, separator
	for _, c := range all {
		if c.holds == nothing && c.name != "" {
			t.record.Passed = append(t.record.Passed, reading.Plain([]byte(c.name)))
		}
	}
}

// one is one reading.
type one struct {
	date      civil.Date
	minute    int // of the day
	dated     bool
	celsius   float64
	warm      bool
	humidity  float64 // a share
	humidKept bool
}

// line takes one reading.
func (t *file) line(number int, line []byte) error {
	var err error
	fault := func(what, do string) error { return &reading.Fault{Line: number, What: what, Do: do} }
	if t.fields, err = reading.Fields(t.fields, line, t.separator); err != nil {
		return fault(err.Error(), "put the line right")
	}
	if len(t.fields) != len(t.columns) {
		return fault(fmt.Sprintf("%d fields where the heading has %d", len(t.fields), len(t.columns)), "put the line right, or read the logger out again if it was cut short")
	}
	var o one
	for i, c := range t.columns {
		if err := t.field(c, t.fields[i], &o); err != nil {
			return fault(fmt.Sprintf("column %s: %s", reading.Shown([]byte(c.name)), err), t.cure(c))
		}
	}
	if !o.dated {
		return fault("the line has no date", "write the time as year-month-day hour:minute, like 2026-11-03 14:10")
	}
	if !o.warm {
		t.record.Missing++
		return nil
	}
	if !t.hours.add(o) {
		return fault(fmt.Sprintf("%s %02d:%02d is earlier than the line before", o.date, o.minute/60, o.minute%60), "put the readings in the order of time, one place to a file")
	}
	t.record.Readings++
	return nil
}

// cure says what to do about a field that can't be read.
func (t *file) cure(c column) string {
	switch c.holds {
	case warmth:
		return `say the unit in the heading, like "temperature (F)", and put the value right or leave it empty`
	case damp:
		return "give percent, 0 to 100, or leave it empty"
	}
	return "write the time as year-month-day hour:minute, like 2026-11-03 14:10"
}

// field reads one field into o.
func (t *file) field(c column, b []byte, o *one) (err error) {
	if c.holds == nothing || c.holds != when && c.holds != day && isMissing(b) {
		return nil
	}
	switch c.holds {
	case when, day:
		return o.setTime(string(b))
	case warmth:
		o.celsius, err = t.temperature(c, b)
		o.warm = err == nil
	case damp:
		percent, ok := t.number(bytes.TrimSuffix(b, []byte("%")))
		if !ok || percent < 0 || percent > 100.5 {
			return fmt.Errorf("%s is no humidity", reading.Shown(b))
		}
		o.humidity, o.humidKept = min(percent/100, 1), true
	}
	return err
}

func isMissing(b []byte) bool { return reading.Missing(b) || bytes.EqualFold(b, []byte("na")) }

func (t *file) number(b []byte) (float64, bool) {
	b = bytes.TrimSpace(b)
	if t.separator != ',' {
		b = bytes.ReplaceAll(b, []byte(","), []byte("."))
	}
	return reading.Number(b)
}

// temperature reads a number with its unit, which the heading or the value itself must say.
func (t *file) temperature(c column, b []byte) (float64, error) {
	number, unit := b, c.unit
	if end := bytes.LastIndexAny(b, "0123456789"); end >= 0 && end < len(b)-1 {
		number = b[:end+1]
		if unit = unitOf(string(b[end+1:])); unit == "" {
			return 0, fmt.Errorf("%s has a unit not known here", reading.Shown(b))
		}
	}
	v, ok := t.number(number)
	switch {
	case !ok:
		return 0, fmt.Errorf("%s is not a number", reading.Shown(b))
	case unit == "":
		return 0, fmt.Errorf("neither the heading nor %s says whether it is °C or °F", reading.Shown(b))
	}
	v = celsius(v, unit)
	if v < coldest || v > warmest {
		return 0, fmt.Errorf("%s is %.4g °C, which no place for plants is", reading.Shown(b), v)
	}
	return v, nil
}

// setTime reads a date, a time of day, or both with a blank or a T between.
func (o *one) setTime(text string) error {
	for _, part := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == 'T' }) {
		if strings.Contains(part, ":") {
			var hour, minute int
			rest := ""
			if n, _ := fmt.Sscanf(part, "%d:%d%s", &hour, &minute, &rest); n < 2 || hour < 0 || hour > 23 || minute < 0 || minute > 59 {
				return fmt.Errorf("%s is no time of the day", reading.Shown([]byte(text)))
			}
			o.minute = 60*hour + minute
			continue
		}
		date, err := reading.Date([]byte(part))
		if err != nil {
			return err
		}
		o.date, o.dated = date, true
	}
	return nil
}
