package book

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"os"
	"slices"

	"eyeup/civil"
	"eyeup/stock"
)

// Restored is the result of restoring a book.
type Restored struct {
	From    Copy      // the copy that was taken; its path is empty where none was
	Aside   string    // where the damaged book lies now; empty where there was none
	Saved   int       // entries beyond the copy that were saved from journal and damaged book
	Entries int64     // in the book now
	Missing []Missing // entries that are known to have been written, and could not be brought back
	Loose   string    // the file that holds those of them that can still be read; empty where none can
}

// Missing is an entry that was lost.
type Missing struct {
	Sequence int64
	On       civil.Date // the day of the entry; zero where it can't be read any more
}

// Restore puts a whole copy in the place of the book at path: the copy at from, or, where
// that is empty, the daily copy of this book that holds most entries. What journal and
// damaged book hold beyond the copy is saved, as far as the chain can be followed; what is
// missing is told. The damaged book is laid aside, never deleted. It returns ErrOpen while
// a program has the book open.
func Restore(path, from string, o Options) (*Restored, error) {
	if o.Now == nil {
		return nil, errors.New("restoring needs a clock")
	}
	free, err := takeAlone(path)
	if err != nil {
		return nil, err
	}
	defer free()
	o.NoCopies, o.noJournal = true, true
	s, err := startSalvage(path, from, o)
	if err != nil {
		return nil, err
	}
	fresh := path + ".restored"
	if err := s.rebuild(fresh); err != nil {
		removeAll(fresh)
		return nil, err
	}
	r := &Restored{From: s.chosen, Saved: s.saved, Missing: s.missing}
	if r.Loose, err = s.writeLoose(); err != nil {
		return nil, err
	}
	if r.Aside, err = layAside(path, o); err != nil {
		removeAll(fresh)
		return nil, err
	}
	if err := renameFile(fresh, path); err != nil {
		return nil, fmt.Errorf("the restored book is at %s but can't be renamed to its place: %w", fresh, plainFile(err))
	}
	removeAll(fresh)
	report, err := checkAlone(path, o)
	if err != nil {
		return nil, err
	}
	r.Entries = report.Entries
	if !report.Whole() {
		return r, fmt.Errorf("the restored book is damaged too: %s", report.Wrong[0])
	}
	return r, nil
}

// startSalvage looks for all that a book can be restored from.
func startSalvage(path, from string, o Options) (*salvage, error) {
	s := &salvage{path: path, options: o}
	s.journal, _ = readJournal(path) // one that can't be read helps nobody
	if d, err := connectBest(path, readOnly(o)); err == nil {
		s.damaged = d
		if id, err := d.storedID(); err == nil {
			s.id = id
		}
	}
	if s.journal != nil && s.id.IsZero() {
		s.id = s.journal.id
	}
	if from != "" {
		s.chosen = Copy{Path: from}
		if r, err := checkAlone(from, still(o)); err != nil || !r.Whole() {
			s.close()
			return nil, fmt.Errorf("the copy %s is not whole; give another by: eyeup restore --from", from)
		}
		return s, nil
	}
	err := s.choose()
	if err != nil {
		s.close()
	}
	return s, err
}

// choose takes the copy of this book that holds most entries, whatever day its name says.
func (s *salvage) choose() error {
	copies, err := CheckCopies(s.path, s.options)
	if err != nil {
		return err
	}
	found, others := len(copies), 0
	raw := s.rawBytes()
	copies = slices.DeleteFunc(copies, func(c CopyReport) bool {
		other := c.Whole && !s.isCopyOf(c, raw)
		if other {
			others++
		}
		return !c.Whole || other
	})
	if len(copies) > 0 && slices.ContainsFunc(copies, func(c CopyReport) bool { return c.ID != copies[0].ID }) {
		return errors.New("the daily copies are of more than one book, and the damaged one does not say which it is; name the copy by: eyeup restore --from")
	}
	if len(copies) > 0 {
		s.chosen = Copy{copies[0].Path, copies[0].Made}
		return nil
	}
	if s.journal != nil && s.journal.Entries > 0 {
		return nil // the journal alone makes the book anew
	}
	switch {
	case found == 0:
		return fmt.Errorf("there is no daily copy in %s, and no journal; a folder with a log makes the book anew by: eyeup book new --folder", s.path+copiesSuffix)
	case others > 0:
		return fmt.Errorf("the copies in %s are of another book than this one; look for copies of this one on other disks, and give one by: eyeup restore --from", s.path+copiesSuffix)
	}
	return errors.New("no copy is whole; look for another on other disks, and give it by: eyeup restore --from")
}

// rawBytes are the bytes of the damaged file and its write-ahead log, as they stand there.
func (s *salvage) rawBytes() []byte {
	file, _ := os.ReadFile(s.path)
	wal, _ := os.ReadFile(s.path + "-wal")
	return append(file, wal...)
}

// isCopyOf reports whether a copy is of the book that is restored: by its id, or, where
// none can be read any more, by bytes that stand in what is left of it. Where the path leads
// to something that never was a book, its copies are all that is known of the book.
func (s *salvage) isCopyOf(c CopyReport, raw []byte) bool {
	if !s.id.IsZero() {
		return c.ID == s.id
	}
	if !bytes.HasPrefix(raw, []byte("SQLite format 3")) && !bytes.Contains(raw, []byte("entries_are_never_changed")) {
		return true
	}
	return bytes.Contains(raw, c.ID[:]) || !c.first.IsZero() && bytes.Contains(raw, c.first[:])
}

// layAside renames the damaged book, its journal, and SQLite's files beside it.
func layAside(path string, o Options) (string, error) {
	if !isThere(path) && !isThere(path+journalSuffix) {
		_ = os.Remove(path)
		return "", nil
	}
	aside := freeName(fmt.Sprintf("%s.damaged-%s", path, civil.Of(o.Now())))
	for _, suffix := range []string{"", "-wal", "-shm", journalSuffix} {
		if err := os.Rename(path+suffix, aside+suffix); err != nil && !errors.Is(err, os.ErrNotExist) {
			return "", fmt.Errorf("the damaged book can't be renamed: %w", plainFile(err))
		}
	}
	return aside, nil
}

// still returns o for a file that nobody else writes.
func still(o Options) Options { o.still = true; return o }

func readOnly(o Options) Options { o.ReadOnly = true; return o }

// copyFile copies a book by SQLite's own backup.
func copyFile(from, to string, o Options) error {
	c, err := Open(from, still(o))
	if err != nil {
		return err
	}
	defer c.Close()
	return c.copyTo(to)
}

// beginFresh makes an empty book that has the id of another.
func beginFresh(path string, id stock.ID, o Options) error {
	b, err := Create(path, o)
	if err != nil {
		return err
	}
	return cmp.Or(b.takeID(id), b.Close())
}
