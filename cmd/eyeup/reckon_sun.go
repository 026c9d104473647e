package main

import (
	"fmt"
	"time"

	"eyeup/civil"
	"eyeup/internal/reckon"
	"eyeup/quantity"
)

// sunCommand asks where the sun stands and when it rises and sets.
type sunCommand struct {
	Lat       float64 `required:"" placeholder:"DEGREES" help:"Latitude in degrees north. South is negative."`
	Lon       float64 `required:"" placeholder:"DEGREES" help:"Longitude in degrees east. West is negative."`
	Elevation string  `default:"0 m" placeholder:"LENGTH" help:"Height above sea level, such as 27 m."`
	At        string  `placeholder:"MOMENT" help:"Say where the sun stands at this moment, such as 2027-03-20T12:00:00-04:00."`
	Date      string  `placeholder:"DATE" help:"Say when the sun rises and sets on this day, such as 2027-03-20."`
	Zone      string  `default:"UTC" placeholder:"NAME" help:"Time zone for --date, such as America/New_York."`
}

// Run reads the question and answers it.
func (c sunCommand) Run(d *door) error {
	q := reckon.SunQuestion{Latitude: c.Lat, Longitude: c.Lon}
	var err error
	if q.Elevation, err = quantity.ParseLength(c.Elevation); err != nil {
		return fmt.Errorf("--elevation: %w", err)
	}
	if c.At != "" {
		if q.At, err = time.Parse(time.RFC3339, c.At); err != nil {
			return fmt.Errorf("--at: %q is not a moment; write date, time and offset from UTC, as in 2027-03-20T12:00:00-04:00", c.At)
		}
	}
	if c.Date != "" {
		if q.Date, err = civil.Parse(c.Date); err != nil {
			return fmt.Errorf("--date: %w", err)
		}
	}
	if q.Zone, err = time.LoadLocation(c.Zone); err != nil || c.Zone == "Local" {
		return fmt.Errorf("--zone: there is no time zone %q; write its IANA name, as in Europe/Dublin", c.Zone)
	}
	a, err := reckon.Sun(q)
	if err != nil {
		return err
	}
	return d.answer(a, quantity.Metric)
}
