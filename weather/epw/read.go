package epw

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

// Columns of an hour, counted from 0.
const (
	year, month, day, hour = 0, 1, 2, 3
	dryBulb, dewPoint      = 6, 7
	globalSun              = 13
	leastColumns           = 14
)

// headings are how the eight lines before the hours begin.
var headings = []string{"LOCATION", "DESIGN CONDITIONS", "TYPICAL/EXTREME PERIODS", "GROUND TEMPERATURES",
	"HOLIDAYS/DAYLIGHT SAVINGS", "COMMENTS 1", "COMMENTS 2", "DATA PERIODS"}

// Recognises reports whether a file that begins with head looks like an EPW file.
func Recognises(head []byte) bool {
	return bytes.HasPrefix(bytes.ToUpper(reading.WithoutMark(head)), []byte("LOCATION,"))
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
// above all a file that is not a whole year of single hours.
func ReadHours(r io.Reader) (*reading.Year, error) {
	lines := reading.NewLines(r)
	h, err := heading(lines)
	if err != nil {
		return nil, err
	}
	var fields [][]byte
	count := 0 // of fields in the first hour
	for {
		line, ok := lines.Next()
		if !ok {
			break
		}
		if len(bytes.TrimSpace(line)) == 0 {
			continue
		}
		if fields, err = reading.Fields(fields, line, ','); err != nil || len(fields) < max(count, leastColumns) {
			return nil, &reading.Fault{Line: lines.Number(), What: fmt.Sprintf("an hour with %d fields instead of %d or more", len(fields), max(count, leastColumns)), Do: "fetch the file again, whole"}
		}
		if count == 0 {
			count = len(fields)
		}
		if err := add(h, lines.Number(), fields); err != nil {
			return nil, err
		}
	}
	if err := lines.Err(); err != nil {
		return nil, err
	}
	return h.Year(lines.Number())
}

// heading reads the lines before the hours.
func heading(lines *reading.Lines) (*reading.Hourly, error) {
	var h *reading.Hourly
	for i, name := range headings {
		line, ok := lines.Next()
		if err := lines.Err(); err != nil {
			return nil, err
		}
		fields, err := reading.Fields(nil, line, ',')
		if !ok || err != nil || !strings.EqualFold(string(fields[0]), name) {
			return nil, &reading.Fault{Line: i + 1, What: fmt.Sprintf("the heading %s is due here, not %s", name, reading.Shown(line)), Do: "give an EPW file as it was published"}
		}
		switch i {
		case 0:
			if h, err = location(fields); err != nil {
				return nil, err
			}
		case len(headings) - 1:
			if len(fields) < 3 || string(fields[2]) != "1" {
				return nil, &reading.Fault{Line: i + 1, What: "the file does not have one sample an hour", Do: "give a file of single hours"}
			}
		}
	}
	return h, nil
}

// location reads the first line: place, province, country, source, WMO number, latitude,
// longitude, time zone, elevation.
func location(fields [][]byte) (*reading.Hourly, error) {
	if len(fields) < 10 {
		return nil, &reading.Fault{Line: 1, What: fmt.Sprintf("the heading LOCATION has %d fields instead of 10", len(fields)), Do: "give an EPW file as it was published"}
	}
	var numbers [4]float64
	for i := range numbers {
		v, ok := reading.Number(fields[6+i])
		if !ok {
			return nil, &reading.Fault{Line: 1, What: fmt.Sprintf("%s is not a number, in LOCATION", reading.Shown(fields[6+i])), Do: "put latitude, longitude, time zone and elevation right"}
		}
		numbers[i] = v
	}
	return reading.NewHourly(weather.Station{
		ID: reading.Plain(fields[5]), Name: reading.Plain(fields[1]),
		Latitude: numbers[0], Longitude: numbers[1], Elevation: quantity.Length(numbers[3]),
	}, numbers[2])
}

// add takes one hour.
func add(h *reading.Hourly, line int, fields [][]byte) error {
	var when [4]int
	for i := range when {
		v, ok := reading.Whole(fields[i])
		if !ok {
			return &reading.Fault{Line: line, What: fmt.Sprintf("%s is not a number, in the hour's stamp", reading.Shown(fields[i])), Do: "fetch the file again, whole"}
		}
		when[i] = v
	}
	var values [3]float64
	for i, c := range []struct {
		at      int
		missing float64 // this and all above
	}{{dryBulb, 99.9}, {dewPoint, 99.9}, {globalSun, 9999}} {
		v, ok := reading.Number(fields[c.at])
		if !ok && len(fields[c.at]) > 0 {
			return &reading.Fault{Line: line, What: fmt.Sprintf("%s is not a number", reading.Shown(fields[c.at])), Do: "put the line right or fetch the file again"}
		}
		if !ok || v >= c.missing {
			v = math.NaN()
		}
		values[i] = v
	}
	return h.Add(line, when[year], time.Month(when[month]), when[day], when[hour], values[0], values[1], values[2])
}
