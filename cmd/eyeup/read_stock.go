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

// readStockCommand reads a stock list.
type readStockCommand struct {
	File   string `arg:"" help:"The list: CSV with commas, semicolons or tabs, or the first sheet of an XLSX file."`
	Book   string `placeholder:"FILE" help:"The book to write it into, all of it or nothing."`
	On     string `placeholder:"DATE" help:"The day the stock came in. If not given, today."`
	DryRun bool   `help:"Check the list against the book, and write nothing."`
	Kind   string `help:"The kind of all rows, if no column says it."`
	Form   string `help:"The form of all rows, if no column says it."`
	Place  string `help:"The place of all rows, if no column says it."`
}

// mostList is how large a list may be, in bytes.
const mostList = 16 << 20

// Run checks the list, and writes it into the book if one is named.
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
		return nil, fmt.Errorf("%w; name a list that exists", err)
	}
	defer f.Close()
	if about, err := f.Stat(); err == nil && about.Size() > mostList {
		return nil, errors.New(name + " is larger than 16 MB; bring it in by parts")
	}
	data, err := io.ReadAll(io.LimitReader(f, mostList+1)) // what has no size, too
	if err == nil && len(data) > mostList {
		err = errors.New(name + " is larger than 16 MB; split it into smaller files")
	}
	return data, err
}
