package tmy3

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"strings"
	"time"

	"eyeup/quantity"
	"eyeup/weather"
	"eyeup/weather/reading"
)

// The columns read, by their names in the file.
const (
	dateColumn = "Date (MM/DD/YYYY)"
	timeColumn = "Time (HH:MM)"
	airColumn  = "Dry-bulb (C)"
	dewColumn  = "Dew-point (C)"
	sunColumn  = "GHI (W/m^2)"
)

// missing and all below it says that a value was not measured.
const missing = -9000.0

// Recognises reports whether a file that begins with head looks like a TMY3 file.
func Recognises(head []byte) bool {
	_, second, _ := bytes.Cut(head, []byte("\n"))
	if second == nil {
		_, second, _ = bytes.Cut(head, []byte("\r"))
	}
	return bytes.HasPrefix(second, []byte(dateColumn+","))
}

// Read reads the days of a file; it gives one record. See ReadHours.
func Read(r io.Reader) ([]*weather.Record, error) {
	y, err := ReadHours(r)
	if err != nil {
		return nil, err
	}
	return []*weather.Record{y.Record()}, nil
}

// ReadHours reads the hours of a file. What it refuses it refuses with a *reading.Fault:
// above all a file that is not a whole year.
func ReadHours(r io.Reader) (*reading.Year, error) {
	lines := reading.NewLines(r)
	f := file{}
	if err := f.heading(lines); err != nil {
		return nil, err
	}
	for {
		line, ok := lines.Next()
		if !ok {
			break
		}
		if len(bytes.TrimSpace(line)) == 0 {
			continue
		}
		if err := f.line(lines.Number(), line); err != nil {
			return nil, err
		}
	}
	if err := lines.Err(); err != nil {
		return nil, err
	}
	return f.hours.Year(lines.Number())
}

type file struct {
	hours  *reading.Hourly
	at     [5]int // date, time, air, dew point, sun
	count  int
	fields [][]byte
}

// heading reads the two lines before the hours.
func (f *file) heading(lines *reading.Lines) error {
	first, _ := lines.Next()
	fields, err := reading.Fields(nil, first, ',')
	if lines.Err() != nil {
		return lines.Err()
	}
	if err != nil || len(fields) < 7 {
		return &reading.Fault{Line: 1, What: fmt.Sprintf("%s does not tell of a station in 7 fields", reading.Shown(first)), Do: "give a TMY3 file as it was published"}
	}
	if err := f.station(fields); err != nil {
		return err
	}
	second, _ := lines.Next()
	if lines.Err() != nil {
		return lines.Err()
	}
	names, err := reading.Fields(nil, second, ',')
	if err != nil {
		return &reading.Fault{Line: 2, What: err.Error(), Do: "fetch the file again"}
	}
	f.count = len(names)
	for i, want := range []string{dateColumn, timeColumn, airColumn, dewColumn, sunColumn} {
		f.at[i] = -1
		for j, name := range names {
			if strings.EqualFold(string(name), want) {
				f.at[i] = j
			}
		}
		if f.at[i] < 0 {
			return &reading.Fault{Line: 2, What: "the column " + want + " is missing", Do: "give a TMY3 file as it was published"}
		}
	}
	return nil
}

// station reads the first line: number, name, state, time zone, latitude, longitude, elevation.
func (f *file) station(fields [][]byte) error {
	var numbers [4]float64
	for i := range numbers {
		v, ok := reading.Number(fields[3+i])
		if !ok {
			return &reading.Fault{Line: 1, What: fmt.Sprintf("%s is not a number", reading.Shown(fields[3+i])), Do: "put time zone, latitude, longitude and elevation right"}
		}
		numbers[i] = v
	}
	var err error
	f.hours, err = reading.NewHourly(weather.Station{
		ID: reading.Plain(fields[0]), Name: reading.Plain(fields[1]),
		Latitude: numbers[1], Longitude: numbers[2], Elevation: quantity.Length(numbers[3]),
	}, numbers[0])
	return err
}

// line reads one hour.
func (f *file) line(number int, line []byte) error {
	var err error
	if f.fields, err = reading.Fields(f.fields, line, ','); err != nil || len(f.fields) != f.count {
		return &reading.Fault{Line: number, What: fmt.Sprintf("%d fields where the heading has %d", len(f.fields), f.count), Do: "fetch the file again, whole"}
	}
	date, clock := f.fields[f.at[0]], f.fields[f.at[1]]
	when, ok := stampOf(date, clock)
	if !ok {
		return &reading.Fault{Line: number, What: fmt.Sprintf("%s %s is not a day and full hour", reading.Shown(date), reading.Shown(clock)), Do: "put it right, like 01/31/1988 and 24:00"}
	}
	var values [3]float64
	for i := range values {
		field := f.fields[f.at[2+i]]
		v, ok := reading.Number(field)
		if !ok && len(field) > 0 {
			return &reading.Fault{Line: number, What: fmt.Sprintf("%s is not a number", reading.Shown(field)), Do: "put the line right or fetch the file again"}
		}
		if !ok || v <= missing {
			v = math.NaN()
		}
		values[i] = v
	}
	return f.hours.Add(number, when[2], time.Month(when[0]), when[1], when[3], values[0], values[1], values[2])
}

// stampOf reads month, day, year and hour.
func stampOf(date, clock []byte) (when [4]int, ok bool) {
	if len(date) != 10 || date[2] != '/' || date[5] != '/' || len(clock) != 5 || string(clock[2:]) != ":00" {
		return when, false
	}
	for i, part := range [][]byte{date[:2], date[3:5], date[6:], clock[:2]} {
		if when[i], ok = reading.Whole(part); !ok {
			return when, false
		}
	}
	return when, true
}
