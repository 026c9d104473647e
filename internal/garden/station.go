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

// WeatherFile is a weather file and which of its stations is meant.
type WeatherFile struct {
	Name     string    // as the grower typed it, for messages
	File     io.Reader // its content
	Station  string    // empty where the file has one
	Latitude *float64  // degrees north; nil: the file's own
}

// Open reads the station's record and where it lies. The latitude is NaN where neither
// the grower nor the file gives it.
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

// UsualLatitude stands in, and is said to, where nobody gives the station's: midway
// between equator and pole.
const UsualLatitude = 45

// StationAnswer names a station and the days it measured.
type StationAnswer struct {
	ID   string     `json:"id"`
	Name string     `json:"name,omitempty"`
	From civil.Date `json:"from" jsonschema:"description=first day of the record"`
	To   civil.Date `json:"to" jsonschema:"description=last day of the record"`
}

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

// DayOfYear writes a day as a grower says it, and no day as a dash.
func DayOfYear(m civil.MonthDay) string {
	if m.IsZero() {
		return "–"
	}
	return fmt.Sprintf("%d %s", m.Day, m.Month.String()[:3])
}
