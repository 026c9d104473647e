package main

import (
	"fmt"

	"eyeup/internal/reckon"
	"eyeup/quantity"
)

// packCommand asks what it takes to put stock away for the winter.
type packCommand struct {
	Count  int     `required:"" placeholder:"N" help:"How many pieces are stored."`
	Form   string  `default:"clump" placeholder:"FORM" help:"What is stored: clump, division or corm (${default})."`
	Bare   bool    `help:"Store them without packing."`
	Bag    string  `default:"4 ft3" placeholder:"VOLUME" help:"Volume printed on the bag of packing (${default})."`
	Swells float64 `default:"1" placeholder:"TIMES" help:"How many times its volume a compressed bag makes."`
	Why    bool    `help:"Say where each figure comes from."`
}

// Run reads the question and answers it.
func (c packCommand) Run(d *door) error {
	volume, err := quantity.ParseVolume(c.Bag)
	if err != nil {
		return fmt.Errorf("--bag: %w", err)
	}
	if c.Swells < 1 {
		return fmt.Errorf("--swells: a bag can't make %g times its volume; give 1 (loose) or more", c.Swells)
	}
	a, err := reckon.Pack(reckon.PackQuestion{Count: c.Count, Form: c.Form, Bare: c.Bare, Bag: reckon.Bag{Volume: volume, Swells: c.Swells}, Why: c.Why})
	if err != nil {
		return err
	}
	return d.answer(a, quantity.US)
}
