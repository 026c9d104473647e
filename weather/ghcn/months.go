package ghcn

import (
	"fmt"
	"io"
	"time"

	"eyeup/civil"
	"eyeup/weather"
	"eyeup/weather/reading"
)

// Columns of a .dly line (readme, section III), counted from 0.
const (
	firstValue = 21
	width      = 8 // of a day: five of value, then the flags of measurement, quality and source
	lineLength = firstValue + 31*width
	shortest   = lineLength - 3 // where an editor took away the blanks at the end
)

const missing = -9999

// ReadMonths reads a .dly file.
func ReadMonths(r io.Reader) ([]*weather.Record, error) {
	m := months{drafts: reading.NewDrafts()}
	lines := reading.NewLines(r)
	for {
		line, ok := lines.Next()
		if !ok {
			break
		}
		if err := m.line(lines.Number(), line); err != nil {
			return nil, err
		}
	}
	if err := lines.Err(); err != nil {
		return nil, err
	}
	return m.drafts.Records()
}

type months struct {
	drafts *reading.Drafts
	draft  *reading.Draft // of the station of the last line
}

// line reads one month of one element.
func (m *months) line(number int, line []byte) error {
	if len(line) == 0 {
		return nil
	}
	if len(line) < firstValue || !RecognisesMonths(line) {
		return &reading.Fault{Line: number,
			What: fmt.Sprintf("%s is not the start of a month in a .dly file: station, year, month, element", reading.Shown(line[:min(len(line), firstValue)])),
			Do:   "give a GHCN-Daily .dly file as the archive keeps it"}
	}
	if len(line) < shortest || len(line) > lineLength {
		return &reading.Fault{Line: number,
			What: fmt.Sprintf("the month has %d characters instead of %d, as when a file is cut short", len(line), lineLength),
			Do:   "fetch the file again"}
	}
	element, wanted := elementOf(line)
	if !wanted {
		return nil
	}
	if m.draft == nil || m.draft.Station.ID != string(line[:11]) {
		var err error
		if m.draft, err = m.drafts.Of(number, string(line[:11])); err != nil {
			return err
		}
	}
	return m.days(number, line, element)
}

// elementOf returns the element of a line; false for those that are skipped.
func elementOf(line []byte) (reading.Element, bool) {
	switch string(line[17:firstValue]) {
	case "TMIN":
		return reading.Low, true
	case "TMAX":
		return reading.High, true
	}
	return 0, false
}

// days reads the days of a line.
func (m *months) days(number int, line []byte, element reading.Element) error {
	year, _ := reading.Whole(line[11:15])
	month, _ := reading.Whole(line[15:17])
	first, err := civil.On(year, time.Month(month), 1)
	if err != nil {
		return &reading.Fault{Line: number, What: fmt.Sprintf("%s is not a year and month", reading.Shown(line[11:17])), Do: "put the line right or fetch the file again"}
	}
	length := daysIn(year, month)
	for i := range 31 {
		field := line[firstValue+i*width:]
		value, ok := reading.Whole(field[:5])
		if !ok {
			return &reading.Fault{Line: number, What: fmt.Sprintf("day %d has %s instead of a number", i+1, reading.Shown(field[:5])), Do: "fetch the file again"}
		}
		if value == missing {
			continue
		}
		if i >= length {
			return &reading.Fault{Line: number, What: fmt.Sprintf("there is a value for day %d of a month that has %d", i+1, length), Do: "fetch the file again"}
		}
		if flag := qualityOf(field); flag != ' ' {
			m.draft.Note(number, flagged(element, flag), "")
			continue
		}
		if err := m.draft.Set(number, first.AddDays(civil.Days(i)), element, float64(value)/10); err != nil {
			return err
		}
	}
	return nil
}

func qualityOf(field []byte) byte {
	if len(field) < 7 {
		return ' '
	}
	return field[6]
}

func daysIn(year, month int) int {
	switch month {
	case 4, 6, 9, 11:
		return 30
	case 2:
		if year%4 == 0 && (year%100 != 0 || year%400 == 0) {
			return 29
		}
		return 28
	}
	return 31
}

// checks are the archive's quality flags (readme, section III).
var checks = map[byte]string{
	'D': "duplicate check",
	'G': "gap check",
	'I': "internal consistency check",
	'K': "streak or frequent-value check",
	'L': "check on length of multiday period",
	'M': "megaconsistency check",
	'N': "naught check",
	'O': "climatological outlier check",
	'R': "lagged range check",
	'S': "spatial consistency check",
	'T': "temporal consistency check",
	'W': "too warm for snow",
	'X': "bounds check",
	'Z': "official investigation",
}

// flagged describes a value with a quality flag and what was done.
func flagged(e reading.Element, flag byte) string {
	what := "low"
	if e == reading.High {
		what = "high"
	}
	check, known := checks[flag]
	if !known {
		check = "a check the archive's readme does not list"
	}
	return fmt.Sprintf("a %s that the archive flags %c, %s: taken as missing", what, flag, check)
}
