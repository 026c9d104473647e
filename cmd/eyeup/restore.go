package main

import (
	"eyeup/internal/stockbook"
	"eyeup/quantity"
)

// restoreCommand puts a copy in the place of a damaged book.
type restoreCommand struct {
	bookFile
	From string `placeholder:"COPY" type:"existingfile" help:"The copy to take. If not given, the newest undamaged daily copy."`
}

// Run restores the book. The damaged one is kept under another name.
func (c restoreCommand) Run(d *door) error {
	a, err := stockbook.RestoreBook(c.Book, c.From, d.now)
	if err != nil {
		return err
	}
	return d.answer(a, quantity.Metric)
}
