package ghcn

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"time"

	"eyeup/civil"
	"eyeup/weather"
	"eyeup/weather/reading"
)

// columns are where the fields of a table stand; -1 where there is none.
type columns struct {
	station, name, date            int
	latitude, longitude, elevation int
	values, flags                  [2]int // of reading.Low and reading.High
	attributes                     [2]int // where the flags stand together, parted by commas
	count                          int
	strokes                        bool // the form whose unit is not told
	isArchive                      bool // has a heading that only the archive uses
}

// columnsOf reads the heading of a table.
func columnsOf(line []byte) (columns, error) {
	c := columns{-1, -1, -1, -1, -1, -1, [2]int{-1, -1}, [2]int{-1, -1}, [2]int{-1, -1}, 0, false, false}
	fields, err := reading.Fields(nil, line, ',')
	if err != nil {
		return c, err
	}
	c.count = len(fields)
	element := -1
	for i, field := range fields {
		switch name := strings.ToUpper(string(field)); name {
		case "STATION":
			c.station = i
		case "STATION_NAME", "NAME":
			c.name, c.strokes, c.isArchive = i, name == "NAME", true
		case "DATE":
			c.date = i
		case "LATITUDE":
			c.latitude = i
		case "LONGITUDE":
			c.longitude = i
		case "ELEVATION":
			c.elevation = i
		case "TMIN", "TMAX":
			element = int(reading.Low)
			if name == "TMAX" {
				element = int(reading.High)
			}
			c.values[element], c.isArchive = i, true
		case "TMIN_ATTRIBUTES":
			c.attributes[reading.Low] = i
		case "TMAX_ATTRIBUTES":
			c.attributes[reading.High] = i
		case "QUALITY FLAG":
			if element >= 0 {
				c.flags[element] = i
			}
		case "MEASUREMENT FLAG", "SOURCE FLAG", "TIME OF OBSERVATION":
		default:
			element = -1
		}
	}
	return c, nil
}

// lacking names the columns that a table can't do without and that are not there.
func (c columns) lacking() []string {
	var names []string
	for _, need := range []struct {
		at   int
		name string
	}{{c.station, "STATION"}, {c.date, "DATE"}, {c.values[reading.High], "TMAX"}, {c.values[reading.Low], "TMIN"}} {
		if need.at < 0 {
			names = append(names, need.name)
		}
	}
	return names
}

// ReadTable reads a table in CSV.
func ReadTable(r io.Reader) ([]*weather.Record, error) {
	lines := reading.NewLines(r)
	heading, ok := lines.Next()
	if !ok {
		if err := lines.Err(); err != nil {
			return nil, err
		}
		return nil, &reading.Fault{What: "the file is empty", Do: "look whether it was fetched to its end"}
	}
	c, err := columnsOf(heading)
	if lacks := c.lacking(); err != nil || len(lacks) > 0 {
		return nil, &reading.Fault{Line: 1,
			What: fmt.Sprintf("the heading %s lacks %s", reading.Shown(heading), strings.Join(lacks, ", ")),
			Do:   "order the daily table again with station, date, TMAX and TMIN"}
	}
	t := table{columns: c, drafts: reading.NewDrafts(), heading: string(heading)}
	for {
		line, ok := lines.Next()
		if !ok {
			break
		}
		if err := t.line(lines.Number(), line, lines.Open()); err != nil {
			return nil, err
		}
	}
	if err := lines.Err(); err != nil {
		return nil, err
	}
	return t.records()
}

type table struct {
	columns
	heading string
	drafts  *reading.Drafts
	draft   *reading.Draft
	before  []byte // the station field of the last line
	fields  [][]byte
}

// line reads one day of one station.
func (t *table) line(number int, line []byte, open bool) error {
	if len(bytes.TrimSpace(line)) == 0 || string(line) == t.heading {
		return nil // a blank line, or the heading again where two tables were joined
	}
	var err error
	t.fields, err = reading.Fields(t.fields, line, ',')
	if err != nil || len(t.fields) != t.count {
		return t.unlike(number, open, err)
	}
	if err := t.findStation(number); err != nil {
		return err
	}
	date, err := dateOf(t.fields[t.date])
	if err != nil {
		return &reading.Fault{Line: number, What: err.Error(), Do: "put the date right, as 20270314 or 2027-03-14"}
	}
	if err := t.draft.Visit(number, date); err != nil {
		return err
	}
	if open && lastOf(t.values) == t.count-1 {
		t.draft.Note(number, "the last line has no end, so its last value may be cut short: the day is left out", date.String())
		return nil
	}
	for e := reading.Low; e <= reading.High; e++ {
		if err := t.value(number, date, e); err != nil {
			return err
		}
	}
	return nil
}

