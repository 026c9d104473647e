package main

import (
	"io"
	"time"

	"eyeup/civil"
	"eyeup/internal/report"
	"eyeup/quantity"
)

// door is what every command may use of the world outside.
type door struct {
	in    io.Reader
	out   io.Writer
	errs  io.Writer
	now   func() time.Time
	today civil.Date
	json  bool
	units *quantity.System // what the grower asked for; nil leaves it to the garden
}

func newDoor(c commands, in io.Reader, out, errs io.Writer, now func() time.Time) (*door, error) {
	d := &door{in: in, out: out, errs: errs, now: now, json: c.JSON, today: civil.Of(now())}
	if c.Today != "" {
		today, err := civil.Parse(c.Today)
		if err != nil {
			return nil, err
		}
		d.today = today
	}
	switch c.Units {
	case "us":
		d.units = new(quantity.US)
	case "metric":
		d.units = new(quantity.Metric)
	}
	return d, nil
}

// answer prints a for the grower, or as JSON when that was asked for. The garden's own
// units serve unless others were asked for.
func (d *door) answer(a report.Answer, garden quantity.System) error {
	if d.json {
		return report.WriteJSON(d.out, a)
	}
	a.Print(d.out, d.unitsOr(garden))
	return nil
}

// unitsOr returns the units asked for, or the garden's own.
func (d *door) unitsOr(garden quantity.System) quantity.System {
	if d.units != nil {
		return *d.units
	}
	return garden
}
