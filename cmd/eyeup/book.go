package main

import (
	"errors"
	"fmt"
	"os"
	"strings"

	"eyeup/civil"
	"eyeup/internal/stockbook"
	"eyeup/quantity"
)

// bookCommand keeps the stock book, one word for each thing done with it.
type bookCommand struct {
	New     bookNewCommand     `cmd:"" help:"A new book: empty, of a garden folder, or invented."`
	Add     bookAddCommand     `cmd:"" help:"Write something down."`
	Undo    bookUndoCommand    `cmd:"" help:"Let an entry count for nothing, or what was undone count again."`
	Lots    bookLotsCommand    `cmd:"" help:"What stands where."`
	Lot     bookLotCommand     `cmd:"" help:"One lot: what is left of it, and its life."`
	Kin     bookKinCommand     `cmd:"" help:"What came of a lot, what it came of, and what it met."`
	Outlook bookOutlookCommand `cmd:"" help:"What to count on at a date: good divisions of each variety, with odds."`
	Log     bookLogCommand     `cmd:"" help:"All entries, a line of JSON each."`
	People  bookPeopleCommand  `cmd:"" help:"Who the ids in entries are; a name may be blanked."`
	Out     bookOutCommand     `cmd:"" help:"Write the book as a folder, from which the same book is made."`
}

// bookFile names a book.
type bookFile struct {
	Book string `arg:"" placeholder:"FILE" help:"The book."`
}

// use opens the book, lets do something with it, and puts it down.
func (f bookFile) use(d *door, do func(*stockbook.Book) error) error {
	b, err := stockbook.Open(f.Book, d.now)
	if err != nil {
		return err
	}
	for _, w := range b.Warnings() {
		fmt.Fprintf(d.errs, "eyeup: note: %s\n", w)
	}
	return errors.Join(do(b), b.Close())
}

// bookNewCommand makes a book.
type bookNewCommand struct {
	bookFile
	Folder string `placeholder:"FOLDER" type:"existingdir" help:"Make it of this garden folder: from its log.jsonl, or, without one, of its stock."`
	Demo   bool   `help:"Fill it with the invented garden and three years of its history."`
}

// Run makes the book.
func (c bookNewCommand) Run(d *door) error {
	if c.Demo && c.Folder != "" {
		return errors.New("--demo and --folder fill a book each in its own way; give one of the two")
	}
	b, err := stockbook.New(c.Book, d.now)
	if err != nil {
		return err
	}
	switch {
	case c.Demo:
		err = b.Demo()
	case c.Folder != "":
		err = b.ReadFolder(os.DirFS(c.Folder), c.Folder, d.today)
	}
	if err := errors.Join(err, b.Close()); err != nil {
		return errors.Join(err, removeBook(c.Book))
	}
	fmt.Fprintf(d.errs, "%s is a new book\n", c.Book)
	return nil
}

// removeBook removes a book that could not be filled, so that the next try finds none.
func removeBook(path string) error { return os.Remove(path) }

// bookUndoCommand undoes an entry.
type bookUndoCommand struct {
	bookFile
	Entry string `arg:"" optional:"" help:"The entry's id; without it, the last one that counts."`
}

// Run undoes it and says what was undone.
func (c bookUndoCommand) Run(d *door) error {
	return c.use(d, func(b *stockbook.Book) error {
		undone, by, err := b.UndoNamed(c.Entry)
		if err != nil {
			return err
		}
		if d.json {
			return printLine(d.out, stockbook.BookAnswer{ID: by.ID})
		}
		fmt.Fprintf(d.out, "undone: %s of %s (entry %s); to have it back, undo %s\n", undone.Kind, undone.On, undone.ID, by.ID)
		return nil
	})
}

// bookLotsCommand lists what stands.
type bookLotsCommand struct{ bookFile }

// Run lists it.
func (c bookLotsCommand) Run(d *door) error {
	return c.use(d, func(b *stockbook.Book) error { return d.answer(b.Lots(), quantity.Metric) })
}

// bookLotCommand tells one lot.
type bookLotCommand struct {
	bookFile
	Code string `arg:"" help:"The code on its label, or its id."`
}

// Run tells it.
func (c bookLotCommand) Run(d *door) error {
	return c.use(d, func(b *stockbook.Book) error {
		a, err := b.Lot(c.Code)
		if err != nil {
			return err
		}
		return d.answer(a, quantity.Metric)
	})
}

// bookKinCommand tells a lot's kin.
type bookKinCommand struct {
	bookFile
	Code string `arg:"" help:"The code on its label, or its id."`
}

// Run tells them.
func (c bookKinCommand) Run(d *door) error {
	return c.use(d, func(b *stockbook.Book) error {
		a, err := b.Kin(c.Code)
		if err != nil {
			return err
		}
		return d.answer(a, quantity.Metric)
	})
}

// bookOutlookCommand says what to count on.
type bookOutlookCommand struct {
	bookFile
	At string `required:"" placeholder:"DATE" help:"The day to count on, such as that of dividing."`
}

// Run says it.
func (c bookOutlookCommand) Run(d *door) error {
	at, err := civil.Parse(c.At)
	if err != nil {
		return fmt.Errorf("--at: %w", err)
	}
	return c.use(d, func(b *stockbook.Book) error {
		a, err := b.Outlook(d.today, at)
		if err != nil {
			return err
		}
		return d.answer(a, quantity.Metric)
	})
}

// bookLogCommand writes the log.
type bookLogCommand struct{ bookFile }

// Run writes it; for a grower and for a program alike it is lines of JSON.
func (c bookLogCommand) Run(d *door) error {
	return c.use(d, func(b *stockbook.Book) error { return b.WriteLog(d.out) })
}

// bookPeopleCommand names people.
type bookPeopleCommand struct {
	bookFile
	ID    string  `arg:"" optional:"" help:"Whom to name."`
	Name  *string `arg:"" optional:"" help:"The name."`
	Blank bool    `help:"Take the name away for good; entries keep the id."`
}

// Run names or blanks one, or lists all.
func (c bookPeopleCommand) Run(d *door) error {
	return c.use(d, func(b *stockbook.Book) error {
		switch {
		case c.ID != "" && (c.Name != nil) == c.Blank:
			return errors.New("give the name, or --blank to take it away")
		case c.ID != "" && c.Blank:
			if err := b.Call(c.ID, ""); err != nil {
				return err
			}
		case c.ID != "":
			if err := b.Call(c.ID, *c.Name); err != nil {
				return err
			}
		}
		a, err := b.People()
		if err != nil {
			return err
		}
		return d.answer(a, quantity.Metric)
	})
}

// bookOutCommand writes the book as a folder.
type bookOutCommand struct {
	bookFile
	Folder string `arg:"" help:"Where to; it must not exist, or be empty."`
}

// Run writes it.
func (c bookOutCommand) Run(d *door) error {
	if held, err := os.ReadDir(c.Folder); err == nil && len(held) > 0 {
		return fmt.Errorf("%s is not empty; name a folder that is not there yet", c.Folder)
	}
	return c.use(d, func(b *stockbook.Book) error {
		if err := b.WriteFolder(creator(c.Folder)); err != nil {
			return err
		}
		fmt.Fprintf(d.errs, "the book is in %s; from there it is made again by: eyeup book new FILE --folder %s\n", c.Folder, strings.TrimRight(c.Folder, "/"))
		return nil
	})
}
