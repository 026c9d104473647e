package main

import "eyeup/internal/reckon"

// lightCommand asks for the light of a place month by month.
type lightCommand struct {
	Garden string `placeholder:"FOLDER" help:"The folder of the garden. If not given, the invented garden."`
	Place  string `required:"" placeholder:"NAME" help:"The place in the garden."`
}

// Run reads the garden and answers.
func (c lightCommand) Run(d *door) error {
	g, _, err := openGarden(d, c.Garden)
	if err != nil {
		return err
	}
	a, err := reckon.Light(g, c.Place)
	if err != nil {
		return err
	}
	return d.answer(a, g.System)
}
