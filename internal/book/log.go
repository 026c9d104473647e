package book

import (
	"bufio"
	"bytes"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"strconv"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"eyeup/stock"
)

// WriteLog writes a line with the book's id, then all entries, a line of JSON each, in the
// order they were written down: the entry itself, with its sequence and hash. ReadLog
// makes the same book of it.
func (b *Book) WriteLog(w io.Writer) error {
	b.mu.Lock()
	defer b.mu.Unlock()
	s, _, err := b.conn.Prepare(rowsAfter)
	if err != nil {
		return plain(err)
	}
	defer s.Close()
	out := bufio.NewWriter(w)
	if _, err := out.Write(idLine(b.id)); err != nil {
		return err
	}
	err = eachAfter(s, 0, func(r *row) error { _, err := out.Write(r.line()); return err })
	if err == nil {
		err = out.Flush()
	}
	return plain(err)
}

// line returns the row as a line of the log: its canonical bytes with sequence and hash added
// in front.
func (r *row) line() []byte {
	var b []byte
	b = append(b, `{"sequence":`...)
	b = strconv.AppendInt(b, r.sequence, 10)
	b = append(b, `,"hash":"`...)
	b = hex.AppendEncode(b, r.hash[:])
	b = append(b, `",`...)
	b = append(b, r.entry.Canonical()[1:]...)
	return append(b, '\n')
}

// maxLine is the longest line of a log, in bytes.
const maxLine = 4 << 20

// Line is one entry read from a log or written by hand. Sequence and Hash are empty if the
// line does not give them.
type Line struct {
	Number   int // of the line, from 1
	Sequence int64
	Hash     string
	Entry    stock.Entry
}

// ReadLines reads entries, one JSON object or one list of them on each line, and calls f with
// the entries of each line, which form one batch. Empty lines, and the first line of a log, which
// names its book, are skipped. An error names the
// line.
func ReadLines(r io.Reader, f func(one []Line) error) error {
	in := bufio.NewScanner(r)
	in.Buffer(make([]byte, 64<<10), maxLine)
	n := 0
	for in.Scan() {
		n++
		text := bytes.TrimSpace(bytes.TrimPrefix(in.Bytes(), []byte("\ufeff")))
		if _, first := isIDLine(text); first && n == 1 || len(text) == 0 {
			continue
		}
		lines, err := readLine(n, text)
		if err == nil {
			err = f(lines)
		}
		if err != nil {
			return fmt.Errorf("line %d: %w", n, err)
		}
	}
	if errors.Is(in.Err(), bufio.ErrTooLong) {
		return fmt.Errorf("line %d: longer than %d MB; write one entry on each line", n+1, maxLine>>20)
	}
	return in.Err()
}

func readLine(n int, text []byte) ([]Line, error) {
	parts := []jsontext.Value{text}
	if text[0] == '[' {
		parts = nil
		if err := json.Unmarshal(text, &parts); err != nil {
			return nil, fmt.Errorf("this is not JSON: %w", err)
		}
	}
	var all []Line
	for _, part := range parts {
		l, err := readOne(part)
		if err != nil {
			return nil, err
		}
		l.Number = n
		all = append(all, l)
	}
	return all, nil
}

// readOne reads an entry, with or without the members that a log adds.
func readOne(text jsontext.Value) (Line, error) {
	var l Line
	if bytes.HasPrefix(text, []byte(`{"sequence":`)) {
		var added struct {
			Sequence int64          `json:"sequence"`
			Hash     string         `json:"hash"`
			Rest     jsontext.Value `json:",inline"`
		}
		if err := json.Unmarshal(text, &added); err != nil {
			return l, fmt.Errorf("this is not JSON: %w", err)
		}
		l.Sequence, l.Hash, text = added.Sequence, added.Hash, added.Rest
	}
	e, err := stock.ReadEntry(text)
	l.Entry = e
	return l, err
}

// ReadLog adds the entries of a log to an empty book as one batch. If the log gives hashes,
// they must match the computed ones.
func (b *Book) ReadLog(r io.Reader) error {
	if b.why != nil {
		return b.why
	}
	if n, _ := b.Head(); n > 0 {
		return fmt.Errorf("the book already has %d entries; read the log into a new book", n)
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	tx, err := b.conn.BeginImmediate()
	if err != nil {
		return plain(err)
	}
	in := bufio.NewReader(r)
	b.id = stock.ID{} // that of the log
	if first, _ := in.Peek(len(idLine(stock.ID{}))); len(first) > 0 {
		if id, is := isIDLine(first); is {
			err = b.takeID(id)
		}
	}
	if err == nil {
		err = ReadLines(in, b.takeLines)
	}
	if err == nil && b.journal != nil {
		err = b.beginJournal("")
	}
	if err == nil {
		err = tx.Commit()
	}
	if err != nil {
		_ = tx.Rollback()
		b.stock, b.sequence, b.head = stock.New(), 0, hash{}
		return errors.Join(plain(err), b.identify())
	}
	return nil
}

func (b *Book) takeLines(lines []Line) error {
	for _, l := range lines {
		if l.Entry.Written.IsZero() {
			return errors.New("an entry of the log lacks its time of writing (written); to add entries that are not from a log run: eyeup book add")
		}
		r := row{b.sequence + 1, l.Entry, chain(b.head, l.Entry.Canonical())}
		if l.Hash != "" && l.Hash != hex.EncodeToString(r.hash[:]) {
			return fmt.Errorf("%w: the entry of %s was changed, or one before it is missing", ErrChain, l.Entry.On)
		}
		if b.id.IsZero() { // a log of the first form names no book
			if err := b.takeID(idOf(r.hash)); err != nil {
				return err
			}
		}
		if err := b.take(&r); err != nil {
			return err
		}
		if err := errors.Join(b.fill(&r), b.insert.Exec()); err != nil {
			return err
		}
	}
	return nil
}