func lastOf(at [2]int) int { return max(at[0], at[1]) }

// unlike refuses a line that does not have the heading's fields.
func (t *table) unlike(number int, open bool, err error) error {
	f := &reading.Fault{Line: number, Do: "put the line right or fetch the file again"}
	switch {
	case err != nil:
		f.What = err.Error()
	case open && len(t.fields) < t.count:
		f.What = fmt.Sprintf("the file stops within a line, after %d of %d fields", len(t.fields), t.count)
		f.Do = "fetch the file again"
	default:
		f.What = fmt.Sprintf("%d fields where the heading has %d", len(t.fields), t.count)
	}
	return f
}

// findStation turns to the draft of the line's station.
func (t *table) findStation(number int) error {
	field := t.fields[t.station]
	if t.draft != nil && bytes.Equal(field, t.before) {
		return nil
	}
	t.before = append(t.before[:0], field...)
	id := strings.TrimPrefix(string(field), "GHCND:")
	if id == "" {
		return &reading.Fault{Line: number, What: "the line names no station", Do: "put the station's identity in the column STATION"}
	}
	var err error
	if t.draft, err = t.drafts.Of(number, id); err != nil {
		return err
	}
	return t.describe(number)
}

// describe takes the station's name and whereabouts from the line.
func (t *table) describe(number int) error {
	s := &t.draft.Station
	if t.name >= 0 {
		s.Name = string(t.fields[t.name])
	}
	for _, part := range []struct {
		at   int
		what string
		into *float64
	}{{t.latitude, "latitude", &s.Latitude}, {t.longitude, "longitude", &s.Longitude}, {t.elevation, "elevation", (*float64)(&s.Elevation)}} {
		if part.at < 0 || reading.Missing(t.fields[part.at]) || string(t.fields[part.at]) == "unknown" {
			continue
		}
		value, ok := reading.Number(t.fields[part.at])
		if !ok {
			return &reading.Fault{Line: number, What: fmt.Sprintf("the %s %s is not a number", part.what, reading.Shown(t.fields[part.at])), Do: "put it right or fetch the file again"}
		}
		*part.into = value
	}
	return nil
}

// value takes one element of the line.
func (t *table) value(number int, date civil.Date, e reading.Element) error {
	field := t.fields[t.values[e]]
	if reading.Missing(field) {
		return nil
	}
	value, ok := reading.Number(field)
	if !ok {
		return &reading.Fault{Line: number, What: fmt.Sprintf("%s is not a temperature", reading.Shown(field)), Do: "put the line right or fetch the file again"}
	}
	if flag := t.flag(e); flag != ' ' {
		t.draft.Note(number, flagged(e, flag), "")
		return nil
	}
	return t.draft.Set(number, date, e, value)
}

// flag returns the quality flag of an element of the line; a blank where there is none.
func (t *table) flag(e reading.Element) byte {
	var flag []byte
	if t.flags[e] >= 0 {
		flag = t.fields[t.flags[e]]
	} else if t.attributes[e] >= 0 {
		// measurement, quality, source
		_, after, _ := bytes.Cut(t.fields[t.attributes[e]], []byte(","))
		flag, _, _ = bytes.Cut(after, []byte(","))
	}
	if len(flag) == 0 {
		return ' '
	}
	return flag[0]
}

// dateOf reads a date with or without strokes.
func dateOf(b []byte) (civil.Date, error) {
	digits := b
	if len(b) == 10 && b[4] == '-' && b[7] == '-' {
		digits = []byte{b[0], b[1], b[2], b[3], b[5], b[6], b[8], b[9]}
	}
	n, ok := reading.Whole(digits)
	if !ok || len(digits) != 8 || n < 0 {
		return civil.Date{}, fmt.Errorf("%s is not a date", reading.Shown(b))
	}
	return civil.On(n/10000, time.Month(n/100%100), n%100)
}
