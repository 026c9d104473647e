package main

import (
	"errors"
	"os"

	"eyeup/internal/desk"
)

// seasonCommand works out a season.
type seasonCommand struct {
	Garden string `arg:"" optional:"" help:"The folder of the garden; without it, the invented garden."`
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
	return d.answer(a, g.System)
}

// openGarden opens a garden folder, or the invented garden where none is named.
func openGarden(d *door, folder string) (*desk.Garden, error) {
	if folder == "" {
		return nil, errors.New("name the folder of a garden")
	}
	return desk.OpenGarden(os.DirFS(folder), folder)
}
