package book

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"eyeup/civil"
)

const (
	copiesSuffix = ".copies"
	copyEnding   = ".book"
	halfEnding   = ".half"

	// keptDaily is how many days every daily copy is kept. After that only the first copy of
	// each month is kept.
	keptDaily civil.Days = 30
)

// Copy is a daily copy of a book.
type Copy struct {
	Path string
	Made civil.Date
}

// Copies lists the daily copies of the book at path, newest first.
func Copies(path string) ([]Copy, error) {
	names, err := os.ReadDir(path + copiesSuffix)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, plainFile(err)
	}
	var all []Copy
	for _, n := range names {
		day, ours := strings.CutSuffix(n.Name(), copyEnding)
		if made, err := civil.Parse(day); ours && err == nil {
			all = append(all, Copy{filepath.Join(path+copiesSuffix, n.Name()), made})
		}
	}
	slices.SortFunc(all, func(a, b Copy) int { return int(b.Made.Sub(a.Made)) })
	return all, nil
}

// dailyCopy makes today's copy, unless it exists or the book is empty, and removes copies that
// are no longer kept.
func (b *Book) dailyCopy() error {
	today := civil.Of(b.options.Now())
	path := filepath.Join(b.path+copiesSuffix, today.String()+copyEnding)
	if _, err := os.Stat(path); err == nil || b.sequence == 0 {
		return nil
	}
	if err := b.copyTo(path); err != nil {
		return err
	}
	clearHalves(filepath.Dir(path))
	all, err := Copies(b.path)
	if err != nil {
		return err
	}
	for _, c := range spent(all, today) {
		_ = os.Remove(c.Path)
	}
	return nil
}

// clearHalves removes incomplete copies that are too old for anyone to be still writing them.
func clearHalves(folder string) {
	names, _ := filepath.Glob(filepath.Join(folder, "*"+halfEnding))
	for _, name := range names {
		if info, err := os.Stat(name); err == nil && time.Since(info.ModTime()) > time.Hour {
			removeAll(name)
		}
	}
}

// CopyTo copies the whole book by SQLite's backup to a path that must not exist. Others may
// write to the book meanwhile.
func (b *Book) CopyTo(path string) error {
	b.mu.Lock()
	defer b.mu.Unlock()
	if _, err := os.Stat(path); err == nil {
		return fmt.Errorf("%s already exists; give another name", path)
	}
	return plain(b.copyTo(path))
}

// copyTo copies to a temporary name and then renames it, so that a copy is complete or absent.
func (b *Book) copyTo(path string) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return plainFile(err)
	}
	half := fmt.Sprintf("%s.%d%s", path, os.Getpid(), halfEnding)
	defer removeAll(half)
	target := b.options
	target.still = false
	if err := b.conn.Backup("main", source(half, target)); err != nil {
		return err
	}
	if err := settleFile(half); err != nil {
		return err
	}
	return os.Rename(half, path)
}

// settleFile syncs a file to the disk.
func settleFile(path string) error {
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return err
	}
	return errors.Join(f.Sync(), f.Close())
}

// spent lists the copies to remove: all but those of the last days and, before that, the first
// of each month.
func spent(newestFirst []Copy, today civil.Date) []Copy {
	firsts := map[string]civil.Date{}
	month := func(d civil.Date) string { return d.String()[:len("2027-01")] }
	for _, c := range newestFirst {
		firsts[month(c.Made)] = c.Made // the last one stored is the first of the month
	}
	var old []Copy
	for _, c := range newestFirst {
		if today.Sub(c.Made) >= keptDaily && firsts[month(c.Made)] != c.Made {
			old = append(old, c)
		}
	}
	return old
}
