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
	List   string `required:"" enum:"potting,round,shopping,planting,giving,tags,season,week" help:"Which list: ${enum}."`
	Plan   string `placeholder:"NAME" help:"The plan to go by. If not given, the plan you follow, else the usual one."`
	Paper  string `enum:",a4,letter" default:"" help:"a4 or letter. If not given, letter for us units and a4 for metric."`
	Weeks  int    `default:"1" help:"For the list of jobs: how many weeks, from this week on (${default})."`
	Row    string `default:"5 m" placeholder:"LENGTH" help:"For the planting list: how long a row of the patch is (${default})."`
	Bag    string `default:"2 ft3" placeholder:"VOLUME" help:"For the shopping list: the volume printed on a bag of potting mix (${default})."`
	Bale   bool   `help:"The bag is a compressed bale, which swells as most do."`
	At     string `placeholder:"DATE" help:"For the giving list of a book: the day to count divisions for. If not given, today."`
	Out    string `required:"" placeholder:"FILE.pdf" type:"path" help:"The file to write."`
	Garden string `arg:"" optional:"" help:"The folder or book of the garden. If not given, the invented garden."`
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
