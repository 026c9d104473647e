package reading

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/weather"
)

// Element is a quantity measured each day.
type Element int

// The elements, with the units that Set expects.
const (
	Low      Element = iota // °C
	High                    // °C
	Sun                     // J/m² over the day
	DewPoint                // °C
	Soil                    // °C at 10 cm
)

// FirstYear and LastYear limit the years of a record.
const FirstYear, LastYear = 1700, 2199

// Draft is a record while it is read.
type Draft struct {
	Station weather.Station

	all         *Drafts
	days        []weather.Day // days[0] is the day from; there may be room before first and after last
	lines       []int32       // the last line about each day; 0 for none
	from        civil.Date
	first, last civil.Date // first and last day in the file
	notes       map[string]int
	findings    []weather.Finding
	unlike      map[place]bool
}

// place is one element of one day.
type place struct {
	date    civil.Date
	element Element
}

// Note reports a finding at a line. Findings with the same what are counted together; the
// example is that of the first.
func (d *Draft) Note(line int, what, example string) {
	i, known := d.notes[what]
	if !known {
		i = len(d.findings)
		d.notes[what] = i
		f := weather.Finding{Line: line, What: what}
		if example != "" {
			f.What += " (first: " + example + ")"
		}
		d.findings = append(d.findings, f)
	}
	d.findings[i].Count++
	d.findings[i].Line = min(d.findings[i].Line, line)
}

// Visit registers a line about day date, for formats with one line a day, and reports a
// repeated day.
func (d *Draft) Visit(line int, date civil.Date) error {
	i, err := d.reach(line, date)
	if err != nil {
		return err
	}
	if d.lines[i] != 0 {
		d.Note(line, "a day appears more than once in the file", date.String())
	}
	d.lines[i] = int32(line)
	return nil
}

// Set records a value measured on date, in the unit of the element. A second, different value
// makes the element unknown, and both are reported.
func (d *Draft) Set(line int, date civil.Date, e Element, value float64) error {
	i, err := d.reach(line, date)
	if err != nil {
		return err
	}
	d.lines[i] = int32(line)
	day := &d.days[i]
	before := of(day, e)
	switch {
	case len(d.unlike) > 0 && d.unlike[place{date, e}]:
	case math.IsNaN(before):
		set(day, e, value)
	case before != value:
		set(day, e, math.NaN())
		d.unlike[place{date, e}] = true
		d.Note(line, "two different values for one day: both left out", fmt.Sprintf("%s, %g and %g", date, before, value))
	}
	return nil
}

func of(day *weather.Day, e Element) float64 {
	switch e {
	case Low:
		return day.Low.Celsius()
	case High:
		return day.High.Celsius()
	case Sun:
		return float64(day.Sun)
	case DewPoint:
		return day.DewPoint.Celsius()
	default:
		return day.Soil.Celsius()
	}
}

func set(day *weather.Day, e Element, value float64) {
	t := quantity.Celsius(value)
	switch e {
	case Low:
		day.Low = t
	case High:
		day.High = t
	case Sun:
		day.Sun = quantity.Insolation(value)
	case DewPoint:
		day.DewPoint = t
	default:
		day.Soil = t
	}
}

// Known reports whether a value of element e on date was recorded.
func (d *Draft) Known(date civil.Date, e Element) bool {
	i := int(date.Sub(d.from))
	return i >= 0 && i < len(d.days) && !math.IsNaN(of(&d.days[i], e))
}

// record returns the finished record.
func (d *Draft) record() *weather.Record {
	skip := int(d.first.Sub(d.from))
	keep := int(d.last.Sub(d.first)) + 1
	r := &weather.Record{Station: d.Station, From: d.first, Days: d.days[skip : skip+keep : skip+keep]}
	d.lookOver(r.Days, d.lines[skip:skip+keep])
	slices.SortStableFunc(d.findings, func(a, b weather.Finding) int { return cmp.Compare(a.Line, b.Line) })
	r.Findings = d.findings
	return r
}
