package stockbook

import (
	"crypto/rand"
	"errors"
	"fmt"
	"io"
	"time"

	"eyeup/civil"
	"eyeup/internal/book"
	"eyeup/stock"
)

// Book is a stock book lying open: a Ledger that is kept in a file.
type Book struct {
	book   *book.Book
	now    func() time.Time
	writer Writer
}

// Writer is who writes entries, and on what.
type Writer struct {
	Who    string // a person's id; empty where that is not said
	Device string
}

// As returns the same book, in which the entries it makes are those of a writer.
func (s *Book) As(w Writer) *Book {
	own := *s
	own.writer = w
	return &own
}

// New makes an empty book at path.
func New(path string, now func() time.Time) (*Book, error) {
	b, err := book.Create(path, book.Options{Now: now})
	if err != nil {
		return nil, err
	}
	return &Book{book: b, now: now}, nil
}

// Open opens the book at path.
func Open(path string, now func() time.Time) (*Book, error) { return OpenWithCopies(path, "", now) }

// OpenWithCopies opens the book at path, and puts its daily copies into a folder as well, such
// as one on another disk; only beside the book if copies is empty.
func OpenWithCopies(path, copies string, now func() time.Time) (*Book, error) {
	b, err := book.Open(path, book.Options{Now: now, CopiesTo: copies})
	if err != nil {
		return nil, err
	}
	return &Book{book: b, now: now}, nil
}

// Close puts the book down.
func (s *Book) Close() error { return s.book.Close() }

// Warnings tells what is dangerous about where the book lies, and why it is for reading
// only, where it is.
func (s *Book) Warnings() []string {
	told := s.book.Warnings()
	if why := s.book.ReadOnly(); why != nil {
		told = append(told, why.Error())
	}
	return told
}

// Read lets look at what the book comes to. See Ledger.
func (s *Book) Read(look func(*stock.Book)) {
	read := false
	err := s.book.View(func(b *stock.Book) error { look(b); read = true; return nil })
	if err != nil && !read { // what others wrote can't be read now: what was known before can
		look(s.book.Stock())
	}
}

// Append writes entries down; it returns when they are on the disk. See Ledger.
func (s *Book) Append(entries ...stock.Entry) ([]stock.Added, error) {
	answers, err := s.book.Append(entries...)
	if err != nil {
		return nil, err
	}
	added := make([]stock.Added, len(answers))
	for i, a := range answers {
		added[i] = stock.Added{ID: a.ID, Born: a.Born, Notices: a.Notices}
	}
	return added, nil
}

// Entry returns one entry as it was written.
func (s *Book) Entry(id stock.ID) (stock.Entry, error) { return s.book.Entry(id) }

// Kept says where the book lies.
func (s *Book) Kept() string { return s.book.Path() }

// NewEntry makes an entry of today, with an id of its own, of a kind and its body as
// JSON. It fails where the body is not JSON.
func (s *Book) NewEntry(kind string, body []byte) (stock.Entry, error) {
	id, err := stock.NewID(s.now(), rand.Reader)
	if err != nil {
		return stock.Entry{}, err
	}
	return NewEntry(id, kind, civil.Date{}, s.writer, body)
}

// NewEntry makes an entry with an id made beforehand, of a kind, a day (none: that on which it is
// written) and a writer, with its body as JSON. It fails where the body is not JSON.
func NewEntry(id stock.ID, kind string, on civil.Date, by Writer, body []byte) (stock.Entry, error) {
	canonical, err := stock.Canonical(body)
	if err != nil {
		return stock.Entry{}, err
	}
	return stock.Entry{ID: id, Kind: kind, Version: stock.Version(kind), On: on, Who: by.Who, Device: by.Device, Body: canonical}, nil
}

// BookAnswer says what came of one entry that was sent.
type BookAnswer = book.Answer

// AddLines adds entries written as JSON, one a line or several in a list that is one go,
// and calls answer for each when it is on the disk. It stops at the first that is
// refused; what was answered stays.
func (s *Book) AddLines(in io.Reader, answer func(BookAnswer) error) error {
	return book.ReadLines(in, func(one []book.Line) error {
		entries := make([]stock.Entry, len(one))
		for i, l := range one {
			entries[i] = l.Entry
		}
		answers, err := s.book.Append(entries...)
		if err != nil {
			return fmt.Errorf("%w\n  nothing after this line was read; put it right and send all of it again: what is in the book already counts once", err)
		}
		for _, a := range answers {
			if err := answer(a); err != nil {
				return err
			}
		}
		return nil
	})
}

// WriteLog writes all entries, a line of JSON each.
func (s *Book) WriteLog(w io.Writer) error { return s.book.WriteLog(w) }

// ReadLog makes an empty book what a log says, to the same last hash.
func (s *Book) ReadLog(r io.Reader) error { return s.book.ReadLog(r) }

// Undo puts an entry right with nothing; one that itself puts another right is undone by
// what the other said before. Without an id it is the last entry written that still
// counts. It returns the entry undone and the one that does it.
func (s *Book) Undo(id stock.ID) (undone, by stock.Entry, err error) {
	if id.IsZero() {
		if id, err = s.lastCounting(); err != nil {
			return undone, by, err
		}
	}
	if undone, by, err = s.Undoing(id); err != nil {
		return undone, by, err
	}
	_, err = s.Append(by)
	return undone, by, err
}

// Undoing returns an entry and the one that would undo it; nothing is written.
func (s *Book) Undoing(id stock.ID) (undone, by stock.Entry, err error) {
	if undone, err = s.book.Entry(id); err != nil {
		return undone, by, err
	}
	body := fmt.Sprintf(`{"target":%q,"nothing":true}`, id)
	if undone.Kind == PutRight {
		before, err := s.saidBefore(undone)
		if err != nil {
			return undone, by, err
		}
		if before != nil {
			body = fmt.Sprintf(`{"target":%q,"body":%s}`, id, before)
		}
	}
	by, err = s.NewEntry(PutRight, []byte(body))
	by.On = civil.Of(s.now())
	return undone, by, err
}

const PutRight = "put right"

// lastCounting is the last entry written down that has not been put right and counts.
func (s *Book) lastCounting() (id stock.ID, err error) {
	s.Read(func(b *stock.Book) {
		for n := b.Entries() - 1; n >= 0 && id.IsZero(); n-- {
			if head, stands, _ := b.Head(b.Nth(n)); stands && head == b.Nth(n) {
				id = head
			}
		}
	})
	if id.IsZero() {
		return id, errors.New("there is nothing to undo in this book")
	}
	return id, nil
}

// saidBefore returns what an entry that puts another right put aside: the other's body,
// or nil where the other counted for nothing.
func (s *Book) saidBefore(e stock.Entry) ([]byte, error) {
	said, err := ReadPutRight(e)
	if err != nil {
		return nil, err
	}
	target, err := s.book.Entry(said.Target)
	if err != nil {
		return nil, err
	}
	if target.Kind != PutRight {
		return target.Body, nil
	}
	before, err := ReadPutRight(target)
	return before.Body, err
}
