package main

import (
	"eyeup/internal/stockbook"
	"eyeup/quantity"
)

// restoreCommand puts a copy in the place of a damaged book.
type restoreCommand struct {
	bookFile
	From string `placeholder:"COPY" type:"existingfile" help:"The copy to take; the newest whole daily copy if not given."`
}

// Run restores the book; the damaged one is laid aside.
func (c restoreCommand) Run(d *door) error {
	a, err := stockbook.RestoreBook(c.Book, c.From, d.now)
	if err != nil {
		return err
	}
	return d.answer(a, quantity.Metric)
}
