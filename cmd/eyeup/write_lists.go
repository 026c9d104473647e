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
	"eyeup/quantity"
)

// writeListsCommand writes a list.
type writeListsCommand struct {
	List   string `required:"" enum:"potting,round,shopping,planting,giving,tags,season,week" help:"Which: ${enum}."`
	Plan   string `placeholder:"NAME" help:"By which plan; the one that is followed, or the usual one, if not given."`
	Paper  string `enum:",a4,letter" default:"" help:"a4 or letter; by the garden's units if not given."`
	Weeks  int    `default:"1" help:"Of how many weeks the jobs are listed, from this week on (${default})."`
	Row    string `default:"5 m" placeholder:"LENGTH" help:"How long a row of the patch is, for the planting list (${default})."`
	Bag    string `default:"2 ft3" placeholder:"VOLUME" help:"Volume printed on a bag of mix, for the shopping list (${default})."`
	Bale   bool   `help:"The bag is a compressed bale, swelling as most do."`
	At     string `placeholder:"DATE" help:"On which day divisions are counted on, for the giving list of a book; today if not given."`
	Out    string `required:"" placeholder:"FILE.pdf" type:"path" help:"Where to."`
	Garden string `arg:"" optional:"" help:"The folder or book of the garden; without it, the invented garden."`
}

// Run writes it.
func (c writeListsCommand) Run(d *door) error {
	row, err := quantity.ParseLength(c.Row)
	if err != nil {
		return fmt.Errorf("--row: %w", err)
	}
	volume, err := quantity.ParseVolume(c.Bag)
	if err != nil {
		return fmt.Errorf("--bag: %w", err)
	}
	q := paper.ListQuestion{List: c.List, Plan: c.Plan, Weeks: c.Weeks, Row: row, Bag: volume, Bale: c.Bale}
	at := d.today
	if c.At != "" {
		if at, err = civil.Parse(c.At); err != nil {
			return fmt.Errorf("--at: %w", err)
		}
	}
	return withGarden(d, c.Garden, paper.NeedsPlan(c.List), func(g *garden.Garden, followed *plans.Followed, book *stockbook.Book) error {
		if book != nil && c.List == "giving" {
			if q.Outlook, err = book.Outlook(d.today, at); err != nil {
				return err
			}
		}
		q.Followed = followed
		q.Units = d.unitsOr(g.System)
		q.SetPaper(c.Paper)
		a, err := intoFile(c.Out, func(w io.Writer) (*report.WrittenAnswer, error) { return paper.List(g, q, d.today, w) })
		if err != nil {
			return err
		}
		return d.answer(a, g.System)
	})
}
