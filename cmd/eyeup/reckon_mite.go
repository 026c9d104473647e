package main

import (
	"errors"
	"fmt"

	"eyeup/internal/reckon"
	"eyeup/quantity"
)

// miteCommand asks how fast mites or thrips go from egg to adult, at a temperature or in
// the places of a garden.
type miteCommand struct {
	Temp   string `placeholder:"TEMPERATURE" help:"A steady temperature, such as 30C."`
	Garden string `placeholder:"FOLDER" help:"Instead of --temp: the folder of a garden. Counts the generations in each of its places."`
	Level  string `placeholder:"TEMPERATURE" help:"With --garden: thermostat level of heated places, such as 50F. If not given, off."`
	Pest   string `enum:"mites,thrips" default:"mites" help:"The pest: mites or thrips."`
	Why    bool   `help:"Say where each figure comes from."`
}

// Run reads the question and answers it.
func (c miteCommand) Run(d *door) error {
	switch {
	case (c.Temp == "") == (c.Garden == ""):
		return errors.New("say where: give --temp 30C for one temperature, or --garden FOLDER for the places of a garden")
	case c.Temp != "" && c.Level != "":
		return errors.New("--level goes with --garden, for its heated places; leave it out with --temp")
	case c.Garden != "":
		return c.inGarden(d)
	}
	q := reckon.MiteQuestion{Pest: c.Pest, Why: c.Why}
	var err error
	if q.Warm, err = quantity.ParseTemperature(c.Temp); err != nil {
		return fmt.Errorf("--temp: %w", err)
	}
	a, err := reckon.Mite(q)
	if err != nil {
		return err
	}
	return d.answer(a, quantity.Metric)
}

func (c miteCommand) inGarden(d *door) error {
	level := quantity.Unknown()
	if c.Level != "" {
		var err error
		if level, err = quantity.ParseTemperature(c.Level); err != nil {
			return fmt.Errorf("--level: %w", err)
		}
	}
	g, _, err := openGarden(d, c.Garden)
	if err != nil {
		return err
	}
	a, err := reckon.MitePlaces(g, c.Pest, level)
	if err != nil {
		return err
	}
	return d.answer(a, g.System)
}
