package main

import (
	"fmt"
	"os"
	"strings"

	"eyeup/civil"
	"eyeup/internal/garden"
	"eyeup/internal/reckon"
	"eyeup/quantity"
)

// heatCommand asks for the heat needed to keep a place at a level.
type heatCommand struct {
	Garden string   `placeholder:"FOLDER" help:"The folder of the garden. If not given, the invented garden."`
	Place  string   `required:"" placeholder:"NAME" help:"The place in the garden."`
	Level  []string `required:"" placeholder:"TEMPERATURE" help:"Thermostat level, such as 50F, or off. Several, with commas between, are compared."`
	Step   []string `placeholder:"MM-DD=TEMPERATURE" help:"Change the level from a day on, such as 04-01=60F. May be given several times."`
	From   string   `placeholder:"MM-DD" help:"The first day with heat. If not given, the first day of the season."`
	To     string   `placeholder:"MM-DD" help:"The last day with heat. If not given, a year later."`
	Hourly string   `placeholder:"FILE.csv" type:"path" help:"Write every hour of the first level into this file."`
	Why    bool     `help:"Say what each figure means and where it comes from."`
}

// Run reads the question and answers it.
func (c heatCommand) Run(d *door) error {
	q, err := c.question()
	if err != nil {
		return err
	}
	g, _, err := openGarden(d, c.Garden)
	if err != nil {
		return err
	}
	a, err := reckon.Heat(g, q)
	if err != nil {
		return err
	}
	if c.Hourly != "" {
		if err := c.writeHours(d, g, q); err != nil {
			return err
		}
	}
	return d.answer(a, g.System)
}

func (c heatCommand) question() (reckon.HeatQuestion, error) {
	q := reckon.HeatQuestion{Place: c.Place, Why: c.Why}
	for _, text := range c.Level {
		level, err := levelOrOff(text)
		if err != nil {
			return q, fmt.Errorf("--level: %w", err)
		}
		q.Levels = append(q.Levels, level)
	}
	for _, text := range c.Step {
		step, err := heatStep(text)
		if err != nil {
			return q, fmt.Errorf("--step: %w", err)
		}
		q.Steps = append(q.Steps, step)
	}
	var err error
	if q.From, err = dayOrNone("--from", c.From); err != nil {
		return q, err
	}
	q.To, err = dayOrNone("--to", c.To)
	return q, err
}

// levelOrOff reads a level; off is none.
func levelOrOff(text string) (*quantity.Temperature, error) {
	if strings.TrimSpace(text) == "off" {
		return nil, nil
	}
	t, err := quantity.ParseTemperature(text)
	if err != nil {
		return nil, err
	}
	return &t, nil
}

// heatStep reads a change of level, such as 04-01=60F.
func heatStep(text string) (reckon.HeatStep, error) {
	day, level, found := strings.Cut(text, "=")
	if !found {
		return reckon.HeatStep{}, fmt.Errorf("%q is not a change of level; write the day and the level, such as 04-01=60F", text)
	}
	on, err := civil.ParseMonthDay(strings.TrimSpace(day))
	if err != nil {
		return reckon.HeatStep{}, err
	}
	held, err := levelOrOff(level)
	return reckon.HeatStep{On: on, Level: held}, err
}

// dayOrNone reads a flag that may be left out.
func dayOrNone(flag, text string) (civil.MonthDay, error) {
	if text == "" {
		return civil.MonthDay{}, nil
	}
	m, err := civil.ParseMonthDay(text)
	if err != nil {
		return m, fmt.Errorf("%s: %w", flag, err)
	}
	return m, nil
}

func (c heatCommand) writeHours(d *door, g *garden.Garden, q reckon.HeatQuestion) (err error) {
	file, err := os.Create(c.Hourly)
	if err != nil {
		return fmt.Errorf("--hourly: the file can't be written: %w", err)
	}
	defer func() {
		if closed := file.Close(); err == nil {
			err = closed
		}
	}()
	if err := reckon.HeatByHour(g, q, file); err != nil {
		return err
	}
	fmt.Fprintf(d.errs, "the hours are in %s\n", c.Hourly)
	return nil
}
