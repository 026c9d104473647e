package main

import (
	"fmt"
	"io"

	"eyeup/civil"
	"eyeup/internal/garden"
	"eyeup/internal/paper"
	"eyeup/internal/plans"
	"eyeup/internal/report"
	"eyeup/internal/stockbook"
)

// writeLabelsCommand writes labels.
type writeLabelsCommand struct {
	Lots    []string `placeholder:"CODE,…" help:"The codes of the lots. If not given, all lots." xor:"which"`
	Session string   `placeholder:"DATE" help:"One label for each pot that the plan fills in the week of this day." xor:"which"`
	Potted  string   `placeholder:"DATE" help:"One label for each pot, and one for each tray, filled on this day by the book." xor:"which"`
	Crates  bool     `help:"Make a card for every crate instead." xor:"which"`
	Renamed string   `placeholder:"DATE" help:"The lots that got a new name on this day or later, by the book." xor:"which"`
	Test    bool     `help:"Make a test page that shows where the labels will be printed." xor:"which"`
	Each    bool     `help:"Make one label for every single plant, not one for each lot."`
	Sheet   string   `default:"a4:3x8" placeholder:"MEASURES" help:"The label sheet (${default}). a4:3x8 is 3 labels across and 8 down. Others: letter:2x5,margin=12mm,gap=3mm; roll:62mm; roll:62x40mm; stake:125x15mm."`
	From    int      `default:"1" placeholder:"N" help:"The first free label of the first page."`
	Outline bool     `help:"Draw the edges of the labels, to cut along."`
	Address string   `placeholder:"URL" help:"The fixed address of the garden's pages, if they have one. The square code then leads there."`
	Plan    string   `placeholder:"NAME" help:"With --session: the plan to go by. If not given, the plan you follow, else the usual one."`
	Out     string   `required:"" placeholder:"FILE.pdf" type:"path" help:"The file to write."`
	Garden  string   `arg:"" optional:"" help:"The folder or book of the garden. If not given, the invented garden."`
}

// Run writes them.
func (c writeLabelsCommand) Run(d *door) error {
	q, err := paper.AskLabels(c.Sheet, c.Address, c.From)
	if err != nil {
		return err
	}
	q.Lots, q.Each, q.Outline = c.Lots, c.Each, c.Outline
	day, err := c.day()
	if err != nil {
		return err
	}
	return withGarden(d, c.Garden, c.Session != "", func(g *garden.Garden, followed *plans.Followed, book *stockbook.Book) error {
		if c.Renamed != "" {
			if q.Lots, err = paper.Renamed(book, day); err != nil {
				return err
			}
		}
		a, err := intoFile(c.Out, func(w io.Writer) (*report.WrittenAnswer, error) {
			switch {
			case c.Test:
				return paper.Alignment(q, d.today, w)
			case c.Crates:
				return paper.Cards(g.Garden, q, d.today, w)
			case c.Potted != "":
				return paper.PottedOn(book, day, q, d.today, w)
			case c.Session != "":
				return paper.SessionLabels(g, followed, c.Plan, day, q, d.today, w)
			}
			return paper.Labels(g.Garden, q, d.today, w)
		})
		if err != nil {
			return err
		}
		return d.answer(a, g.System)
	})
}

// day reads the day given with --session, --potted or --renamed.
func (c writeLabelsCommand) day() (civil.Date, error) {
	for flag, typed := range map[string]string{"--session": c.Session, "--potted": c.Potted, "--renamed": c.Renamed} {
		if typed == "" {
			continue
		}
		day, err := civil.Parse(typed)
		if err != nil {
			return day, fmt.Errorf("%s: %w", flag, err)
		}
		return day, nil
	}
	return civil.Date{}, nil
}
