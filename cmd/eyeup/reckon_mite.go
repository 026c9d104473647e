package main

import (
	"fmt"

	"eyeup/internal/desk"
	"eyeup/quantity"
)

// miteCommand asks how fast mites or thrips go from egg to adult.
type miteCommand struct {
	Temp string `required:"" placeholder:"TEMPERATURE" help:"Steady, such as 30C."`
	Pest string `enum:"mites,thrips" default:"mites" help:"mites or thrips."`
	Why  bool   `help:"Say where the figures come from."`
}

// Run reads the question and answers it.
func (c miteCommand) Run(d *door) error {
	q := desk.MiteQuestion{Pest: c.Pest, Why: c.Why}
	var err error
	if q.Warm, err = quantity.ParseTemperature(c.Temp); err != nil {
		return fmt.Errorf("--temp: %w", err)
	}
	a, err := desk.Mite(q)
	if err != nil {
		return err
	}
	return d.answer(a, quantity.Metric)
}
