package main

import (
	"fmt"
	"os"

	"eyeup/internal/reckon"
	"eyeup/quantity"
)

// readLoggerCommand looks through what a logger recorded.
type readLoggerCommand struct {
	File string `arg:"" help:"What a logger recorded: a heading like \"time,temperature (F),humidity (%)\", then a line for each reading."`
}

// Run looks through the file.
func (c readLoggerCommand) Run(d *door) error {
	file, err := os.Open(c.File)
	if err != nil {
		return fmt.Errorf("%w; name a logger's file that is there", err)
	}
	defer file.Close() //nolint:errcheck // it was only read
	a, err := reckon.ReadLogger(c.File, file)
	if err != nil {
		return err
	}
	return d.answer(a, quantity.Metric)
}
