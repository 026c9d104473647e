package table

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"eyeup/civil"
	"eyeup/weather"
	"eyeup/weather/reading"
)

// Read reads a plain table; with a column of stations it gives a record for each. What it
// refuses it refuses with a *reading.Fault.
func Read(r io.Reader) ([]*weather.Record, error) {
	t := table{drafts: reading.NewDrafts()}
	lines := reading.NewLines(r)
	for {
		line, ok := lines.Next()
		if !ok {
			break
		}
		if isAside(line) {
			continue
		}
		var err error
		if t.columns == nil {
			err = t.heading(lines.Number(), line)
		} else {
			err = t.line(lines.Number(), line, lines.Open())
		}
		if err != nil {
			return nil, err
		}
	}
	if err := lines.Err(); err != nil {
		return nil, err
	}
	if passed := t.passedOver(); passed != "" {
		t.drafts.Note(t.headingLine, "columns passed over: "+passed)
	}
	return t.drafts.Records()
}

type table struct {
	columns     []column
	headingLine int
	separator   byte
	drafts      *reading.Drafts
	fields      [][]byte
}

// heading reads the line that names the columns.
func (t *table) heading(number int, line []byte) error {
	var err error
	if t.columns, t.separator, err = columnsOf(line); err != nil {
		return &reading.Fault{Line: number, What: err.Error(), Do: "put the heading right"}
	}
	t.headingLine = number
	for _, need := range []struct {
		holds reading.Element
		name  string
	}{{date, "date"}, {reading.Low, "low"}, {reading.High, "high"}} {
		if !holds(t.columns, need.holds) {
			return &reading.Fault{Line: number, What: fmt.Sprintf("no column is named %s", need.name), Do: `begin the file with a heading like "date,low (C),high (C)"`}
		}
	}
	return nil
}

// passedOver names the columns that nothing is read from.
func (t *table) passedOver() string {
	var all []string
	for _, c := range t.columns {
		if c.holds == nothing {
			all = append(all, reading.Shown([]byte(c.name)))
		}
	}
	if len(all) > 12 {
		all = append(all[:12], "and more")
	}
	return strings.Join(all, ", ")
}

// line reads one day.
func (t *table) line(number int, line []byte, open bool) error {
	var err error
	if t.fields, err = reading.Fields(t.fields, line, t.separator); err != nil {
		return &reading.Fault{Line: number, What: err.Error(), Do: "put the line right"}
	}
	if len(t.fields) != len(t.columns) {
		return &reading.Fault{Line: number, What: fmt.Sprintf("%d fields where the heading has %d", len(t.fields), len(t.columns)), Do: "put the line right, or fetch the file again if it was cut short"}
	}
	id := ""
	var when civil.Date
	for i, c := range t.columns {
		switch c.holds {
		case station:
			id = strings.TrimPrefix(reading.Plain(t.fields[i]), "GHCND:")
		case date:
			if when, err = reading.Date(t.fields[i]); err != nil {
				return &reading.Fault{Line: number, What: err.Error(), Do: "write dates as year-month-day, like 2027-03-14"}
			}
		}
	}
	draft, err := t.drafts.Of(number, id)
	if err != nil {
		return err
	}
	if err := draft.Visit(number, when); err != nil {
		return err
	}
	return t.values(draft, number, when, open)
}

// values takes what was measured on the day of a line.
func (t *table) values(draft *reading.Draft, number int, when civil.Date, open bool) error {
	for i, c := range t.columns {
		if c.holds < 0 || isMissing(t.fields[i]) {
			continue
		}
		if open && i == len(t.columns)-1 {
			draft.Note(number, "the last line has no end, so its last value may be cut short: it is left out", when.String())
			continue
		}
		v, err := c.value(t.fields[i], t.separator)
		if err != nil {
			return &reading.Fault{Line: number, What: fmt.Sprintf("column %s: %s", reading.Shown([]byte(c.name)), err), Do: unitsFor(c.holds)}
		}
		if err := possible(number, c, v, t.fields[i]); err != nil {
			return err
		}
		if err := draft.Set(number, when, c.holds, v); err != nil {
			return err
		}
	}
	return nil
}

// possible refuses a temperature that no station can have measured.
func possible(number int, c column, v float64, field []byte) error {
	if c.holds == reading.Sun || v >= reading.Coldest && v <= reading.Warmest {
		return nil
	}
	return &reading.Fault{Line: number,
		What: fmt.Sprintf("%s in the column %s is %.4g °C, which cannot be: air was never outside %g to %g °C", reading.Shown(field), reading.Shown([]byte(c.name)), v, reading.Coldest, reading.Warmest),
		Do:   "look at the unit in the heading, put the value right, or leave it empty"}
}

func isMissing(field []byte) bool {
	return reading.Missing(field) || bytes.EqualFold(field, []byte("na"))
}

// value reads a number with its unit, which the heading or the value itself must say.
func (c column) value(field []byte, separator byte) (float64, error) {
	number, own := field, ""
	if end := bytes.LastIndexAny(field, "0123456789.,"); end >= 0 && c.holds != reading.Sun {
		number, own = bytes.TrimSpace(field[:end+1]), string(field[end+1:])
	}
	if separator != ',' {
		number = bytes.ReplaceAll(number, []byte(","), []byte("."))
	}
	v, ok := reading.Number(number)
	if !ok {
		return 0, fmt.Errorf("%s is not a number", reading.Shown(field))
	}
	u := c.unit
	if own != "" {
		if u = unitOf(c.holds, own); u == nil {
			return 0, fmt.Errorf("%s has a unit not known here", reading.Shown(field))
		}
	}
	if u == nil {
		return 0, fmt.Errorf("neither the heading nor %s says the unit", reading.Shown(field))
	}
	return u(v), nil
}
