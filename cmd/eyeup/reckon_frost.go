package main

import (
	"fmt"
	"os"

	"eyeup/civil"
	"eyeup/internal/garden"
	"eyeup/internal/reckon"
	"eyeup/quantity"
)

// weatherFlags name a weather file and a station in it.
type weatherFlags struct {
	Weather string   `required:"" placeholder:"FILE" help:"A weather file: GHCN-Daily, Met Éireann, EPW, TMY3 or a plain table."`
	Station string   `placeholder:"ID" help:"The station, if the file has several."`
	Lat     *float64 `placeholder:"DEGREES" help:"Latitude of the station, if the file does not say it. South is negative."`
}

// open opens the weather file; the caller closes it.
func (f weatherFlags) open() (garden.WeatherFile, *os.File, error) {
	file, err := os.Open(f.Weather)
	if err != nil {
		return garden.WeatherFile{}, nil, fmt.Errorf("--weather: %w; name a file that exists", err)
	}
	return garden.WeatherFile{Name: f.Weather, File: file, Station: f.Station, Latitude: f.Lat}, file, nil
}

// frostCommand asks when it freezes.
type frostCommand struct {
	weatherFlags
	From      int    `placeholder:"YEAR" help:"First year of the record to use."`
	To        int    `placeholder:"YEAR" help:"Last year of the record to use."`
	Threshold string `default:"0C" placeholder:"TEMPERATURE" help:"A low at or below this is a freeze."`
	After     string `placeholder:"MM-DD" help:"Give the risk of one more freeze after this day."`
}

// Run reads the question and answers it.
func (c frostCommand) Run(d *door) error {
	q := reckon.FrostQuestion{From: c.From, To: c.To}
	var err error
	if q.Threshold, err = quantity.ParseTemperature(c.Threshold); err != nil {
		return fmt.Errorf("--threshold: %w", err)
	}
	if c.After != "" {
		if q.After, err = civil.ParseMonthDay(c.After); err != nil {
			return fmt.Errorf("--after: %w", err)
		}
	}
	weather, file, err := c.open()
	if err != nil {
		return err
	}
	defer file.Close()
	q.WeatherFile = weather
	a, err := reckon.Frost(q)
	if err != nil {
		return err
	}
	return d.answer(a, quantity.Metric)
}
