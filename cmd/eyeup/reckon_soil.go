package main

import (
	"fmt"

	"eyeup/internal/reckon"
	"eyeup/quantity"
)

// soilCommand asks when open soil is warm enough.
type soilCommand struct {
	Garden string `placeholder:"FOLDER" help:"The folder of the garden. If not given, the invented garden."`
	Place  string `placeholder:"NAME" help:"The open ground in the garden. If not given, the first."`
	Reach  string `required:"" placeholder:"TEMPERATURE" help:"The soil temperature to reach at a depth of 10 cm (4 in), such as 60F or 15.6C."`
	Why    bool   `help:"Say where each figure comes from."`
}

// Run reads the question and answers it.
func (c soilCommand) Run(d *door) error {
	q := reckon.SoilQuestion{Place: c.Place, Why: c.Why}
	var err error
	if q.Reach, err = quantity.ParseTemperature(c.Reach); err != nil {
		return fmt.Errorf("--reach: %w", err)
	}
	g, _, err := openGarden(d, c.Garden)
	if err != nil {
		return err
	}
	a, err := reckon.Soil(g, q)
	if err != nil {
		return err
	}
	return d.answer(a, g.System)
}
