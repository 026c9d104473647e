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

// Plausible temperatures of a place for plants, °C.
const coldest, warmest = -45.0, 60.0

// Record is what was read from a logger's file.
type Record struct {
	Series   place.Series
	Readings int      // readings used
	Missing  int      // lines without a temperature
	Passed   []string // columns that were ignored
}

// Read reads a logger's file. Its errors are *reading.Fault.
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
		return nil, &reading.Fault{What: "no heading names a time and a temperature", Do: `begin the file with a heading like "time,temperature (C),humidity (%)"`}
	case t.record.Readings == 0:
		return nil, &reading.Fault{What: "there are no readings below the heading", Do: "check that the whole log was exported"}
	}
	t.record.Series = t.hours.series()
	return &t.record, nil
}

// file is a logger's file that is being read.
type file struct {
	columns   []column
	separator byte
	fields    [][]byte
	hours     hours
	record    Record
}

// heading uses a line as the heading if it is one; lines before it are ignored.
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

// line reads one reading.
func (t *file) line(number int, line []byte) error {
	var err error
	fault := func(what, do string) error { return &reading.Fault{Line: number, What: what, Do: do} }
	if t.fields, err = reading.Fields(t.fields, line, t.separator); err != nil {
		return fault(err.Error(), "correct the line")
	}
	if len(t.fields) != len(t.columns) {
		return fault(fmt.Sprintf("%d fields where the heading has %d", len(t.fields), len(t.columns)), "correct the line, or export the log again if it was cut short")
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
		return fault(fmt.Sprintf("%s %02d:%02d is earlier than the previous line", o.date, o.minute/60, o.minute%60), "sort the readings by time, with one place in each file")
	}
	t.record.Readings++
	return nil
}

// cure returns what to do about a field that can't be read.
func (t *file) cure(c column) string {
	switch c.holds {
	case warmth:
		return `give the unit in the heading, like "temperature (F)", and correct the value or leave it empty`
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
			return fmt.Errorf("%s is not a humidity", reading.Shown(b))
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

// temperature reads a number with its unit, which the heading or the value itself must give.
func (t *file) temperature(c column, b []byte) (float64, error) {
	number, unit := b, c.unit
	if end := bytes.LastIndexAny(b, "0123456789"); end >= 0 && end < len(b)-1 {
		number = b[:end+1]
		if unit = unitOf(string(b[end+1:])); unit == "" {
			return 0, fmt.Errorf("%s has an unknown unit", reading.Shown(b))
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
		return 0, fmt.Errorf("%s is %.4g °C, which is not plausible in a place for plants", reading.Shown(b), v)
	}
	return v, nil
}

// setTime reads a date, a time of day, or both separated by a space or a T.
func (o *one) setTime(text string) error {
	for _, part := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == 'T' }) {
		if strings.Contains(part, ":") {
			var hour, minute int
			rest := ""
			if n, _ := fmt.Sscanf(part, "%d:%d%s", &hour, &minute, &rest); n < 2 || hour < 0 || hour > 23 || minute < 0 || minute > 59 {
				return fmt.Errorf("%s is not a time of day", reading.Shown([]byte(text)))
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
