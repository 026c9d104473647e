package main

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"eyeup/internal/reckon"
	"eyeup/quantity"
)

// airCommand asks what air of a temperature and humidity is like.
type airCommand struct {
	Temp      string `required:"" placeholder:"TEMPERATURE" help:"Of the air, such as 25C or 77F."`
	RH        string `name:"rh" placeholder:"PERCENT" help:"Relative humidity in per cent, such as 60."`
	Wet       string `placeholder:"TEMPERATURE" help:"What a ventilated wet-bulb thermometer shows, in place of --rh."`
	Pressure  string `placeholder:"PRESSURE" help:"Of the air outside, such as 101.3 kPa."`
	Elevation string `placeholder:"LENGTH" help:"Above the sea, in place of --pressure; sea level if neither is given."`
}

// Run reads the question and answers it.
func (c airCommand) Run(d *door) error {
	q := reckon.AirQuestion{
		Humidity: quantity.Share(math.NaN()), WetBulb: quantity.Unknown(), Pressure: quantity.Pressure(math.NaN()),
	}
	if c.Pressure != "" && c.Elevation != "" {
		return errors.New("--pressure and --elevation both say how thick the air is; give one of the two")
	}
	var err error
	if q.Temperature, err = quantity.ParseTemperature(c.Temp); err != nil {
		return fmt.Errorf("--temp: %w", err)
	}
	if c.RH != "" {
		if q.Humidity, err = quantity.ParseShare(strings.TrimSuffix(c.RH, "%") + "%"); err != nil {
			return fmt.Errorf("--rh: %w", err)
		}
	}
	if c.Wet != "" {
		if q.WetBulb, err = quantity.ParseTemperature(c.Wet); err != nil {
			return fmt.Errorf("--wet: %w", err)
		}
	}
	if c.Pressure != "" {
		if q.Pressure, err = quantity.ParsePressure(c.Pressure); err != nil {
			return fmt.Errorf("--pressure: %w", err)
		}
	}
	if c.Elevation != "" {
		if q.Elevation, err = quantity.ParseLength(c.Elevation); err != nil {
			return fmt.Errorf("--elevation: %w", err)
		}
	}
	a, err := reckon.Air(q)
	if err != nil {
		return err
	}
	return d.answer(a, quantity.Metric)
}
