package book

import (
	"errors"
	"fmt"
	"os"

	"eyeup/civil"
)

// Restored is the result of restoring a book.
type Restored struct {
	From    Copy   // the copy that was used
	Aside   string // the new path of the damaged book; empty if there was none
	Saved   int    // entries saved from the damaged book, newer than the copy
	Entries int64  // in the book now
}

// Restore replaces the book at path by its newest undamaged daily copy, or by the copy from if
// that is not empty. Entries that the damaged book holds beyond the copy are saved as far as
// its chain can be followed. The damaged book is renamed, never deleted.
func Restore(path, from string, o Options) (*Restored, error) {
	o.NoCopies = true
	chosen, err := newestWhole(path, from, o)
	if err != nil {
		return nil, err
	}
	fresh := path + ".restored"
	removeAll(fresh)
	if err := copyFile(chosen.Path, fresh, o); err != nil {
		return nil, fmt.Errorf("the copy of %s can't be copied beside the book: %w", chosen.Made, plain(err))
	}
	saved, err := save(path, fresh, o)
	if err != nil {
		removeAll(fresh)
		return nil, err
	}
	r := &Restored{From: chosen, Saved: saved}
	if r.Aside, err = layAside(path, o); err != nil {
		removeAll(fresh)
		return nil, err
	}
	if err := os.Rename(fresh, path); err != nil {
		return nil, fmt.Errorf("the restored book is at %s but can't be renamed to its place: %w", fresh, plainFile(err))
	}
	report, err := Check(path, o)
	if err != nil {
		return nil, err
	}
	r.Entries = report.Entries
	if !report.Whole() {
		return r, fmt.Errorf("the restored book is damaged too: %s", report.Wrong[0])
	}
	return r, nil
}

// newestWhole finds the newest daily copy in which a check finds nothing wrong.
func newestWhole(path, from string, o Options) (Copy, error) {
	copies, err := Copies(path)
	if err != nil {
		return Copy{}, err
	}
	if from != "" {
		copies = []Copy{{Path: from}}
	}
	for _, c := range copies {
		if r, err := Check(c.Path, still(o)); err == nil && r.Whole() {
			return c, nil
		}
	}
	if len(copies) == 0 {
		return Copy{}, fmt.Errorf("there is no daily copy in %s; to rebuild the book from a folder with a log run: eyeup book new --folder", path+copiesSuffix)
	}
	return Copy{}, errors.New("every copy is damaged; look for one on another disk and run: eyeup restore --from")
}

// copyFile copies a book by SQLite's own backup.
func copyFile(from, to string, o Options) error {
	o.still = true
	c, err := Open(from, o)
	if err != nil {
		return err
	}
	defer c.Close()
	return c.copyTo(to)
}

// save adds to the restored book the entries that the damaged one holds beyond it, up to the
// first that can't be read or breaks the chain.
func save(damaged, fresh string, o Options) (int, error) {
	b, err := Open(fresh, o)
	if err != nil {
		return 0, err
	}
	defer b.Close()
	d := o
	d.ReadOnly = true
	old, err := connectBest(damaged, d)
	if err != nil {
		return 0, nil // nothing can be read of it
	}
	defer old.conn.Close()
	if h, err := old.hashOf(b.sequence); err != nil || h != b.head {
		return 0, nil // another book, or its entries up to here can't be read
	}
	s, _, err := old.conn.Prepare(rowsAfter)
	if err != nil {
		return 0, nil
	}
	defer s.Close()
	before := b.sequence
	tx, err := b.conn.BeginImmediate()
	if err != nil {
		return 0, err
	}
	var failed error
	_ = eachAfter(s, b.sequence, func(r *row) error {
		if err := b.take(r); err != nil {
			return err
		}
		failed = errors.Join(b.fill(r), b.insert.Exec())
		return failed
	})
	if failed != nil {
		return 0, errors.Join(plain(failed), tx.Rollback())
	}
	return int(b.sequence - before), plain(tx.Commit())
}

// layAside renames the damaged book and SQLite's files beside it.
func layAside(path string, o Options) (string, error) {
	if !isThere(path) {
		removeAll(path)
		return "", nil
	}
	now := o.Now
	if now == nil {
		return "", errors.New("restoring needs a clock")
	}
	aside := fmt.Sprintf("%s.damaged-%s", path, civil.Of(now()))
	for n := 2; isThere(aside); n++ {
		aside = fmt.Sprintf("%s.damaged-%s-%d", path, civil.Of(now()), n)
	}
	for _, suffix := range []string{"", "-wal", "-shm"} {
		if err := os.Rename(path+suffix, aside+suffix); err != nil && !errors.Is(err, os.ErrNotExist) {
			return "", fmt.Errorf("the damaged book can't be renamed: %w", plainFile(err))
		}
	}
	return aside, nil
}

// still returns o for a file that nobody else writes.
func still(o Options) Options { o.still = true; return o }
