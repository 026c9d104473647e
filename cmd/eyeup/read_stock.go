package main

import (
	"errors"
	"fmt"
	"io"
	"os"

	"eyeup/civil"
	"eyeup/internal/stockbook"
	"eyeup/quantity"
)

// readStockCommand brings in a stock list.
type readStockCommand struct {
	File   string `arg:"" help:"The list: CSV, divided by commas, semicolons or tabs, or XLSX (its first sheet)."`
	Book   string `placeholder:"FILE" help:"The book to write it into: all of it, or nothing."`
	On     string `placeholder:"DATE" help:"The day it was taken in; today if not given."`
	DryRun bool   `help:"Look it through against the book, and write nothing."`
	Kind   string `help:"The kind of all rows, where no column says it."`
	Form   string `help:"The form of all rows, where no column says it."`
	Place  string `help:"The place of all rows, where no column says it."`
}

// mostList is how large a list may be, in bytes.
const mostList = 16 << 20

// Run looks the list through, and writes it where it is told to.
func (c readStockCommand) Run(d *door) error {
	data, err := readWhole(c.File)
	if err != nil {
		return err
	}
	always := map[string]string{}
	for column, text := range map[string]string{"kind": c.Kind, "form": c.Form, "place": c.Place} {
		if text != "" {
			always[column] = text
		}
	}
	on := d.today
	if c.On != "" {
		if on, err = civil.Parse(c.On); err != nil {
			return fmt.Errorf("--on: %w", err)
		}
	}
	if c.Book == "" {
		a, err := stockbook.ReadStock(c.File, data, always, nil)
		if err != nil {
			return err
		}
		return d.answer(a, quantity.Metric)
	}
	return bookFile{c.Book}.use(d, func(b *stockbook.Book) error {
		a, err := stockbook.ReadStock(c.File, data, always, b)
		if err == nil && !c.DryRun {
			err = a.Write(b, on)
		}
		if err != nil {
			return err
		}
		return d.answer(a, quantity.Metric)
	})
}

// readWhole reads a file that is not too large.
func readWhole(name string) ([]byte, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, fmt.Errorf("%w; name a list that is there", err)
	}
	defer f.Close()
	if about, err := f.Stat(); err == nil && about.Size() > mostList {
		return nil, errors.New(name + " is larger than 16 MB; bring it in by parts")
	}
	data, err := io.ReadAll(io.LimitReader(f, mostList+1)) // what has no size, too
	if err == nil && len(data) > mostList {
		err = errors.New(name + " is larger than 16 MB; bring it in by parts")
	}
	return data, err
}
