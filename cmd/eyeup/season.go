package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"
	"time"

	"eyeup/civil"
	"eyeup/internal/desk"
	"eyeup/internal/garden"
	"eyeup/internal/plans"
	"eyeup/internal/stockbook"
)

// seasonCommand works out a season.
type seasonCommand struct {
	Picture string   `placeholder:"FILE.svg" type:"path" help:"Draw the season into this file, as SVG."`
	Why     string   `placeholder:"BATCH" help:"Explain step by step where the dates of this batch come from. Name it by the code of its lot."`
	Hold    []string `placeholder:"CODE=DATE" help:"Start this lot in the week of this day, such as MRMM5=2027-03-29."`
	Plan    string   `placeholder:"NAME" help:"The plan to draw, to prove or to follow. If not given: the plan you follow, else the usual one. With --prove it may also be a plan from the table of what earlier flowers cost."`
	Follow  bool     `help:"Follow the plan from now on; this is written into the book. With --prove its decisions stay as they were found."`

	Prove       bool   `help:"Search for the best plans, and say how much better any other plan could be."`
	Pays        bool   `help:"With --prove: also say from how many plants on heat pays, planned afresh for each number."`
	Programme   string `placeholder:"FILE.mps" type:"path" help:"With --prove: write the optimisation problem into this file, in MPS format, so that other solvers can check it."`
	Certificate string `placeholder:"FILE.json" type:"path" help:"With --prove: write the proof of the plan into this file, so that its sums can be checked."`

	Garden string `arg:"" optional:"" help:"The book or the folder of the garden. If not given, the invented garden."`
}

// Run prints the season.
func (c seasonCommand) Run(d *door) error {
	g, followed, err := openGarden(d, c.Garden)
	if err != nil {
		return err
	}
	held, err := c.held()
	if err != nil {
		return err
	}
	a, err := c.workOut(d, g, followed, held)
	if err != nil {
		return err
	}
	if c.Plan != "" {
		if a, err = a.Opened(c.Plan); err != nil {
			return err
		}
	} else {
		c.Plan = a.DefaultPlan(c.proves())
	}
	if c.Why != "" && !a.Explains() {
		return fmt.Errorf("no plan has a batch %q. These have one: %s", c.Why, strings.Join(a.BatchIDs(), ", "))
	}
	if c.Picture != "" {
		if err := c.draw(d, a, g); err != nil {
			return err
		}
	}
	if err := c.writeProof(d, a); err != nil {
		return err
	}
	if c.Follow {
		if err := c.follow(d, a); err != nil {
			return err
		}
	}
	return d.answer(a, g.System)
}

// workOut works out the season, with a proof if that was asked for. An interrupt then stops
// the search, and the best plans so far are taken.
func (c seasonCommand) workOut(d *door, g *garden.Garden, followed *plans.Followed, held map[string]civil.Date) (*plans.SeasonAnswer, error) {
	asked := []plans.Asked{plans.KeepingTo(held), plans.Explained(c.Why)}
	if !c.proves() {
		return plans.Season(g, followed, d.today, asked...)
	}
	if c.Pays {
		asked = append(asked, plans.Paying)
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	said := d.now()
	a, err := plans.Prove(ctx, g, followed, d.today, func(p plans.Progress) {
		if now := d.now(); now.Sub(said) >= time.Second {
			said = now
			fmt.Fprintf(d.errs, "%s: %s (Ctrl-C stops the search and prints the best so far)\n", p.Plan, p)
		}
	}, asked...)
	if err == nil && ctx.Err() != nil {
		fmt.Fprintln(d.errs, "stopped: these are the best plans found by then")
	}
	return a, err
}

// proves reports whether to search for the best plans.
func (c seasonCommand) proves() bool { return c.Prove || c.Programme != "" || c.Certificate != "" }

// follow writes into the book that the plan is followed.
func (c seasonCommand) follow(d *door, a *plans.SeasonAnswer) error {
	if info, err := os.Stat(c.Garden); c.Garden == "" || err != nil || info.IsDir() {
		return errors.New("a plan can be followed only in a book, and this is no book. Make one with: eyeup book new FILE --folder FOLDER")
	}
	decide := a.Decide
	if c.proves() {
		decide = a.Hold
	}
	body, err := decide(c.Plan)
	if err != nil {
		return err
	}
	return bookFile{c.Garden}.use(d, func(b *stockbook.Book) error {
		e, err := b.NewEntry("decided", body)
		if err != nil {
			return err
		}
		e.On = d.today
		if _, err := b.Append(e); err != nil {
			return err
		}
		fmt.Fprintf(d.errs, "you now follow %q (entry %s)\n", c.Plan, e.ID)
		return nil
	})
}

// writeProof writes the files of the proof that were asked for.
func (c seasonCommand) writeProof(d *door, a *plans.SeasonAnswer) error {
	for _, f := range []struct {
		name, what string
		write      func(io.Writer, string) error
	}{{c.Programme, "programme", a.WriteProgramme}, {c.Certificate, "certificate", a.WriteCertificate}} {
		if f.name == "" {
			continue
		}
		var b bytes.Buffer
		if err := f.write(&b, c.Plan); err != nil {
			return err
		}
		if err := os.WriteFile(f.name, b.Bytes(), 0o644); err != nil {
			return fmt.Errorf("the %s can't be written: %w. Name a file in a folder that exists", f.what, err)
		}
		fmt.Fprintf(d.errs, "the %s is in %s\n", f.what, f.name)
	}
	return nil
}

// held reads the starts that are fixed by --hold.
func (c seasonCommand) held() (map[string]civil.Date, error) {
	held := map[string]civil.Date{}
	for _, one := range c.Hold {
		code, day, is := strings.Cut(one, "=")
		if !is {
			return nil, fmt.Errorf("--hold: %q is not a lot and a day. Write CODE=DATE, such as MRMM5=2027-03-29", one)
		}
		date, err := civil.Parse(day)
		if err != nil {
			return nil, err
		}
		held[code] = date
	}
	return held, nil
}

// draw writes the picture of one plan.
func (c seasonCommand) draw(d *door, a *plans.SeasonAnswer, g *garden.Garden) error {
	svg, err := a.Picture(c.Plan, d.unitsOr(g.System))
	if err != nil {
		return err
	}
	if err := os.WriteFile(c.Picture, svg, 0o644); err != nil {
		return fmt.Errorf("the picture can't be written: %w. Name a file in a folder that exists", err)
	}
	fmt.Fprintf(d.errs, "the picture is in %s\n", c.Picture)
	return nil
}

// openGarden opens a garden folder or a book, or the invented garden if none is named. followed
// is the plan that the book says is followed; nil where none is.
func openGarden(d *door, name string) (g *garden.Garden, followed *plans.Followed, err error) {
	if name == "" {
		g, err = garden.OpenDemo(d.today)
		return g, nil, err
	}
	if info, err := os.Stat(name); err != nil || info.IsDir() {
		g, err = garden.Open(os.DirFS(name), name)
		return g, nil, err
	}
	err = bookFile{name}.use(d, func(b *stockbook.Book) (err error) {
		g, followed, err = desk.OpenBookGarden(b)
		return err
	})
	return g, followed, err
}
