package reading

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"time"

	"eyeup/civil"
	"eyeup/weather"
)

// mostSunHour is above the highest mean sun of an hour anywhere, in W/m²: the solar constant
// is 1361 W/m² (Kopp & Lean 2011) and varies by 3.4 % with the distance; clouds near the sun
// may add to it for minutes.
const mostSunHour = 1500.0

// Hourly is a Year while it is read, hour by hour.
type Hourly struct {
	year  Year
	dates []stamp // of each day
	hour  int     // the last hour read of the last day
	notes Draft
}

// stamp is the calendar day of a line, as given in the file.
type stamp struct {
	line, year int
	civil.MonthDay
}

// NewHourly starts a year at a station whose clock is zone hours ahead of Greenwich.
func NewHourly(station weather.Station, zone float64) (*Hourly, error) {
	if !(zone >= -12 && zone <= 14) {
		return nil, &Fault{1, fmt.Sprintf("no clock on Earth is %g hours ahead of Greenwich", zone), "correct the heading or fetch the file again"}
	}
	return &Hourly{year: Year{Station: station, Zone: zone}, hour: 24, notes: Draft{notes: map[string]int{}}}, nil
}

// Add adds the values of hour 1 to 24 of a day: air and dew point in °C and the mean sun in
// W/m²; NaN is missing. Hours must be consecutive.
func (h *Hourly) Add(line, year int, month time.Month, day, hour int, air, dew, sunshine float64) error {
	when := stamp{line, year, civil.MonthDay{Month: month, Day: day}}
	if h.hour == 24 {
		if len(h.dates) == 366 {
			return &Fault{line, "the file has more than a year of hours", "give a file of one year"}
		}
		h.dates, h.hour = append(h.dates, when), 0
	}
	today := h.dates[len(h.dates)-1]
	if hour != h.hour+1 || today.MonthDay != when.MonthDay || today.year != when.year {
		return &Fault{line, fmt.Sprintf("the stamp %04d-%02d-%02d hour %d does not follow hour %d of %04d-%s", year, int(month), day, hour, h.hour, today.year, today.MonthDay),
			"the hours of each day must run from 1 to 24; fetch the file again"}
	}
	h.hour = hour
	y := &h.year
	y.Air = append(y.Air, h.within(line, "air temperature", air, Coldest, Warmest))
	y.DewPoint = append(y.DewPoint, h.within(line, "dew point", dew, Coldest, Warmest))
	y.Sun = append(y.Sun, h.within(line, "sun", sunshine, 0, mostSunHour))
	return nil
}

// within returns v; an impossible value is reported and becomes NaN.
func (h *Hourly) within(line int, what string, v, least, most float64) float64 {
	if v < least || v > most {
		h.notes.Note(line, fmt.Sprintf("an hour's %s outside %g to %g: taken as missing", what, least, most), fmt.Sprintf("%g", v))
		return math.NaN()
	}
	return v
}

// Year returns the year when it is complete. lines is the number of lines in the file.
func (h *Hourly) Year(lines int) (*Year, error) {
	if len(h.dates) < 365 || h.hour != 24 {
		return nil, &Fault{lines, fmt.Sprintf("the file stops after %d hours; a year has %d", len(h.year.Air), 365*24), "fetch the file again, whole"}
	}
	y := &h.year
	from, broken := h.calendar()
	if broken > 0 {
		if err := h.isPlain(); err != nil {
			return nil, err
		}
		from = civil.MustOn(PlainYear, time.January, 1)
		y.Drawn = map[int]int{}
		for _, d := range h.dates {
			y.Drawn[int(d.Month)] = d.year
		}
		h.notes.Note(h.dates[0].line, fmt.Sprintf("a typical year, put together from months of others and laid on the days of %d: it says nothing of how years differ", PlainYear), "")
	}
	y.Span = civil.Span{From: from, To: from.AddDays(civil.Days(len(h.dates) - 1))}
	slices.SortStableFunc(h.notes.findings, func(a, b weather.Finding) int { return cmp.Compare(a.Line, b.Line) })
	y.Findings = h.notes.findings
	return y, nil
}

// calendar returns the first day, and how many days do not follow the one before in the
// calendar of their years.
func (h *Hourly) calendar() (from civil.Date, broken int) {
	var before civil.Date
	for i, d := range h.dates {
		date, err := civil.On(d.year, d.Month, d.Day)
		if err != nil || d.year < FirstYear || d.year > LastYear || i > 0 && date != before.AddDays(1) {
			broken++
		}
		if i == 0 {
			from = date
		}
		before = date
	}
	return from, broken
}

// isPlain checks that the days run from 1 January to 31 December without a 29 February.
func (h *Hourly) isPlain() error {
	first := civil.MustOn(PlainYear, time.January, 1)
	for i, d := range h.dates {
		if due := first.AddDays(civil.Days(i)).MonthDay(); due != d.MonthDay {
			return &Fault{d.line, fmt.Sprintf("the day is %s instead of %s", d.MonthDay, due), "fetch the file again, whole"}
		}
	}
	return nil
}
