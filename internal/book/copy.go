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

	"github.com/ncruces/go-sqlite3"

	"eyeup/civil"
)

const (
	copiesSuffix = ".copies"
	copyEnding   = ".book"
	halfEnding   = ".half"

	// keptDaily is how many of the newest daily copies are kept; of those before, the first
	// of each month.
	keptDaily = 30
)

// Copy is a daily copy of a book.
type Copy struct {
	Path string
	Made civil.Date
}

// Copies lists the daily copies of the book at path, by the day in their names, the newest
// first. What they hold is another matter; see CheckCopies.
func Copies(path string) ([]Copy, error) { return copiesIn(path + copiesSuffix) }

func copiesIn(folder string) ([]Copy, error) {
	names, err := os.ReadDir(folder)
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
			all = append(all, Copy{filepath.Join(folder, n.Name()), made})
		}
	}
	slices.SortFunc(all, func(a, b Copy) int { return int(b.Made.Sub(a.Made)) })
	return all, nil
}

// copyFolders are where daily copies go: beside the book, and where the options say.
func (b *Book) copyFolders() []string {
	folders := []string{b.path + copiesSuffix}
	if b.options.CopiesTo != "" {
		folders = append(folders, filepath.Join(b.options.CopiesTo, filepath.Base(b.path)+copiesSuffix))
	}
	return folders
}

// dailyCopy makes the copy of today in a folder, unless there is one or there is nothing
// to copy, and clears away what is older than copies are kept.
func (b *Book) dailyCopy(folder string) error {
	today := civil.Of(b.options.Now())
	path := filepath.Join(folder, today.String()+copyEnding)
	if _, err := os.Stat(path); err == nil {
		return nil
	}
	if err := b.copyTo(path); err != nil {
		return err
	}
	clearHalves(folder)
	all, err := copiesIn(folder)
	if err != nil {
		return err
	}
	for _, c := range spent(all) {
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

// CopyTo copies the whole book by SQLite's backup to a path that must not exist, and checks it. Others may
// write to the book meanwhile.
func (b *Book) CopyTo(path string) error {
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
	if err := b.backUp(half, target); err != nil {
		return err
	}
	if err := foldIn(half, target); err != nil {
		return err
	}
	if r, err := checkAlone(half, still(b.options)); err != nil || !r.Whole() {
		return fmt.Errorf("the copy that was made is not whole, and was thrown away: %w", errors.Join(err, errors.New(strings.Join(r.Wrong, "; "))))
	}
	if err := settleFile(half); err != nil {
		return err
	}
	return renameFile(half, path)
}

// backUp writes all pages of the book into another file. That file is made to bear
// checksums first: SQLite writes pages of a large book before the first page, which says
// that pages bear them.
func (b *Book) backUp(path string, o Options) error {
	c, err := sqlite3.Open(source(path, o))
	if err != nil {
		return err
	}
	if err := errors.Join(c.EnableChecksums("main"), c.Exec("create table t (x); drop table t"), c.Close()); err != nil {
		return err
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.conn == nil {
		return errors.New("the book was put down")
	}
	return b.conn.Backup("main", source(path, o))
}

// foldIn brings into the one file what a backup has left in its write-ahead log.
func foldIn(path string, o Options) error {
	c, err := sqlite3.Open(source(path, o))
	if err != nil {
		return err
	}
	_, _, err = c.WALCheckpoint("main", sqlite3.CHECKPOINT_TRUNCATE)
	return errors.Join(err, c.Close())
}

// settleFile syncs a file to the disk.
func settleFile(path string) error {
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return err
	}
	return errors.Join(f.Sync(), f.Close())
}

// renameFile renames a file and brings the new name to the disk.
func renameFile(from, to string) error {
	if err := os.Rename(from, to); err != nil {
		return err
	}
	syncFolder(filepath.Dir(to))
	return nil
}

// syncFolder brings the names in a folder to the disk, on systems that know how to.
func syncFolder(dir string) {
	if f, err := os.Open(dir); err == nil {
		_ = f.Sync()
		_ = f.Close()
	}
}

// spent lists the copies that are kept no longer: all but the newest, and among the older
// ones the first of each month. The clock has no say, so that one that was wrong for a day
// clears nothing away.
func spent(newestFirst []Copy) []Copy {
	firsts := map[string]civil.Date{}
	month := func(d civil.Date) string { return d.String()[:len("2027-01")] }
	for _, c := range newestFirst {
		firsts[month(c.Made)] = c.Made // the last one stored is the first of the month
	}
	var old []Copy
	for i, c := range newestFirst {
		if i >= keptDaily && firsts[month(c.Made)] != c.Made {
			old = append(old, c)
		}
	}
	return old
}
