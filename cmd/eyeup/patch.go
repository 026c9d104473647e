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
	At     string `placeholder:"DATE" help:"The day to count the plants for. If not given, six weeks before the middle date of the last frost."`
	Quick  bool   `help:"Take a good list at once, and say how far it may be from the best."`
	Garden string `arg:"" optional:"" help:"The book or the folder of the garden. If not given, the invented garden."`
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

// progress prints how far the work has come, at most once a second.
func (c patchCommand) progress(d *door) func(planting.PatchProof) {
	last := d.now()
	return func(p planting.PatchProof) {
		if now := d.now(); now.Sub(last) >= time.Second {
			last = now
			fmt.Fprintf(d.errs, "the list so far may be %.1f places short of the best (Ctrl-C takes it)\n", p.Gap)
		}
	}
}
