package main

import (
	"bytes"
	"errors"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"eyeup/internal/book"
)

// flipped is a book that was left as by a crash: entries in the file, some in its
// write-ahead log alone, all in the journal, and a copy of the first of them.
type flipped struct {
	files map[string][]byte // by what their names have after the book's
	log   []byte            // of all entries
	ids   int               // how many there are
}

// parts are the files in which a byte is flipped.
var parts = []string{"", "-wal", ".journal", ".copies/2027-01-15.book"}

// flipBytes flips a byte anywhere in a book, in its write-ahead log, its journal or its
// copy, or in two of them. Opened, checked and restored, every entry comes back, or it is
// told by its number.
func flipBytes(folder string, until time.Time, seed uint64) (t toll) {
	chance := rand.New(rand.NewPCG(seed, 3))
	f, err := crashed(filepath.Join(folder, "flipped.book"), seed)
	if err != nil {
		t.fault("%v", err)
		return t
	}
	t.acknowledged = f.ids
	for time.Now().Before(until) {
		hit := []string{parts[chance.IntN(len(parts))]}
		if chance.IntN(4) == 0 {
			hit = append(hit, parts[chance.IntN(len(parts))])
		}
		t.tried++
		if says := f.flip(folder, hit, chance); says != "" {
			t.fault("a byte of %q was flipped: %s", hit, says)
			t.lost++
		} else {
			t.held++
		}
	}
	return t
}

// crashed makes a book and takes its files while it is open.
func crashed(path string, seed uint64) (*flipped, error) {
	day := time.Date(2027, 1, 15, 9, 0, 0, 0, time.UTC)
	b, err := book.Create(path, book.Options{NoCopies: true, Now: func() time.Time { return day }})
	if err != nil {
		return nil, err
	}
	defer b.Close()
	h, f := newHand(seed), &flipped{files: map[string][]byte{}}
	for n := range 400 {
		if _, err := b.Append(h.next()); err == nil {
			f.ids++
		}
		if n == 200 {
			if err := errors.Join(b.Settle(), b.CopyTo(path+parts[3])); err != nil {
				return nil, err
			}
		}
	}
	for _, part := range parts {
		if f.files[part], err = os.ReadFile(path + part); err != nil {
			return nil, err
		}
	}
	var log bytes.Buffer
	err = b.WriteLog(&log)
	f.log = log.Bytes()
	return f, err
}

// flip flips a byte in each of some files and says what was lost in silence; nothing where
// nothing was.
func (f *flipped) flip(folder string, hit []string, chance *rand.Rand) string {
	here := filepath.Join(folder, "flip")
	defer os.RemoveAll(here)
	path := filepath.Join(here, "a.book")
	if err := os.MkdirAll(path+".copies", 0o700); err != nil {
		return err.Error()
	}
	for part, content := range f.files {
		content = slices.Clone(content)
		if slices.Contains(hit, part) {
			content[chance.IntN(len(content))] ^= 1 << chance.IntN(8)
		}
		if err := os.WriteFile(path+part, content, 0o600); err != nil {
			return err.Error()
		}
	}
	o := book.Options{NoCopies: true}
	r, err := book.Check(path, o)
	if err == nil && r.Whole() {
		return f.lacks(path, o, nil)
	}
	restored, err := book.Restore(path, "", book.Options{NoCopies: true, Now: time.Now})
	if err != nil {
		return "it can't be restored: " + err.Error()
	}
	return f.lacks(path, o, restored.Missing)
}

// lacks says what a book lacks beyond what was told as missing.
func (f *flipped) lacks(path string, o book.Options, missing []book.Missing) string {
	b, err := book.Open(path, o)
	if err != nil {
		return "it was called whole, and can't be opened: " + err.Error()
	}
	defer b.Close()
	var now bytes.Buffer
	if err := b.WriteLog(&now); err != nil {
		return err.Error()
	}
	want := lines(f.log)
	if len(missing) > 0 {
		if last := len(missing) - 1; missing[last].Sequence != int64(f.ids) || last+1 != int(missing[last].Sequence-missing[0].Sequence)+1 {
			return "what is missing is not told by its numbers: " + book.Numbers(missing)
		}
		want = want[:f.ids-len(missing)]
	}
	if strings.Join(lines(now.Bytes()), "\n") != strings.Join(want, "\n") {
		return "entries are missing, and were not told"
	}
	return ""
}

// lines are the entries of a log, without the line that names its book.
func lines(log []byte) []string {
	all := strings.Split(strings.TrimSpace(string(log)), "\n")
	return all[1:]
}
