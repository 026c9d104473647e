package main

import (
	"fmt"

	"eyeup/civil"
	"eyeup/internal/reckon"
	"eyeup/quantity"
)

// hoursCommand asks for the hours of one day of a record.
type hoursCommand struct {
	weatherFlags
	Date string `required:"" placeholder:"DATE" help:"A day of the record, such as 2009-01-16."`
}

// Run reads the question and answers it.
func (c hoursCommand) Run(d *door) error {
	date, err := civil.Parse(c.Date)
	if err != nil {
		return fmt.Errorf("--date: %w", err)
	}
	weather, file, err := c.open()
	if err != nil {
		return err
	}
	defer file.Close()
	a, err := reckon.Hours(reckon.HoursQuestion{WeatherFile: weather, Date: date})
	if err != nil {
		return err
	}
	return d.answer(a, quantity.Metric)
}
