package main

import (
	"errors"

	"eyeup/internal/stockbook"
	"eyeup/quantity"
)

// checkCommand asks whether a book is whole.
type checkCommand struct{ bookFile }

// errNotWhole ends the program with 1; what is wrong has been told.
var errNotWhole = errors.New("the book is not whole; take the last whole copy by: eyeup restore")

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
