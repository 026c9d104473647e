package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"eyeup/internal/garden"
	"eyeup/internal/plans"
	"eyeup/internal/report"
	"eyeup/internal/stockbook"
)

// writeCalendarCommand writes a calendar.
type writeCalendarCommand struct {
	Plan   string `placeholder:"NAME" help:"The plan to go by. If not given, the plan you follow, else the usual one."`
	Out    string `required:"" placeholder:"FILE.ics" type:"path" help:"The file to write."`
	Garden string `arg:"" optional:"" help:"The folder or book of the garden. If not given, the invented garden."`
}

// Run writes it.
func (c writeCalendarCommand) Run(d *door) error {
	return withGarden(d, c.Garden, true, func(g *garden.Garden, followed *plans.Followed, _ *stockbook.Book) error {
		a, err := intoFile(c.Out, func(w io.Writer) (*report.WrittenAnswer, error) {
			return plans.CalendarOf(g, followed, c.Plan, d.today, d.today.UTC(), w)
		})
		if err != nil {
			return err
		}
		return d.answer(a, g.System)
	})
}

// writeTablesCommand writes tables.
type writeTablesCommand struct {
	Plan   string `placeholder:"NAME" help:"The plan to go by. If not given, the plan you follow, else the usual one."`
	Out    string `required:"" placeholder:"DIR|FILE.xlsx" type:"path" help:"A spreadsheet file, or a folder that is empty or does not exist."`
	Garden string `arg:"" optional:"" help:"The folder or book of the garden. If not given, the invented garden."`
}

// Run writes them.
func (c writeTablesCommand) Run(d *door) error {
	return withGarden(d, c.Garden, true, func(g *garden.Garden, followed *plans.Followed, _ *stockbook.Book) error {
		a, err := c.write(d, g, followed)
		if err != nil {
			return err
		}
		return d.answer(a, g.System)
	})
}

func (c writeTablesCommand) write(d *door, g *garden.Garden, followed *plans.Followed) (*report.WrittenAnswer, error) {
	switch ending := strings.ToLower(filepath.Ext(c.Out)); ending {
	case ".xlsx":
		return intoFile(c.Out, func(w io.Writer) (*report.WrittenAnswer, error) {
			return plans.TablesBook(g, followed, c.Plan, d.today, w)
		})
	case "":
		return intoFolder(c.Out, func(create func(string) (io.WriteCloser, error)) (*report.WrittenAnswer, error) {
			return plans.TablesFolder(g, followed, c.Plan, d.today, create)
		})
	default:
		return nil, fmt.Errorf("--out: tables can't be written as a %s file. Name a spreadsheet, FILE.xlsx, or a folder", ending)
	}
}

// writeFolderCommand writes the garden folder.
type writeFolderCommand struct {
	Out    string `required:"" placeholder:"DIR" type:"path" help:"A folder that is empty or does not exist."`
	Garden string `arg:"" optional:"" help:"The folder or book of the garden. If not given, the invented garden."`
}

// Run writes it, with the weather file; of a book, with its log and its papers.
func (c writeFolderCommand) Run(d *door) error {
	return withGarden(d, c.Garden, true, func(g *garden.Garden, _ *plans.Followed, book *stockbook.Book) error {
		a, err := intoFolder(c.Out, func(create func(string) (io.WriteCloser, error)) (*report.WrittenAnswer, error) {
			if book != nil {
				return plans.BookFolder(g, book, create)
			}
			a, files, err := plans.FolderOf(g, create)
			for _, name := range files {
				err = errors.Join(err, copyInto(filepath.Join(c.Garden, name), name, create))
			}
			return a, err
		})
		if err != nil {
			return err
		}
		return d.answer(a, g.System)
	})
}

// copyInto copies a file into a folder that is being written.
func copyInto(from, name string, create func(string) (io.WriteCloser, error)) error {
	in, err := os.Open(from)
	if err != nil {
		return fmt.Errorf("%s can't be copied: %w", name, err)
	}
	defer func() { _ = in.Close() }()
	out, err := create(name)
	if err != nil {
		return err
	}
	if _, err := io.Copy(out, in); err != nil {
		_ = out.Close()
		return fmt.Errorf("%s can't be copied: %w", name, err)
	}
	return out.Close()
}
