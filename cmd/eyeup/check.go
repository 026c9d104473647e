package main

import (
	"errors"

	"eyeup/internal/stockbook"
	"eyeup/quantity"
)

// checkCommand checks that a book is undamaged.
type checkCommand struct{ bookFile }

// errNotWhole ends the program with 1, after the faults were printed.
var errNotWhole = errors.New("the book is damaged. Take its newest undamaged copy with: eyeup restore FILE")

// Run goes through the book.
func (c checkCommand) Run(d *door) error {
	a, err := stockbook.CheckBook(c.Book, d.now)
	if err != nil {
		return err
	}
	if err := d.answer(a, quantity.Metric); err != nil {
		return err
	}
	if !a.Whole {
		return errNotWhole
	}
	return nil
}
