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

// Book is an open stock book, kept in a file.
type Book struct {
	book   *book.Book
	now    func() time.Time
	writer Writer
}

// Writer is the person who writes entries, and the device they use.
type Writer struct {
	Who    string // a person's id; empty if not given
	Device string
}

// As returns the same book, which marks the entries it makes with a writer.
func (s *Book) As(w Writer) *Book {
	own := *s
	own.writer = w
	return &own
}

// New makes an empty book at path. It fails if there is a file already.
func New(path string, now func() time.Time) (*Book, error) {
	b, err := book.Create(path, book.Options{Now: now})
	if err != nil {
		return nil, err
	}
	return &Book{book: b, now: now}, nil
}

// Open opens the book at path. now is the clock that dates entries.
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

// Close closes the book's file.
func (s *Book) Close() error { return s.book.Close() }

// Warnings says what is dangerous about the folder that the book is in, and why the book can only be
// read, if that is so.
func (s *Book) Warnings() []string {
	warnings := s.book.Warnings()
	if why := s.book.ReadOnly(); why != nil {
		warnings = append(warnings, why.Error())
	}
	return warnings
}

// Read calls look with the stock that the book's entries add up to. look must not keep it.
func (s *Book) Read(look func(*stock.Book)) {
	read := false
	err := s.book.View(func(b *stock.Book) error { look(b); read = true; return nil })
	if err != nil && !read { // new entries of other programs can't be read; show the stock known before
		look(s.book.Stock())
	}
}

// Append writes entries, all or none, and returns when they are on the disk.
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

// Kept returns the path of the book's file.
func (s *Book) Kept() string { return s.book.Path() }

// NewEntry makes an entry of a kind from its body as JSON, with a new id and the book's writer. It has
// no day, which means the day on which it is appended. It fails if the body is not JSON.
func (s *Book) NewEntry(kind string, body []byte) (stock.Entry, error) {
	id, err := stock.NewID(s.now(), rand.Reader)
	if err != nil {
		return stock.Entry{}, err
	}
	return NewEntry(id, kind, civil.Date{}, s.writer, body)
}

// NewEntry makes an entry with an id made beforehand. on is its day; the zero date means the day on which
// it is appended. It fails if the body is not JSON.
func NewEntry(id stock.ID, kind string, on civil.Date, by Writer, body []byte) (stock.Entry, error) {
	canonical, err := stock.Canonical(body)
	if err != nil {
		return stock.Entry{}, err
	}
	return stock.Entry{ID: id, Kind: kind, Version: stock.Version(kind), On: on, Who: by.Who, Device: by.Device, Body: canonical}, nil
}

// BookAnswer says what became of one entry of AddLines.
type BookAnswer = book.Answer

// AddLines adds entries written as JSON: one to a line, or a list to a line, which is added all or none.
// It calls answer for each entry that is on the disk. It stops at the first line that is refused; the
// lines before it stay in the book.
func (s *Book) AddLines(in io.Reader, answer func(BookAnswer) error) error {
	return book.ReadLines(in, func(one []book.Line) error {
		entries := make([]stock.Entry, len(one))
		for i, l := range one {
			entries[i] = l.Entry
		}
		answers, err := s.book.Append(entries...)
		if err != nil {
			return fmt.Errorf("%w\n  no line after this one was read; correct it and send everything again: entries already in the book are not added twice", err)
		}
		for _, a := range answers {
			if err := answer(a); err != nil {
				return err
			}
		}
		return nil
	})
}

// WriteLog writes all entries, each as a line of JSON.
func (s *Book) WriteLog(w io.Writer) error { return s.book.WriteLog(w) }

// ReadLog fills an empty book from a log, up to the same last hash.
func (s *Book) ReadLog(r io.Reader) error { return s.book.ReadLog(r) }

// Undo undoes an entry by writing a correction ("put right") that leaves nothing of it. Undoing a
// correction restores what it corrected. The zero id means the last entry in force. Undo returns the
// entry undone and the correction.
func (s *Book) Undo(id stock.ID) (undone, by stock.Entry, err error) {
	if id.IsZero() {
		if id, err = s.lastInForce(); err != nil {
			return undone, by, err
		}
	}
	if undone, by, err = s.Undoing(id); err != nil {
		return undone, by, err
	}
	_, err = s.Append(by)
	return undone, by, err
}

// Undoing returns an entry and the correction that would undo it. It writes nothing.
func (s *Book) Undoing(id stock.ID) (undone, by stock.Entry, err error) {
	if undone, err = s.book.Entry(id); err != nil {
		return undone, by, err
	}
	body := fmt.Sprintf(`{"target":%q,"nothing":true}`, id)
	if undone.Kind == PutRight {
		before, err := s.bodyBefore(undone)
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

// PutRight is the kind of an entry that corrects another.
const PutRight = "put right"

// lastInForce returns the last entry that is in force and was not corrected.
func (s *Book) lastInForce() (id stock.ID, err error) {
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

// bodyBefore returns the body that a correction replaced, or nil if the entry it corrected was undone.
func (s *Book) bodyBefore(e stock.Entry) ([]byte, error) {
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
