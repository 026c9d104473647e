package main

import (
	"fmt"

	"eyeup/civil"
	"eyeup/internal/reckon"
	"eyeup/quantity"
)

// nightsCommand asks how cold the nights ahead may be.
type nightsCommand struct {
	Garden string `placeholder:"FOLDER" help:"The folder of the garden. If not given, the invented garden."`
	Date   string `placeholder:"DATE" help:"The evening on which the first night begins. If not given, today."`
	Nights int    `placeholder:"NUMBER" help:"How many nights to look ahead. If not given, 7, or 1 with --low."`
	Low    string `placeholder:"TEMPERATURE" help:"Tonight's low in the patch, such as 27F."`
	Level  string `placeholder:"TEMPERATURE" help:"Thermostat level of heated places. If not given, the lowest of their levels."`
}

// Run reads the question and answers it.
func (c nightsCommand) Run(d *door) error {
	q, err := c.question(d.today)
	if err != nil {
		return err
	}
	g, _, err := openGarden(d, c.Garden)
	if err != nil {
		return err
	}
	a, err := reckon.Nights(g, q)
	if err != nil {
		return err
	}
	return d.answer(a, g.System)
}

func (c nightsCommand) question(today civil.Date) (reckon.NightsQuestion, error) {
	q := reckon.NightsQuestion{From: today, Nights: c.Nights}
	if c.Date != "" {
		date, err := civil.Parse(c.Date)
		if err != nil {
			return q, fmt.Errorf("--date: %w", err)
		}
		q.From = date
	}
	var err error
	if q.Low, err = temperatureOrNone("--low", c.Low); err != nil {
		return q, err
	}
	if q.Level, err = temperatureOrNone("--level", c.Level); err != nil {
		return q, err
	}
	if c.Nights == 0 {
		q.Nights = 7
		if q.Low != nil {
			q.Nights = 1
		}
	}
	return q, nil
}

// temperatureOrNone reads a flag that may be left out.
func temperatureOrNone(flag, text string) (*quantity.Temperature, error) {
	if text == "" {
		return nil, nil
	}
	t, err := quantity.ParseTemperature(text)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", flag, err)
	}
	return &t, nil
}
