package ghcn

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"eyeup/civil"
	"eyeup/weather"
	"eyeup/weather/reading"
)

// ReadTable reads a table in CSV.
func ReadTable(r io.Reader) ([]*weather.Record, error) {
	lines := reading.NewLines(r)
	heading, ok := lines.Next()
	if !ok {
		if err := lines.Err(); err != nil {
			return nil, err
		}
		return nil, &reading.Fault{What: "the file is empty", Do: "check that the download was complete"}
	}
	c, err := columnsOf(heading)
	if err != nil {
		return nil, &reading.Fault{Line: 1, What: err.Error(), Do: "correct the heading"}
	}
	if lacks := c.lacking(); len(lacks) > 0 {
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
	date, err := reading.Date(t.fields[t.date])
	if err != nil {
		return &reading.Fault{Line: number, What: err.Error(), Do: "correct the date, as 20270314 or 2027-03-14"}
	}
	if err := t.draft.Visit(number, date); err != nil {
		return err
	}
	if open && max(t.values[0], t.values[1]) == t.count-1 {
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

// unlike reports a line whose fields don't match the heading.
func (t *table) unlike(number int, open bool, err error) error {
	f := &reading.Fault{Line: number, Do: "correct the line or fetch the file again"}
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

// findStation switches to the draft of the line's station.
func (t *table) findStation(number int) error {
	field := t.fields[t.station]
	if t.draft != nil && bytes.Equal(field, t.before) {
		return nil
	}
	t.before = append(t.before[:0], field...)
	id := strings.TrimPrefix(reading.Plain(field), "GHCND:")
	if id == "" {
		return &reading.Fault{Line: number, What: "the line names no station", Do: "put the station's id in the column STATION"}
	}
	var err error
	if t.draft, err = t.drafts.Of(number, id); err != nil {
		return err
	}
	return t.describe(number)
}

// describe reads the station's name and location from the line.
func (t *table) describe(number int) error {
	s := &t.draft.Station
	if t.name != none {
		s.Name = reading.Plain(t.fields[t.name])
	}
	for _, part := range []struct {
		at   int
		what string
		into *float64
	}{{t.latitude, "latitude", &s.Latitude}, {t.longitude, "longitude", &s.Longitude}, {t.elevation, "elevation", (*float64)(&s.Elevation)}} {
		if part.at == none || reading.Missing(t.fields[part.at]) || string(t.fields[part.at]) == "unknown" {
			continue
		}
		value, ok := reading.Number(t.fields[part.at])
		if !ok {
			return &reading.Fault{Line: number, What: fmt.Sprintf("the %s %s is not a number", part.what, reading.Shown(t.fields[part.at])), Do: "correct it or fetch the file again"}
		}
		*part.into = value
	}
	return nil
}

// value reads one element of the line.
func (t *table) value(number int, date civil.Date, e reading.Element) error {
	field := t.fields[t.values[e]]
	if reading.Missing(field) {
		return nil
	}
	value, ok := reading.Number(field)
	if !ok {
		return &reading.Fault{Line: number, What: fmt.Sprintf("%s is not a temperature", reading.Shown(field)), Do: "correct the line or fetch the file again"}
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
	if t.flags[e] != none {
		flag = t.fields[t.flags[e]]
	} else if t.attributes[e] != none {
		// measurement, quality, source
		_, after, _ := bytes.Cut(t.fields[t.attributes[e]], []byte(","))
		flag, _, _ = bytes.Cut(after, []byte(","))
	}
	if len(flag) == 0 {
		return ' '
	}
	return flag[0]
}
