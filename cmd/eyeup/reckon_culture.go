package main

import (
	"eyeup/internal/reckon"
	"eyeup/quantity"
)

// cultureCommand asks what is known of how a kind is raised.
type cultureCommand struct {
	Kind   string `arg:"" help:"The kind, such as dahlia or 'sweet potato'."`
	Garden string `placeholder:"FOLDER" help:"Show the figures of this garden instead of the usual ones."`
	Why    bool   `help:"Say where each figure comes from."`
}

// Run answers it.
func (c cultureCommand) Run(d *door) error {
	a, err := reckon.Culture(kindQuestion(c.Kind, c.Garden), c.Why)
	if err != nil {
		return err
	}
	return d.answer(a, quantity.Metric)
}
