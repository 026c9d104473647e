package main

import (
	"fmt"

	"eyeup/internal/reckon"
	"eyeup/quantity"
)

// mixCommand asks how much mix so many containers take.
type mixCommand struct {
	Container string  `required:"" placeholder:"ID" help:"The container, such as no1, round4 or tray50. A wrong one lists all."`
	Count     int     `required:"" placeholder:"N" help:"How many containers."`
	Form      string  `placeholder:"FORM" help:"What each holds: clump, division, corm, seed or cutting."`
	From      string  `placeholder:"ID" help:"When potting up: the container the plants come from."`
	Holds     string  `placeholder:"VOLUME" help:"What your container holds to the brim, if you measured it."`
	Bag       string  `default:"2 ft3" placeholder:"VOLUME" help:"Volume printed on the bag (${default})."`
	Bale      bool    `help:"The bag is a compressed bale, which swells as most do."`
	Swells    float64 `placeholder:"TIMES" help:"How many times its volume the bale makes, if its label says so."`
	Nitrogen  string  `placeholder:"PERCENT" help:"First number on the label of a soluble feed. Gives how much feed each watering takes."`
	Why       bool    `help:"Say where each figure comes from."`
}

// Run reads the question and answers it.
func (c mixCommand) Run(d *door) error {
	volume, err := quantity.ParseVolume(c.Bag)
	if err != nil {
		return fmt.Errorf("--bag: %w", err)
	}
	q := reckon.MixQuestion{Container: c.Container, From: c.From, Count: c.Count, Form: c.Form, Bag: reckon.Bag{Volume: volume, Swells: c.Swells, Bale: c.Bale}, Why: c.Why}
	if c.Holds != "" {
		if q.Holds, err = quantity.ParseVolume(c.Holds); err != nil {
			return fmt.Errorf("--holds: %w", err)
		}
	}
	if c.Nitrogen != "" {
		if q.Nitrogen, err = percent("--nitrogen", c.Nitrogen); err != nil {
			return err
		}
	}
	a, err := reckon.Mix(q)
	if err != nil {
		return err
	}
	return d.answer(a, quantity.US)
}
