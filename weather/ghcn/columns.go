package ghcn

import (
	"fmt"
	"strings"

	"eyeup/weather/reading"
)

// columns are the positions of a table's fields; none if a field is missing.
type columns struct {
	station, name, date            int
	latitude, longitude, elevation int
	values, flags                  [2]int // of reading.Low and reading.High
	attributes                     [2]int // where the flags stand together, parted by commas
	count                          int
	isNamed                        bool    // has a station's name, as only the archive's tables do
	isDashed                       bool    // is of the form that comes in several units
	units                          [2]unit // as written into the heading
}

const none = -1

// columnsOf reads the heading of a table.
func columnsOf(line []byte) (columns, error) {
	two := [2]int{none, none}
	c := columns{station: none, name: none, date: none, latitude: none, longitude: none, elevation: none, values: two, flags: two, attributes: two}
	fields, err := reading.Fields(nil, line, ',')
	if err != nil {
		return c, err
	}
	c.count = len(fields)
	element := none // the temperature that a following flag is of
	for i, field := range fields {
		name := strings.ToUpper(string(field))
		if at := c.plain(name); at != nil {
			*at, element = i, none
			continue
		}
		switch name {
		case "STATION_NAME", "NAME":
			c.name, c.isNamed, c.isDashed = i, true, name == "NAME"
		case "QUALITY FLAG":
			if element != none {
				c.flags[element] = i
			}
		case "MEASUREMENT FLAG", "SOURCE FLAG", "TIME OF OBSERVATION":
		default:
			if element, err = c.temperature(i, name); err != nil {
				return c, err
			}
		}
	}
	return c, nil
}

// plain returns where to store the position of a column that its name alone identifies.
func (c *columns) plain(name string) *int {
	switch name {
	case "STATION":
		return &c.station
	case "DATE":
		return &c.date
	case "LATITUDE":
		return &c.latitude
	case "LONGITUDE":
		return &c.longitude
	case "ELEVATION":
		return &c.elevation
	case "TMIN_ATTRIBUTES":
		return &c.attributes[reading.Low]
	case "TMAX_ATTRIBUTES":
		return &c.attributes[reading.High]
	}
	return nil
}

// temperature registers a temperature column, with its unit if the name includes one, and
// returns which it is.
func (c *columns) temperature(at int, name string) (int, error) {
	name, text, told := strings.Cut(name, "(")
	element := none
	switch strings.TrimSpace(name) {
	case "TMIN":
		element = int(reading.Low)
	case "TMAX":
		element = int(reading.High)
	default:
		return none, nil
	}
	c.values[element] = at
	if !told {
		return element, nil
	}
	for _, u := range []unit{celsius, fahrenheit, tenths} {
		if strings.Trim(text, " )") == u.written {
			c.units[element] = u
			return element, nil
		}
	}
	return none, fmt.Errorf("the unit of %s is unknown; write C, F or 0.1 C in brackets", strings.TrimSpace(name))
}

// lacking returns the required columns that are missing.
func (c columns) lacking() []string {
	var names []string
	for _, need := range []struct {
		at   int
		name string
	}{{c.station, "STATION"}, {c.date, "DATE"}, {c.values[reading.High], "TMAX"}, {c.values[reading.Low], "TMIN"}} {
		if need.at == none {
			names = append(names, need.name)
		}
	}
	return names
}
