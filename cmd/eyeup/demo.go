package main

import (
	"eyeup/civil"
	"eyeup/internal/desk"
)

// demoCommand serves the invented garden.
type demoCommand struct{ pagesFlags }

// Run serves the invented garden; what is written there ends with the program.
func (c demoCommand) Run(d *door) error {
	g, err := desk.OpenDemo(d.today)
	if err != nil {
		return err
	}
	ledger, err := desk.NewLoose(g, civil.MustOn(d.today.Year(), d.today.Month(), 1))
	if err != nil {
		return err
	}
	return c.serve(d, desk.NewDesk(g, ledger), true)
}
