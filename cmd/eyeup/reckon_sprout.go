package main

import (
	"fmt"
	"os"

	"eyeup/internal/reckon"
	"eyeup/quantity"
)

// sproutCommand asks how soon a kind comes up.
type sproutCommand struct {
	Kind   string `required:"" placeholder:"KIND" help:"The kind, such as dahlia or tomato."`
	Temp   string `placeholder:"TEMPERATURE" help:"A steady temperature, such as 70F."`
	Night  string `placeholder:"TEMPERATURE" help:"Night temperature, with --day, if it changes."`
	Day    string `placeholder:"TEMPERATURE" help:"Day temperature, with --night, if it changes."`
	Garden string `placeholder:"FOLDER" help:"Use the figures of this garden."`
	Why    bool   `help:"Say where each figure comes from."`
}

// Run reads the question and answers it.
func (c sproutCommand) Run(d *door) error {
	q := reckon.SproutQuestion{
		KindQuestion: kindQuestion(c.Kind, c.Garden), Why: c.Why,
		Warm: quantity.Unknown(), Night: quantity.Unknown(), Day: quantity.Unknown(),
	}
	for _, t := range []struct {
		flag, text string
		to         *quantity.Temperature
	}{{"--temp", c.Temp, &q.Warm}, {"--night", c.Night, &q.Night}, {"--day", c.Day, &q.Day}} {
		if t.text == "" {
			continue
		}
		var err error
		if *t.to, err = quantity.ParseTemperature(t.text); err != nil {
			return fmt.Errorf("%s: %w", t.flag, err)
		}
	}
	a, err := reckon.Sprout(q)
	if err != nil {
		return err
	}
	return d.answer(a, quantity.Metric)
}

// kindQuestion asks for a kind, with the figures of a garden folder where one is named.
func kindQuestion(kind, folder string) reckon.KindQuestion {
	q := reckon.KindQuestion{Kind: kind, FolderName: folder}
	if folder != "" {
		q.Folder = os.DirFS(folder)
	}
	return q
}
