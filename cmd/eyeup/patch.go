package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"time"

	"eyeup/civil"
	"eyeup/internal/desk"
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
	q := desk.PatchQuestion{Today: d.today, Solver: desk.Solver, Progress: c.progress(d)}
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
func (c patchCommand) ask(ctx context.Context, d *door, q desk.PatchQuestion) (a *desk.PatchAnswer, g *desk.Garden, err error) {
	if info, err := os.Stat(c.Garden); c.Garden != "" && err == nil && !info.IsDir() {
		err = bookFile{c.Garden}.use(d, func(b *desk.StockBook) (err error) {
			if g, err = desk.OpenBookGarden(b); err != nil {
				return err
			}
			a, err = b.Planting(ctx, g, q)
			return err
		})
		return a, g, err
	}
	if g, err = openGarden(d, c.Garden); err != nil {
		return nil, nil, err
	}
	a, err = g.Planting(ctx, q)
	return a, g, err
}

// progress prints how far the work has come, at most once a second.
func (c patchCommand) progress(d *door) func(desk.PatchProof) {
	last := d.now()
	return func(p desk.PatchProof) {
		if now := d.now(); now.Sub(last) >= time.Second {
			last = now
			fmt.Fprintf(d.errs, "the list so far may be %.1f places short of the best (Ctrl-C takes it)\n", p.Gap)
		}
	}
}
