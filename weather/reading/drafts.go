package reading

import (
	"fmt"
	"math"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/weather"
)

// mostDays and mostStations limit the memory that a file can use, to some 100 MB.
const (
	mostDays     = 2_000_000 // room made, of which half is used at least
	mostStations = 1000
)

// Drafts are the records of one file, station by station in the order of the file.
type Drafts struct {
	order []*Draft
	byID  map[string]*Draft
	days  int // over all stations, gaps counted
}

// NewDrafts returns empty drafts.
func NewDrafts() *Drafts { return &Drafts{byID: map[string]*Draft{}} }

// Of returns the draft of a station, and creates it at this line if it is new, with its id
// only.
func (s *Drafts) Of(line int, id string) (*Draft, error) {
	if d, ok := s.byID[id]; ok {
		return d, nil
	}
	if len(s.order) == mostStations {
		return nil, &Fault{line, fmt.Sprintf("the file has more than %d stations", mostStations), "split it into files with fewer stations"}
	}
	nan := math.NaN()
	d := &Draft{
		Station: weather.Station{ID: id, Latitude: nan, Longitude: nan, Elevation: quantity.Length(nan)},
		all:     s, notes: map[string]int{}, unlike: map[place]bool{},
	}
	s.order, s.byID[id] = append(s.order, d), d
	return d, nil
}

// Last returns the latest new station, or nil if there is none.
func (s *Drafts) Last() *Draft {
	if len(s.order) == 0 {
		return nil
	}
	return s.order[len(s.order)-1]
}

// Note reports a finding about every station of the file.
func (s *Drafts) Note(line int, what string) {
	for _, d := range s.order {
		d.Note(line, what, "")
	}
}

// Temperatures calls see with every low and high drafted so far, as it was set.
func (s *Drafts) Temperatures(see func(civil.Date, float64)) {
	for _, d := range s.order {
		for i, day := range d.days {
			for _, t := range [...]quantity.Temperature{day.Low, day.High} {
				if t.IsKnown() {
					see(d.from.AddDays(civil.Days(i)), t.Celsius())
				}
			}
		}
	}
}

// Convert changes every low and high drafted so far, for files that tell their unit late.
func (s *Drafts) Convert(toCelsius func(float64) float64) {
	for _, d := range s.order {
		for i := range d.days {
			day := &d.days[i]
			day.Low = quantity.Celsius(toCelsius(day.Low.Celsius()))
			day.High = quantity.Celsius(toCelsius(day.High.Celsius()))
		}
	}
}

// Records checks the drafts and returns them as records. Stations without any day are left
// out; none left is an error.
func (s *Drafts) Records() ([]*weather.Record, error) {
	var all []*weather.Record
	for _, d := range s.order {
		if !d.first.IsZero() {
			all = append(all, d.record())
		}
	}
	if len(all) == 0 {
		return nil, &Fault{0, "the file has no day of weather", "check that the download was complete"}
	}
	return all, nil
}

// reach returns the index of date among the days, and makes room for it.
func (d *Draft) reach(line int, date civil.Date) (int, error) {
	i := int(date.Sub(d.from))
	if d.first.IsZero() || i < 0 || i >= len(d.days) {
		var err error
		if i, err = d.makeRoom(line, date); err != nil {
			return 0, err
		}
	}
	if d.first.IsZero() || date.Before(d.first) {
		d.first = date
	}
	if d.last.IsZero() || date.After(d.last) {
		d.last = date
	}
	return i, nil
}

// makeRoom extends the days to include date, doubling their length, so that the cost is
// proportional to the file whichever way its dates run.
func (d *Draft) makeRoom(line int, date civil.Date) (int, error) {
	if y := date.Year(); y < FirstYear || y > LastYear {
		return 0, &Fault{line, fmt.Sprintf("the day %s is outside the years %d to %d", date, FirstYear, LastYear), "correct the date"}
	}
	if len(d.days) == 0 {
		d.from = date
	}
	const least = 64
	before, after := int(d.from.Sub(date)), int(date.Sub(d.from))+1-len(d.days)
	switch {
	case before > 0:
		before, after = max(before, len(d.days), least), 0
	default:
		before, after = 0, max(after, len(d.days), least)
	}
	d.all.days += before + after
	if d.all.days > mostDays {
		return 0, &Fault{line, fmt.Sprintf("up to here the file spans more than %d days over its stations", mostDays/2), "split it into files with fewer stations, and check the dates"}
	}
	size := before + len(d.days) + after
	days, lines := make([]weather.Day, size), make([]int32, size)
	copy(days[before:], d.days)
	copy(lines[before:], d.lines)
	blank(days[:before])
	blank(days[before+len(d.days):])
	d.days, d.lines, d.from = days, lines, d.from.AddDays(-civil.Days(before))
	return int(date.Sub(d.from)), nil
}

// blank makes days of which nothing is known.
func blank(days []weather.Day) {
	nothing := weather.Unmeasured()
	for i := range days {
		days[i] = nothing
	}
}
