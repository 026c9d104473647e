package book

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// What happens to the file of a book while it is open ends the writing, and is told; what
// is put back can be written again.
func TestTheFileUnderTheProgram(t *testing.T) {
	for name, c := range map[string]struct {
		befalls, mended func(path string) error
		says            string
	}{
		"moved": {
			func(path string) error { return os.Rename(path, path+".elsewhere") },
			func(path string) error { return os.Rename(path+".elsewhere", path) }, "moved or deleted",
		},
		"replaced": {
			func(path string) error {
				return errors.Join(os.Rename(path, path+".old"), os.WriteFile(path, []byte("SQLite format 3\x00"), 0o600))
			},
			func(path string) error { return os.Rename(path+".old", path) }, "another file",
		},
		"given a second name": {
			func(path string) error { return os.Link(path, path+".second") },
			func(path string) error { return os.Remove(path + ".second") }, "2 names",
		},
		"without its write-ahead log": {
			func(path string) error { return os.Rename(path+"-wal", path+"-wal.old") },
			func(path string) error { return os.Rename(path+"-wal.old", path+"-wal") }, "-wal was deleted",
		},
	} {
		t.Run(name, func(t *testing.T) {
			b, p := newBook(t)
			first := p.takenIn(9)
			must(t)(b.Append(first))
			if err := c.befalls(b.Path()); err != nil {
				t.Fatal(err)
			}
			lost := p.givenAway(first.ID, 1)
			if _, err := b.Append(lost); !errors.Is(err, ErrMoved) || !strings.Contains(err.Error(), c.says) {
				t.Errorf("appending says %v", err)
			}
			if err := c.mended(b.Path()); err != nil {
				t.Fatal(err)
			}
			must(t)(b.Append(lost))
			if n, _ := b.Head(); n != 2 {
				t.Errorf("%d entries", n)
			}
		})
	}
}

// A deleted book is not written in, and what had been written is in the journal.
func TestADeletedBookIsMadeAgain(t *testing.T) {
	b, p := newBook(t)
	first := p.takenIn(9)
	must(t)(b.Append(first))
	if err := os.Remove(b.Path()); err != nil {
		t.Fatal(err)
	}
	if _, err := b.Append(p.givenAway(first.ID, 1)); !errors.Is(err, ErrMoved) {
		t.Errorf("%v", err)
	}
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	r, err := Restore(b.Path(), "", options())
	if err != nil || r.Entries != 1 || len(r.Missing) != 0 {
		t.Errorf("%+v, %v", r, err)
	}
}

// Two names of one file are told before anything is written.
func TestAHardLinkIsToldAtOnce(t *testing.T) {
	b, p := newBook(t)
	must(t)(b.Append(p.takenIn(9)))
	other := filepath.Join(t.TempDir(), "other.book")
	if err := errors.Join(b.Close(), os.Link(b.Path(), other)); err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{b.Path(), other} {
		b, err := Open(path, options())
		if err != nil {
			t.Fatal(err)
		}
		if told := strings.Join(b.Warnings(), " "); !strings.Contains(told, "2 names") {
			t.Errorf("%s: %s", path, told)
		}
		if _, err := b.Append(p.takenIn(1)); !errors.Is(err, ErrMoved) {
			t.Errorf("%v", err)
		}
		_ = b.Close()
	}
}

// A symbolic link is followed, and told: copies and journal lie beside the file itself.
func TestASymbolicLinkIsTold(t *testing.T) {
	b, p := newBook(t)
	must(t)(b.Append(p.takenIn(9)))
	link := filepath.Join(t.TempDir(), "link.book")
	if err := errors.Join(b.Close(), os.Symlink(b.Path(), link)); err != nil {
		t.Skip(err) // a system on which not everybody may make one
	}
	l, err := Open(link, options())
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	must(t)(l.Append(p.takenIn(1)))
	if told := strings.Join(l.Warnings(), " "); !strings.Contains(told, b.Path()) {
		t.Error(told)
	}
	if _, err := os.Stat(link + journalSuffix); err == nil {
		t.Error("the journal lies beside the link")
	}
}

// Nobody restores a book that is open.
func TestAnOpenBookIsNotRestored(t *testing.T) {
	b, p := newBook(t)
	must(t)(b.Append(p.takenIn(9)))
	if _, err := Restore(b.Path(), "", options()); !errors.Is(err, ErrOpen) {
		t.Errorf("%v", err)
	}
	must(t)(b.Append(p.takenIn(9)))
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	if _, err := Restore(b.Path(), "", options()); err != nil {
		t.Errorf("%v", err)
	}
}

// Two seconds after the last entry the one file is the whole book.
func TestWhatWasWrittenIsFoldedIn(t *testing.T) {
	b, p := newBook(t)
	for range 100 {
		must(t)(b.Append(p.takenIn(9)))
	}
	time.Sleep(2 * time.Second)
	copied := filepath.Join(t.TempDir(), "stick.book")
	content, err := os.ReadFile(b.Path())
	if err == nil {
		err = os.WriteFile(copied, content, 0o600)
	}
	if err != nil {
		t.Fatal(err)
	}
	if r := checked(t, copied); !r.Whole() || r.Entries != 100 {
		t.Errorf("%+v", r)
	}
}
