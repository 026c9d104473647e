package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"time"

	"eyeup/civil"
	"eyeup/internal/desk"
	"eyeup/internal/garden"
	"eyeup/internal/planting"
	"eyeup/internal/stockbook"
)

// patchCommand works out a planting list.
type patchCommand struct {
	At     string `placeholder:"DATE" help:"Count on what there will be on this day (six weeks before the middle last frost if not given)."`
	Quick  bool   `help:"Take a good list at once; how far it may be from the best is told."`
	Garden string `arg:"" optional:"" help:"The book or the folder of the garden; without it, the invented garden."`
}

// Run prints the planting list. An interrupt takes the best list so far.
func (c patchCommand) Run(d *door) error {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	q := planting.PatchQuestion{Today: d.today, Solver: planting.Solver, Progress: c.progress(d)}
	if c.Quick {
		q.Solver = nil
	}
	if c.At != "" {
		at, err := civil.Parse(c.At)
		if err != nil {
			return err
		}
		q.At = at
	}
	a, g, err := c.ask(ctx, d, q)
	if err != nil {
		return err
	}
	return d.answer(a, g.System)
}

// ask puts the question to a book, where one is named, else to a folder.
func (c patchCommand) ask(ctx context.Context, d *door, q planting.PatchQuestion) (a *planting.PatchAnswer, g *garden.Garden, err error) {
	if info, err := os.Stat(c.Garden); c.Garden != "" && err == nil && !info.IsDir() {
		err = bookFile{c.Garden}.use(d, func(b *stockbook.Book) (err error) {
			if g, _, err = desk.OpenBookGarden(b); err != nil {
				return err
			}
			a, err = planting.ListOfBook(b, ctx, g, q)
			return err
		})
		return a, g, err
	}
	if g, _, err = openGarden(d, c.Garden); err != nil {
		return nil, nil, err
	}
	a, err = planting.List(g, ctx, q)
	return a, g, err
}

// progress tells, once a second at most and not in the first, how far the work has come.
func (c patchCommand) progress(d *door) func(planting.PatchProof) {
	told := d.now()
	return func(p planting.PatchProof) {
		if now := d.now(); now.Sub(told) >= time.Second {
			told = now
			fmt.Fprintf(d.errs, "so far a list that may be bettered by %.1f places; interrupt to take it\n", p.Gap)
		}
	}
}
