package reckon

import (
	"fmt"
	"io"
	"math"

	"eyeup/civil"
	"eyeup/internal/garden"
	"eyeup/internal/report"
	"eyeup/quantity"
	"eyeup/weather"
)

// HoursQuestion asks for the hours of one day of a record.
type HoursQuestion struct {
	garden.WeatherFile
	Date civil.Date
}

// HoursAnswer is a day's air hour by hour, rebuilt from lows and highs.
type HoursAnswer struct {
	Station      garden.StationAnswer `json:"station"`
	Date         civil.Date           `json:"date"`
	Latitude     float64              `json:"latitude_deg"`
	Low          float64              `json:"low_c"`
	High         float64              `json:"high_c"`
	Temperatures []float64            `json:"temperatures_c" jsonschema:"minItems=24,maxItems=24,description=of each hour at its middle by the sun's clock: the first is half past midnight and the sun stands highest at 12"`
	Beyond       bool                 `json:"beyond_the_day" jsonschema:"description=an hour lies more than 0.3 K outside the day's own low and high; mostly an evening on the way to a colder morning"`
	Notes        []string             `json:"notes"`
}

const hoursNote = "Rebuilt by the curve of Parton and Logan (1981). Against two measured typical years its mean error is 1.3 to 1.6 K an hour, more on cloudy days."

// Hours answers an HoursQuestion. It refuses a day outside the record or without a low and
// a high.
func Hours(q HoursQuestion) (*HoursAnswer, error) {
	record, site, err := q.Open()
	if err != nil {
		return nil, err
	}
	if !record.Span().Holds(q.Date) {
		return nil, fmt.Errorf("%s: the record runs from %s to %s and has no %s; ask for a day within", q.Name, record.Span().From, record.Span().To, q.Date)
	}
	day := record.On(q.Date)
	if !day.HasExtremes() {
		return nil, fmt.Errorf("%s: the record has no low and high that agree on %s; ask for another day", q.Name, q.Date)
	}
	a := &HoursAnswer{
		Station: garden.StationOf(record), Date: q.Date, Latitude: site.Latitude,
		Low: *report.Rounded(day.Low.Celsius(), 2), High: *report.Rounded(day.High.Celsius(), 2), Notes: []string{hoursNote},
	}
	if math.IsNaN(site.Latitude) {
		a.Latitude, site.Latitude = garden.UsualLatitude, garden.UsualLatitude
		a.Notes = append(a.Notes, fmt.Sprintf("The file does not say where the station lies; %d degrees north is assumed. Give the true latitude with --lat.", garden.UsualLatitude))
	}
	before := a.neighbour(record, q.Date.AddDays(-1), day)
	after := a.neighbour(record, q.Date.AddDays(1), day)
	for _, t := range weather.DayHours(before, day, after, site.Latitude, q.Date) {
		a.Temperatures = append(a.Temperatures, *report.Rounded(t, 3))
		if t < day.Low.Celsius()-0.3 || t > day.High.Celsius()+0.3 {
			a.Beyond = true
		}
	}
	return a, nil
}

// neighbour returns the day before or after the one asked for. If its low and high are not known, it
// returns the day itself and adds a note.
func (a *HoursAnswer) neighbour(r *weather.Record, d civil.Date, day weather.Day) weather.Day {
	if beside := r.On(d); beside.HasExtremes() {
		return beside
	}
	a.Notes = append(a.Notes, fmt.Sprintf("The record has no low and high for %s; the day itself is used instead.", d))
	return day
}

// Print writes the answer for the grower.
func (a *HoursAnswer) Print(w io.Writer, units quantity.System) {
	p := report.NewPage(w)
	p.Wrap("", fmt.Sprintf("The air on %s at %s", a.Date, a.Station))
	p.Line(fmt.Sprintf("Low %s, high %s. Hours by the sun's clock: it stands highest at 12.",
		units.FineTemperature(quantity.Celsius(a.Low)), units.FineTemperature(quantity.Celsius(a.High))))
	p.Line("")
	show := func(hour int) string {
		return fmt.Sprintf("%02d to %02d  %9s", hour, hour+1, units.FineTemperature(quantity.Celsius(a.Temperatures[hour])))
	}
	for hour := range 8 {
		p.Line(fmt.Sprintf("  %s     %s     %s", show(hour), show(hour+8), show(hour+16)))
	}
	p.Line("")
	if a.Beyond {
		p.Wrap("", "Some hours lie outside the day's own low and high: the air was on its way to or from a neighbour's.")
	}
	for _, note := range a.Notes {
		p.Wrap("", note)
	}
}
