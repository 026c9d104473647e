package main

import (
	"fmt"

	"eyeup/internal/reckon"
	"eyeup/quantity"
)

// keepCommand asks what a store does to what lies in it.
type keepCommand struct {
	Kind   string  `default:"dahlia" placeholder:"KIND" help:"The kind that is stored (${default})."`
	Form   string  `default:"clump" placeholder:"FORM" help:"clump or division (${default})."`
	Temp   string  `required:"" placeholder:"TEMPERATURE" help:"Temperature of the store, such as 42F."`
	RH     string  `name:"rh" required:"" placeholder:"PERCENT" help:"Relative humidity in the store in per cent, such as 52."`
	Pack   string  `required:"" placeholder:"PACKING" help:"How it is packed: bare, vermiculite, peat, sawdust, shavings, sand or paper."`
	Days   float64 `default:"150" help:"How many days it is stored (${default})."`
	Garden string  `placeholder:"FOLDER" help:"Use the figures of this garden."`
	Why    bool    `help:"Say where each figure comes from."`
}

// Run reads the question and answers it.
func (c keepCommand) Run(d *door) error {
	q := reckon.KeepQuestion{KindQuestion: kindQuestion(c.Kind, c.Garden), Form: c.Form, Pack: c.Pack, Days: c.Days, Why: c.Why}
	var err error
	if q.Temperature, err = quantity.ParseTemperature(c.Temp); err != nil {
		return fmt.Errorf("--temp: %w", err)
	}
	if q.Humidity, err = percent("--rh", c.RH); err != nil {
		return err
	}
	a, err := reckon.Keep(q)
	if err != nil {
		return err
	}
	return d.answer(a, quantity.US)
}
