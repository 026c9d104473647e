package book

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"os"
	"slices"
	"strings"

	"github.com/ncruces/go-sqlite3"

	"eyeup/stock"
)

// Report is the result of a check.
type Report struct {
	ID      stock.ID
	Entries int64
	Lots    int
	Head    [32]byte
	Wrong   []string // what is not whole; nothing, where the book is
	Notices []string // what the grower may want to know beside

	Journal *JournalReport // nil where there is none
	Copies  []CopyReport   // the daily copies, those that hold most first

	first      stock.ID // of the first entry
	walDamaged string   // what is wrong with the write-ahead log; empty where nothing is
}

// Whole reports whether the check found nothing wrong.
func (r *Report) Whole() bool { return len(r.Wrong) == 0 }

func (r *Report) wrong(format string, args ...any) {
	r.Wrong = append(r.Wrong, fmt.Sprintf(format, args...))
}

// Check checks the book at path from the first entry on, without trusting anything in it:
// every page, every hash of the chain, the form of every entry, the counts, the snapshot, the
// papers and the last daily copy. It returns an error if the check itself could not be made.
func Check(path string, o Options) (*Report, error) {
	r := &Report{}
	o.ReadOnly, o.NoCopies = true, true
	if err := sniff(path); err != nil {
		if errors.Is(err, errHalfCopied) || errors.Is(err, ErrNotABook) && isThere(path) {
			r.wrong("%v", err)
			return r, nil
		}
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	b, err := connectBest(path, o)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, plain(err))
	}
	defer b.conn.Close()
	r.checkAlone(b)
	r.checkWAL(b)
	r.checkJournal(b)
	r.checkCopies(b)
	r.Notices = append(r.Notices, whereItLies(path)...)
	return r, nil
}

// checkAlone checks the file at path by itself, without journal and copies.
func checkAlone(path string, o Options) (*Report, error) {
	r := &Report{}
	if err := sniff(path); err != nil {
		return r, err
	}
	b, err := connectBest(path, o)
	if err != nil {
		return r, err
	}
	defer b.conn.Close()
	r.checkAlone(b)
	return r, nil
}

func (r *Report) checkAlone(b *Book) {
	r.checkPages(b)
	r.checkForm(b)
	r.checkEntries(b)
	r.checkSnapshot(b)
	r.checkPapers(b)
	if err := b.identify(); err != nil {
		r.wrong("the book's id can't be read: %v", plain(err))
	}
	r.ID = b.id
}

// checkPages has SQLite check the structure and the checksum of every page.
func (r *Report) checkPages(b *Book) {
	r.ask(b, "pragma integrity_check(5)", func(s *sqlite3.Stmt) {
		if says := s.ColumnText(0); says != "ok" {
			r.wrong("the file: %s", says)
		}
	})
}

// ask runs a query and reports a failure as damage to the book.
func (r *Report) ask(b *Book, sql string, row func(*sqlite3.Stmt)) {
	s, _, err := b.conn.Prepare(sql)
	if err == nil {
		for s.Step() {
			row(s)
		}
		err = errors.Join(s.Err(), s.Close())
	}
	if err != nil {
		r.wrong("%v", plain(err))
	}
}

// checkForm checks that the triggers that protect the entries exist.
func (r *Report) checkForm(b *Book) {
	missing := []string{"entries_are_never_changed", "entries_are_never_deleted", "entries_only_follow"}
	r.ask(b, "select name from sqlite_schema where type = 'trigger'", func(s *sqlite3.Stmt) {
		missing = slices.DeleteFunc(missing, func(m string) bool { return m == s.ColumnText(0) })
	})
	if len(missing) > 0 {
		r.wrong("triggers that protect the entries are missing: %s", strings.Join(missing, ", "))
	}
}

// checkEntries follows the hash chain and rebuilds the state from the entries.
func (r *Report) checkEntries(b *Book) {
	s, _, err := b.conn.Prepare(rowsAfter)
	if err != nil {
		r.wrong("the entries can't be read: %v", plain(err))
		return
	}
	defer s.Close()
	folds := true
	err = eachAfter(s, 0, func(row *row) error {
		if err := row.follows(r.Entries, r.Head); err != nil {
			return err
		}
		if row.sequence == 1 {
			r.first = row.entry.ID
		}
		if canonical, err := stock.Canonical(row.entry.Body); err != nil || string(canonical) != string(row.entry.Body) {
			return fmt.Errorf("entry %d: its body is not in canonical form", row.sequence)
		}
		if folds {
			if err := b.stock.Replay(row.entry); err != nil {
				folds = false
				r.wrong("entry %d: %v", row.sequence, err)
			}
		}
		r.Entries, r.Head = row.sequence, row.hash
		return nil
	})
	if err != nil {
		r.wrong("%v; what comes after entry %d is in doubt", plain(err), r.Entries)
	}
	r.Lots = len(b.stock.Lots())
}

// checkSnapshot checks that the snapshot, if there is one, agrees with the entries.
func (r *Report) checkSnapshot(b *Book) {
	folded := b.stock
	if err := b.loadSnapshot(); err != nil {
		r.wrong("the snapshot: %v", plain(err))
		return
	}
	if b.snapped == 0 {
		return
	}
	s, _, err := b.conn.Prepare(rowsAfter)
	if err == nil {
		defer s.Close()
		err = eachAfter(s, b.sequence, b.take)
	}
	if err != nil {
		return // checkEntries reports it
	}
	if !slices.EqualFunc(folded.Lots(), b.stock.Lots(), sameLot) {
		r.wrong("the snapshot's counts differ from those of the entries; restore the book with: eyeup restore")
	}
}

// sameLot reports whether two lots are equal and stand in the same spots.
func sameLot(a, b stock.Lot) bool {
	return a.ID == b.ID && a.Code == b.Code && a.Name() == b.Name() && slices.Equal(a.Standing, b.Standing)
}

func (r *Report) checkPapers(b *Book) {
	r.ask(b, "select hash, content from papers", func(s *sqlite3.Stmt) {
		content, err := unpack(s.ColumnRawBlob(1))
		if sum := sha256.Sum256(content); err != nil || string(sum[:]) != string(s.ColumnRawBlob(0)) {
			r.wrong("the paper with hash %x is damaged", s.ColumnRawBlob(0))
		}
	})
}

func (b *Book) hashOf(sequence int64) (h hash, err error) {
	if sequence == 0 {
		return h, nil
	}
	s, _, err := b.conn.Prepare("select hash from entries where sequence = ?")
	if err != nil {
		return h, err
	}
	defer s.Close()
	if err := s.BindInt64(1, sequence); err != nil {
		return h, err
	}
	if !s.Step() {
		return h, errors.Join(s.Err(), os.ErrNotExist)
	}
	copy(h[:], s.ColumnRawBlob(0))
	return h, nil
}
