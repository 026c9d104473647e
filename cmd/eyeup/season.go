package main

import (
	"fmt"
	"os"

	"eyeup/internal/desk"
)

// seasonCommand works out a season.
type seasonCommand struct {
	Picture string `placeholder:"FILE.svg" type:"path" help:"Draw the season into this file."`
	Plan    string `placeholder:"NAME" default:"usual for the trade" help:"Which plan to draw."`
	Garden  string `arg:"" optional:"" help:"The folder of the garden; without it, the invented garden."`
}

// Run prints the season.
func (c seasonCommand) Run(d *door) error {
	g, err := openGarden(d, c.Garden)
	if err != nil {
		return err
	}
	a, err := desk.Season(g, d.today)
	if err != nil {
		return err
	}
	if c.Picture != "" {
		if err := c.draw(d, a, g); err != nil {
			return err
		}
	}
	return d.answer(a, g.System)
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

// openGarden opens a garden folder, or the invented garden where none is named.
func openGarden(d *door, folder string) (*desk.Garden, error) {
	if folder == "" {
		return desk.OpenDemo(d.today)
	}
	return desk.OpenGarden(os.DirFS(folder), folder)
}
