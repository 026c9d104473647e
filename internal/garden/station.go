package garden

import (
	"fmt"
	"io"
	"math"

	"eyeup/civil"
	"eyeup/internal/exchange"
	"eyeup/sun"
	"eyeup/weather"
)

// WeatherFile is a weather file and the station to read from it.
type WeatherFile struct {
	Name     string    // as the user typed it, for error messages
	File     io.Reader // its content
	Station  string    // the station's id; may be empty if the file has only one
	Latitude *float64  // degrees north; nil: as the file says
}

// Open reads the station's record and its position. The latitude is NaN if neither the grower nor the
// file gives it.
func (f WeatherFile) Open() (*weather.Record, sun.Site, error) {
	records, err := exchange.ReadWeather(f.Name, f.File)
	if err != nil {
		return nil, sun.Site{}, err
	}
	r, err := exchange.Station(records, f.Station)
	if err != nil {
		return nil, sun.Site{}, fmt.Errorf("%s: %w", f.Name, err)
	}
	site := sun.Site{Latitude: r.Station.Latitude, Longitude: r.Station.Longitude, Elevation: r.Station.Elevation}
	if f.Latitude != nil {
		site.Latitude = *f.Latitude
	}
	if !math.IsNaN(site.Latitude) {
		if err := (sun.Site{Latitude: site.Latitude}).Check(); err != nil {
			return nil, sun.Site{}, err
		}
	}
	return r, site, nil
}

// UsualLatitude is assumed, with a note, if the station's latitude is not known. It is midway between
// equator and pole, in degrees north.
const UsualLatitude = 45

// StationAnswer names a station and the first and last day of its record.
type StationAnswer struct {
	ID   string     `json:"id"`
	Name string     `json:"name,omitempty"`
	From civil.Date `json:"from" jsonschema:"description=first day of the record"`
	To   civil.Date `json:"to" jsonschema:"description=last day of the record"`
}

// StationOf returns the name and the days of a record's station.
func StationOf(r *weather.Record) StationAnswer {
	return StationAnswer{ID: r.Station.ID, Name: r.Station.Name, From: r.Span().From, To: r.Span().To}
}

// String names the station for the grower.
func (s StationAnswer) String() string {
	switch {
	case s.Name == "" && s.ID == "":
		return "the station"
	case s.Name == "":
		return s.ID
	case s.ID == "":
		return s.Name
	}
	return fmt.Sprintf("%s (%s)", s.Name, s.ID)
}

// DayOfYear writes a day of the year as day and short month, and the zero day as a dash.
func DayOfYear(m civil.MonthDay) string {
	if m.IsZero() {
		return "–"
	}
	return fmt.Sprintf("%d %s", m.Day, m.Month.String()[:3])
}
