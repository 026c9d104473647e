package main

import (
	"fmt"
	"os"
	"strings"

	"eyeup/civil"
	"eyeup/internal/desk"
)

// seasonCommand works out a season.
type seasonCommand struct {
	Picture string   `placeholder:"FILE.svg" type:"path" help:"Draw the season into this file."`
	Why     string   `placeholder:"BATCH" help:"Tell step by step where the dates of this batch come from (its lot's code)."`
	Hold    []string `placeholder:"CODE=DATE" help:"Keep to a start that is decided: this lot in the week of this day."`
	Plan    string   `placeholder:"NAME" default:"usual for the trade" help:"Which plan to draw."`
	Garden  string   `arg:"" optional:"" help:"The book or the folder of the garden; without it, the invented garden."`
}

// Run prints the season.
func (c seasonCommand) Run(d *door) error {
	g, err := openGarden(d, c.Garden)
	if err != nil {
		return err
	}
	held, err := c.held()
	if err != nil {
		return err
	}
	a, err := desk.Season(g, d.today, desk.KeepingTo(held), desk.Explained(c.Why))
	if err != nil {
		return err
	}
	if c.Why != "" && !a.Explains() {
		return fmt.Errorf("no plan has a batch %q; name one by its id, as in --json: %s", c.Why, strings.Join(a.BatchIDs(), ", "))
	}
	if c.Picture != "" {
		if err := c.draw(d, a, g); err != nil {
			return err
		}
	}
	return d.answer(a, g.System)
}

// held reads the starts that are decided.
func (c seasonCommand) held() (map[string]civil.Date, error) {
	held := map[string]civil.Date{}
	for _, one := range c.Hold {
		code, day, is := strings.Cut(one, "=")
		if !is {
			return nil, fmt.Errorf("%q is no decided start; write CODE=DATE, such as MRMM5=2027-03-29", one)
		}
		date, err := civil.Parse(day)
		if err != nil {
			return nil, err
		}
		held[code] = date
	}
	return held, nil
}

// draw writes the picture of one plan.
func (c seasonCommand) draw(d *door, a *desk.SeasonAnswer, g *desk.Garden) error {
	svg, err := a.Picture(c.Plan, d.unitsOr(g.System))
	if err != nil {
		return err
	}
	if err := os.WriteFile(c.Picture, svg, 0o644); err != nil {
		return fmt.Errorf("the picture can't be written: %w", err)
	}
	fmt.Fprintf(d.errs, "the picture is in %s\n", c.Picture)
	return nil
}

// openGarden opens a garden folder or a book, or the invented garden where none is named.
func openGarden(d *door, name string) (*desk.Garden, error) {
	if name == "" {
		return desk.OpenDemo(d.today)
	}
	if info, err := os.Stat(name); err != nil || info.IsDir() {
		return desk.OpenGarden(os.DirFS(name), name)
	}
	var g *desk.Garden
	err := bookFile{name}.use(d, func(b *desk.StockBook) (err error) {
		g, err = desk.OpenBookGarden(b)
		return err
	})
	return g, err
}
