package book

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"time"

	"github.com/ncruces/go-sqlite3"

	"eyeup/civil"
	"eyeup/stock"
)

// hash is the SHA-256 of the previous hash and an entry's canonical bytes. Before the first
// entry it is all zeros.
type hash = [32]byte

// chain returns the hash of an entry that follows the given hash.
func chain(before hash, canonical []byte) hash {
	return sha256.Sum256(append(before[:], canonical...))
}

// row is an entry as it stands in the file.
type row struct {
	sequence int64
	entry    stock.Entry
	hash     hash
}

const (
	columns   = `sequence, id, kind, version, "on", at, written, offset, who, device, body, hash`
	insertRow = `insert into entries (` + columns + `) values (?,?,?,?,?,?,?,?,?,?,?,?)`
	rowsAfter = `select ` + columns + ` from entries where sequence > ? order by sequence`
	rowByID   = `select ` + columns + ` from entries where id = ?`
)

// ErrChain is returned when an entry's hash does not follow from the previous one and the
// entry's content: an entry was changed or is missing.
var ErrChain = errors.New("the chain of entries is broken")

func (b *Book) prepare() error {
	var err error
	if b.newer, _, err = b.conn.Prepare(rowsAfter); err == nil && b.why == nil {
		b.insert, _, err = b.conn.Prepare(insertRow)
	}
	return err
}

// readRow reads the current row of a statement.
func readRow(s *sqlite3.Stmt) (row, error) {
	r := row{sequence: s.ColumnInt64(0)}
	copy(r.entry.ID[:], s.ColumnRawBlob(1))
	r.entry.Kind = s.ColumnText(2)
	r.entry.Version = s.ColumnInt(3)
	on, err := civil.Parse(s.ColumnText(4))
	if err != nil {
		return r, fmt.Errorf("entry %d: %w", r.sequence, err)
	}
	r.entry.On = on
	r.entry.At = s.ColumnText(5)
	if w := s.ColumnText(6); w != "" {
		if r.entry.Written, err = time.Parse(time.RFC3339, w); err != nil {
			return r, fmt.Errorf("entry %d: written: %w", r.sequence, err)
		}
	}
	r.entry.Offset, r.entry.Who, r.entry.Device = s.ColumnText(7), s.ColumnText(8), s.ColumnText(9)
	r.entry.Body = bytes.Clone(s.ColumnRawText(10))
	copy(r.hash[:], s.ColumnRawBlob(11))
	return r, s.Err()
}

// follows returns an error unless the row follows the given sequence and hash.
func (r *row) follows(sequence int64, head hash) error {
	if r.sequence != sequence+1 || chain(head, r.entry.Canonical()) != r.hash {
		return fmt.Errorf("entry %d of %s: %w", r.sequence, r.entry.On, ErrChain)
	}
	return nil
}

// eachAfter calls f for each row after a sequence.
func eachAfter(s *sqlite3.Stmt, sequence int64, f func(*row) error) error {
	defer s.Reset()
	if err := s.BindInt64(1, sequence); err != nil {
		return err
	}
	for s.Step() {
		r, err := readRow(s)
		if err == nil {
			err = f(&r)
		}
		if err != nil {
			return err
		}
	}
	return s.Err()
}

// take applies a row of the file to the state in memory.
func (b *Book) take(r *row) error {
	if err := r.follows(b.sequence, b.head); err != nil {
		return err
	}
	if err := b.stock.Replay(r.entry); err != nil {
		return fmt.Errorf("entry %d: %w", r.sequence, err)
	}
	b.sequence, b.head = r.sequence, r.hash
	return nil
}

// catchUp applies what other programs have written since. An entry of a kind unknown to this
// program makes the book read-only; reading goes on.
func (b *Book) catchUp() error {
	if b.newer == nil || errorsAsNewer(b.why) {
		return nil
	}
	err := eachAfter(b.newer, b.sequence, b.take)
	if errorsAsNewer(err) {
		b.why = fmt.Errorf("%w, and counts only what was written before entry %d: %w", ErrReadOnly, b.sequence+1, err)
		return nil
	}
	return err
}

func errorsAsNewer(err error) bool {
	var n *stock.Newer
	return errors.As(err, &n)
}

// fill binds a row's values to the insert statement.
func (b *Book) fill(r *row) error {
	e, s := &r.entry, b.insert
	written := ""
	if !e.Written.IsZero() {
		written = e.Written.UTC().Format(time.RFC3339)
	}
	return errors.Join(
		s.BindInt64(1, r.sequence), s.BindBlob(2, e.ID[:]), s.BindText(3, e.Kind), s.BindInt(4, e.Version),
		s.BindText(5, e.On.String()), s.BindText(6, e.At), s.BindText(7, written), s.BindText(8, e.Offset),
		s.BindText(9, e.Who), s.BindText(10, e.Device), s.BindRawText(11, e.Body), s.BindBlob(12, r.hash[:]),
	)
}
