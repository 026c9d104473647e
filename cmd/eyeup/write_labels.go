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
	Lots    []string `placeholder:"CODE,…" help:"The lots; all where none is named." xor:"which"`
	Session string   `placeholder:"DATE" help:"The pots that are set to grow in the week of that day, a label each." xor:"which"`
	Potted  string   `placeholder:"DATE" help:"The pots of a book that were filled on that day: a label each, and one for each tray." xor:"which"`
	Crates  bool     `help:"A card for every crate instead." xor:"which"`
	Renamed string   `placeholder:"DATE" help:"The lots of a book that were renamed on that day or after: their labels are due again." xor:"which"`
	Test    bool     `help:"A page that shows where labels will fall instead." xor:"which"`
	Each    bool     `help:"A label for every individual, not one a lot."`
	Sheet   string   `default:"a4:3x8" placeholder:"MEASURES" help:"What they are printed on (${default}): a4:3x8 is 3 across and 8 down; letter:2x5,margin=12mm,gap=3mm; roll:62mm; roll:62x40mm; stake:125x15mm."`
	From    int      `default:"1" placeholder:"N" help:"The first free label of the first page."`
	Outline bool     `help:"Draw the edges, to cut along."`
	Address string   `placeholder:"URL" help:"Where the garden's pages have a fixed name of their own: the square code leads there."`
	Plan    string   `placeholder:"NAME" help:"Whose session; the plan that is followed, or the usual one, if not given."`
	Out     string   `required:"" placeholder:"FILE.pdf" type:"path" help:"Where to."`
	Garden  string   `arg:"" optional:"" help:"The folder or book of the garden; without it, the invented garden."`
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

// day reads the day of the session, that of potting, or that since which lots were renamed.
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
