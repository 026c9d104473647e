package book

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// ErrMoved is returned for writing to a book whose file is no longer the one at its path.
var ErrMoved = errors.New("nothing is written any more")

// footing is the file that was opened, and its write-ahead log, as the system knows them.
// A name may come to mean another file; these don't.
type footing struct{ book, wal os.FileInfo }

// stand remembers which files were opened. It is called once the book was read, for then
// SQLite has its own files open.
func (b *Book) stand() error {
	at, err := os.Stat(b.path)
	if err != nil {
		return plainFile(err)
	}
	b.footing.book = at
	b.footing.wal, _ = os.Stat(b.path + "-wal") // none where nobody may write
	return nil
}

// stillThere returns an error where the path of the book no longer names the file that is
// open, or where the file has a second name. It is asked before each commit.
func (b *Book) stillThere() error {
	now, err := os.Stat(b.path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("%s was moved or deleted while it was open, so %w; put it back, or close this program and open the book where it lies now", b.path, ErrMoved)
	case err != nil:
		return fmt.Errorf("%s can't be looked at, so %w: %w", b.path, ErrMoved, plainFile(err))
	case !os.SameFile(b.footing.book, now):
		return fmt.Errorf("%s is another file now than the one that was opened, so %w; close this program and open the book anew", b.path, ErrMoved)
	}
	if n, err := links(b.path, now); err == nil && n > 1 {
		return fmt.Errorf("%s has %d names (hard links), and each name keeps entries of its own, so %w; delete all names but one", b.path, n, ErrMoved)
	}
	return b.walStillThere()
}

// walStillThere returns an error where the write-ahead log was deleted or replaced.
func (b *Book) walStillThere() error {
	if b.footing.wal == nil {
		return nil
	}
	now, err := os.Stat(b.path + "-wal")
	if err != nil || !os.SameFile(b.footing.wal, now) {
		return fmt.Errorf("%s-wal was deleted or replaced while the book was open, so %w; close this program and open the book anew", b.path, ErrMoved)
	}
	return nil
}

// throughLink returns the file that a path leads to through a symbolic link, empty where
// the path is no link.
func throughLink(path string) string {
	real, err := filepath.EvalSymlinks(path)
	if err != nil {
		return ""
	}
	if info, err := os.Lstat(path); err != nil || info.Mode()&fs.ModeSymlink == 0 {
		return ""
	}
	return real
}
