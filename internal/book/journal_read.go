package book

import (
	"bufio"
	"bytes"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"eyeup/civil"
	"eyeup/stock"
)

// errNoTail is returned for a journal whose last whole line can't be read.
var errNoTail = errors.New("its last line can't be read")

// readTail finds the last whole line of the journal. A line without an end was cut off
// while it was written; the next write replaces it.
func (j *journal) readTail() error {
	j.size, j.sequence, j.head = 0, 0, hash{}
	info, err := j.file.Stat()
	if err != nil {
		return err
	}
	for length := int64(64 << 10); ; length *= 4 {
		from := max(0, info.Size()-length)
		tail := make([]byte, info.Size()-from)
		if _, err := j.file.ReadAt(tail, from); err != nil && !errors.Is(err, io.EOF) {
			return err
		}
		end := bytes.LastIndexByte(tail, '\n') + 1
		begin := bytes.LastIndexByte(tail[:max(0, end-1)], '\n') + 1
		switch {
		case end > 0 && (begin > 0 || from == 0):
			j.size = from + int64(end)
			return j.readLast(tail[begin:end])
		case from == 0:
			return nil // no whole line
		case length > maxLine:
			return errNoTail
		}
	}
}

// readLast reads the last line of the journal.
func (j *journal) readLast(line []byte) error {
	if _, is := isIDLine(line); is {
		return nil
	}
	l, err := readOne(bytes.TrimSpace(line))
	if err != nil || l.Sequence == 0 {
		return errNoTail
	}
	sum, err := hex.DecodeString(l.Hash)
	if err != nil || len(sum) != len(j.head) {
		return errNoTail
	}
	j.sequence = l.Sequence
	copy(j.head[:], sum)
	return nil
}

// readID reads the book's id from the journal's first line.
func (j *journal) readID() (stock.ID, error) {
	first := make([]byte, len(idLine(stock.ID{})))
	if _, err := j.file.ReadAt(first, 0); err != nil {
		return stock.ID{}, err
	}
	id, is := isIDLine(first)
	if !is {
		return id, errors.New("the journal does not begin with the id of a book")
	}
	return id, nil
}

// completeFromJournal takes into the book the entries that the journal has beyond it, as
// far as they follow from the book's last. The book's lock is held.
func (b *Book) completeFromJournal() error {
	before := b.sequence
	s := span{after: b.sequence, head: b.head}
	err := s.read(io.NewSectionReader(b.journal.file, 0, b.journal.size), func(r *row) error {
		if err := b.take(r); err != nil {
			return err
		}
		return errors.Join(b.fill(r), b.insert.Exec())
	})
	if err != nil {
		b.stock, b.sequence, b.head = stock.New(), 0, hash{} // what was taken is rolled back
		return fmt.Errorf("the journal holds entries that can't be taken into the book: %w", err)
	}
	if n := b.sequence - before; n > 0 {
		b.notices = append(b.notices, fmt.Sprintf("%d entries that the book lacked were taken from its journal", n))
	}
	if n := len(s.loose); n > 0 {
		b.notices = append(b.notices, fmt.Sprintf("%d entries stand behind a damaged line of the journal, and have lost their place in the book; see: eyeup restore %s", n, b.path))
	}
	return nil
}

// span is the part of a log that follows an entry.
type span struct {
	after  int64 // the sequence of that entry
	head   hash  // its hash
	broken int   // the first line that can't be read or does not follow; 0 where there is none
	last   int64 // the highest sequence that any line names
	loose  []looseLine
}

// looseLine is an entry that a log holds behind a broken line.
type looseLine struct {
	sequence int64
	text     []byte
}

// read calls take for each entry after the span's beginning that follows from the one
// before it. Lines behind a broken one are kept as loose; its error is take's.
func (s *span) read(in io.Reader, take func(*row) error) error {
	sequence, head := s.after, s.head
	n := 0
	return eachLine(in, func(text []byte) error {
		n++
		if _, is := isIDLine(text); is {
			return nil
		}
		l, err := readOne(bytes.TrimSpace(text))
		if err == nil && l.Sequence > 0 && l.Sequence <= s.after {
			if l.Sequence == s.after && l.Hash != hex.EncodeToString(s.head[:]) {
				s.broken = n
			}
			return nil
		}
		r := row{l.Sequence, l.Entry, hash{}}
		if err == nil {
			r.hash = chain(head, l.Entry.Canonical())
			s.last = max(s.last, l.Sequence)
		}
		if s.broken > 0 || err != nil || l.Sequence != sequence+1 || l.Hash != hex.EncodeToString(r.hash[:]) {
			if s.broken == 0 {
				s.broken = n
			}
			if err == nil {
				s.loose = append(s.loose, looseLine{l.Sequence, bytes.Clone(text)})
			}
			return nil
		}
		sequence, head = r.sequence, r.hash
		return take(&r)
	})
}

// eachLine calls f with each line of a text; the last may lack its end.
func eachLine(in io.Reader, f func(line []byte) error) error {
	lines := bufio.NewReaderSize(in, 1<<20)
	for {
		line, err := lines.ReadBytes('\n')
		if len(bytes.TrimSpace(line)) > 0 {
			if err := f(line); err != nil {
				return err
			}
		}
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return err
		}
	}
}

// JournalReport is what a check found of a journal.
type JournalReport struct {
	Entries int64 // that follow from the first on, without a break
	Whole   bool  // every line can be read and follows from the one before it
	id      stock.ID
	head    hash
	loose   []looseLine
	highest int64 // the highest sequence that any line names
	days    map[int64]civil.Date
	hashes  map[int64]hash
}

// readJournal reads the journal of the book at path; nil where there is none. What was
// being written just now may lack its end: that does no harm.
func readJournal(path string) (*JournalReport, error) {
	f, err := os.Open(path + journalSuffix)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, plainFile(err)
	}
	defer f.Close()
	j := &journal{file: f, path: f.Name()}
	if err := j.readTail(); err != nil && !errors.Is(err, errNoTail) {
		return nil, err
	}
	r := &JournalReport{days: map[int64]civil.Date{}, hashes: map[int64]hash{}}
	var noID error
	r.id, noID = j.readID()
	var s span
	err = s.read(io.NewSectionReader(f, 0, j.size), func(row *row) error {
		r.Entries, r.head = row.sequence, row.hash
		r.days[row.sequence], r.hashes[row.sequence] = row.entry.On, row.hash
		return nil
	})
	r.Whole = err == nil && noID == nil && s.broken == 0
	r.loose, r.highest = s.loose, s.last
	return r, err
}

// mendJournal begins the journal anew where a line of it is damaged: the book has all that
// it held.
func (b *Book) mendJournal() error {
	r, err := readJournal(b.path)
	if err != nil || r == nil || r.Whole {
		return err
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.conn == nil || b.journal == nil || r.highest > b.sequence {
		return nil
	}
	tx, err := b.conn.BeginImmediate()
	if err != nil {
		return err
	}
	defer tx.End(&err)
	if err = b.catchUp(); err != nil {
		return err
	}
	return b.beginJournal("a line of it is damaged")
}
