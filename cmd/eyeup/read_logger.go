package main

import (
	"fmt"
	"os"

	"eyeup/internal/reckon"
	"eyeup/quantity"
)

// readLoggerCommand checks the file of a logger.
type readLoggerCommand struct {
	File string `arg:"" help:"The file of the logger: a heading like \"time,temperature (F),humidity (%)\", then a line for each reading."`
}

// Run checks the file.
func (c readLoggerCommand) Run(d *door) error {
	file, err := os.Open(c.File)
	if err != nil {
		return fmt.Errorf("%w; name a logger's file that exists", err)
	}
	defer file.Close() //nolint:errcheck // it was only read
	a, err := reckon.ReadLogger(c.File, file)
	if err != nil {
		return err
	}
	return d.answer(a, quantity.Metric)
}
