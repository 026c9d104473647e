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
	New     bookNewCommand     `cmd:"" help:"Make a new book: empty, from a garden folder, or invented."`
	Add     bookAddCommand     `cmd:"" help:"Write down what happened."`
	Undo    bookUndoCommand    `cmd:"" help:"Undo an entry, or undo an undoing."`
	Lots    bookLotsCommand    `cmd:"" help:"List what stands where."`
	Lot     bookLotCommand     `cmd:"" help:"Show one lot: what is left of it, and its history."`
	Kin     bookKinCommand     `cmd:"" help:"List the kin of a lot: lots that came from it, that it came from, and that touched it."`
	Outlook bookOutlookCommand `cmd:"" help:"Predict how many good divisions of each variety there will be on a date."`
	Log     bookLogCommand     `cmd:"" help:"Print all entries, each as a line of JSON."`
	People  bookPeopleCommand  `cmd:"" help:"Name the people whose ids stand in entries, or remove a name."`
	Out     bookOutCommand     `cmd:"" help:"Write the book as a folder, from which the same book can be made again."`
}

// bookFile names a book.
type bookFile struct {
	Book string `arg:"" placeholder:"FILE" help:"The file of the book."`
}

// use opens the book, calls do with it, and closes it.
func (f bookFile) use(d *door, do func(*stockbook.Book) error) error {
	return f.useWithCopies(d, "", do)
}

// useWithCopies does so, and puts the daily copies into a folder as well.
func (f bookFile) useWithCopies(d *door, copies string, do func(*stockbook.Book) error) error {
	b, err := stockbook.OpenWithCopies(f.Book, copies, d.now)
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
	Folder string `placeholder:"FOLDER" type:"existingdir" help:"Make it from this garden folder: from its log.jsonl, or from its stock if there is no log."`
	Demo   bool   `help:"Fill it with the invented garden and three years of history."`
}

// Run makes the book.
func (c bookNewCommand) Run(d *door) error {
	if c.Demo && c.Folder != "" {
		return errors.New("--demo and --folder each fill the book, so give one of the two")
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
	Entry string `arg:"" optional:"" help:"The id of the entry. If not given, the last entry that is not undone."`
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
		fmt.Fprintf(d.out, "undone: %s of %s (entry %s). To bring it back, undo %s\n", undone.Kind, undone.On, undone.ID, by.ID)
		return nil
	})
}

// bookLotsCommand lists what stands.
type bookLotsCommand struct{ bookFile }

// Run lists it.
func (c bookLotsCommand) Run(d *door) error {
	return c.use(d, func(b *stockbook.Book) error { return d.answer(b.Lots(), quantity.Metric) })
}

// bookLotCommand shows one lot.
type bookLotCommand struct {
	bookFile
	Code string `arg:"" help:"The code on the label of the lot, or its id."`
}

// Run shows it.
func (c bookLotCommand) Run(d *door) error {
	return c.use(d, func(b *stockbook.Book) error {
		a, err := b.Lot(c.Code)
		if err != nil {
			return err
		}
		return d.answer(a, quantity.Metric)
	})
}

// bookKinCommand lists the kin of a lot.
type bookKinCommand struct {
	bookFile
	Code string `arg:"" help:"The code on the label of the lot, or its id."`
}

// Run lists them.
func (c bookKinCommand) Run(d *door) error {
	return c.use(d, func(b *stockbook.Book) error {
		a, err := b.Kin(c.Code)
		if err != nil {
			return err
		}
		return d.answer(a, quantity.Metric)
	})
}

// bookOutlookCommand predicts how many good divisions there will be.
type bookOutlookCommand struct {
	bookFile
	At string `required:"" placeholder:"DATE" help:"The date, such as the day you will divide."`
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
	ID    string  `arg:"" optional:"" help:"The id of the person."`
	Name  *string `arg:"" optional:"" help:"The name of the person."`
	Blank bool    `help:"Remove the name for good. Entries keep the id."`
}

// Run names or blanks one, or lists all.
func (c bookPeopleCommand) Run(d *door) error {
	return c.use(d, func(b *stockbook.Book) error {
		switch {
		case c.ID != "" && (c.Name != nil) == c.Blank:
			return errors.New("give a name after the id, or --blank to remove the name")
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
	Folder string `arg:"" help:"The folder to write. It must be empty or not exist yet."`
}

// Run writes it.
func (c bookOutCommand) Run(d *door) error {
	if held, err := os.ReadDir(c.Folder); err == nil && len(held) > 0 {
		return fmt.Errorf("%s is not empty. Name a folder that does not exist yet", c.Folder)
	}
	return c.use(d, func(b *stockbook.Book) error {
		if err := b.WriteFolder(creator(c.Folder)); err != nil {
			return err
		}
		fmt.Fprintf(d.errs, "the book is in %s. To make a book from it: eyeup book new FILE --folder %s\n", c.Folder, strings.TrimRight(c.Folder, "/"))
		return nil
	})
}
