package main

import (
	"errors"

	"eyeup/internal/desk"
)

// demoCommand serves the invented garden.
type demoCommand struct{ pagesFlags }

// Run serves the invented garden. What is written there is gone when the program ends.
func (c demoCommand) Run(d *door) error {
	open, err := desk.DemoDesk(d.today, d.now)
	if err != nil {
		return err
	}
	return errors.Join(c.serve(d, open.Desk, true), open.Close())
}
