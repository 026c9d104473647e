package main

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"eyeup/internal/reckon"
	"eyeup/quantity"
)

// airCommand asks for the properties of air at a temperature and humidity.
type airCommand struct {
	Temp      string `required:"" placeholder:"TEMPERATURE" help:"Temperature of the air, such as 25C or 77F."`
	RH        string `name:"rh" placeholder:"PERCENT" help:"Relative humidity in per cent, such as 60."`
	Wet       string `placeholder:"TEMPERATURE" help:"Reading of a ventilated wet-bulb thermometer, instead of --rh."`
	Pressure  string `placeholder:"PRESSURE" help:"Pressure of the air outside, such as 101.3 kPa."`
	Elevation string `placeholder:"LENGTH" help:"Height above sea level, instead of --pressure. If neither is given, sea level."`
}

// Run reads the question and answers it.
func (c airCommand) Run(d *door) error {
	q := reckon.AirQuestion{
		Humidity: quantity.Share(math.NaN()), WetBulb: quantity.Unknown(), Pressure: quantity.Pressure(math.NaN()),
	}
	if c.Pressure != "" && c.Elevation != "" {
		return errors.New("--pressure and --elevation both give the air pressure; give one of the two")
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
