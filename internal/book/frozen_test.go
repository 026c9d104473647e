package book

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"eyeup/stock"
)

// frozen is the folder of books that were written once and for all; its README tells how.
var frozen = filepath.Join("testdata", "frozen")

// frozenBooks lists the folders of frozen books, such as form1.
func frozenBooks(t *testing.T) (folders []string) {
	t.Helper()
	all, err := os.ReadDir(frozen)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range all {
		if e.IsDir() {
			folders = append(folders, filepath.Join(frozen, e.Name()))
		}
	}
	return folders
}

// TestFrozenBooks opens every book that was ever frozen. It says what it said, takes a new
// entry without a change to those before, and is made again by its log.
func TestFrozenBooks(t *testing.T) {
	for _, folder := range frozenBooks(t) {
		t.Run(filepath.Base(folder), func(t *testing.T) {
			says := string(read(t, folder, "says.txt"))
			path := thaw(t, folder)
			if r := checked(t, path); !r.Whole() {
				t.Fatalf("%v", r.Wrong)
			}
			b, err := Open(path, options())
			if err != nil {
				t.Fatal(err)
			}
			defer b.Close()
			if got := saysOf(t, b); got != says {
				t.Errorf("it says\n%s", differing(got, says))
			}
			log := logOf(t, b)
			again := rebuilt(t, log)
			// A log holds neither papers nor names of people.
			if got := counted(saysOf(t, again)); got != counted(says) {
				t.Errorf("made again by its log it says\n%s", differing(got, counted(says)))
			}
			takesAnEntry(t, b, log)
		})
	}
}

// takesAnEntry adds to a thawed book; the log of what was there stays the same to the byte.
func takesAnEntry(t *testing.T, b *Book, log []byte) {
	t.Helper()
	p := &pen{t: t, n: 1 << 40}
	must(t)(b.Append(p.takenIn(3)))
	entries, _ := b.Head()
	b = reopen(t, b, options())
	after := logOf(t, b)
	if added, is := bytes.CutPrefix(after, log); !is || bytes.Count(added, []byte("\n")) != 1 {
		t.Errorf("a new entry changed the log of those before: %d bytes, then %d", len(log), len(after))
	}
	if r := checked(t, b.Path()); !r.Whole() || r.Entries != entries {
		t.Errorf("after one entry more: %d of %d entries, %v", r.Entries, entries, r.Wrong)
	}
}

// TestACrashedBookNeedsWhatLiesBeside shows that the frozen book of a crash would lose
// entries without the file beside it.
func TestACrashedBookNeedsWhatLiesBeside(t *testing.T) {
	crashed, err := filepath.Glob(filepath.Join(frozen, "*", "garden.book-wal.gz"))
	if err != nil || len(crashed) == 0 {
		t.Fatalf("no frozen book of a crash, %v", err)
	}
	for _, beside := range crashed {
		whole := checked(t, thaw(t, filepath.Dir(beside))).Entries
		path := thaw(t, filepath.Dir(beside))
		if err := os.Remove(path + "-wal"); err != nil {
			t.Fatal(err)
		}
		if alone := checked(t, path).Entries; alone == 0 || alone >= whole {
			t.Errorf("%s: %d entries alone, %d with what lies beside it", beside, alone, whole)
		}
	}
}

// TestEveryKindIsFrozen finds every kind of entry, in the shape that this program writes, in
// a frozen book of this form.
func TestEveryKindIsFrozen(t *testing.T) {
	seen := map[string][]int{}
	for _, folder := range frozenBooks(t) {
		if !strings.HasPrefix(filepath.Base(folder), fmt.Sprintf("form%d", newestForm)) {
			continue
		}
		b, err := Open(thaw(t, folder), options())
		if err != nil {
			t.Fatal(err)
		}
		err = ReadLines(bytes.NewReader(logOf(t, b)), func(one []Line) error {
			for _, l := range one {
				seen[l.Entry.Kind] = append(seen[l.Entry.Kind], l.Entry.Version)
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
		_ = b.Close()
	}
	for _, kind := range stock.Kinds() {
		if !slices.Contains(seen[kind], stock.Version(kind)) {
			t.Errorf("no %s of version %d is frozen in form %d; see testdata/frozen/README.md", kind, stock.Version(kind), newestForm)
		}
	}
}

// rebuilt makes a book of a log.
func rebuilt(t *testing.T, log []byte) *Book {
	t.Helper()
	again, err := Create(filepath.Join(t.TempDir(), "again.book"), options())
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = again.Close() })
	if err := again.ReadLog(bytes.NewReader(log)); err != nil {
		t.Fatal(err)
	}
	return again
}

// thaw lays a frozen book, and what lies beside it, into a folder of the test.
func thaw(t *testing.T, folder string) (path string) {
	t.Helper()
	path = filepath.Join(t.TempDir(), "garden.book")
	for _, suffix := range []string{"", "-wal"} {
		if suffix != "" && !isThere(filepath.Join(folder, "garden.book"+suffix+".gz")) {
			continue
		}
		if err := os.WriteFile(path+suffix, read(t, folder, "garden.book"+suffix), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return path
}

// read reads a file of a frozen book, which may lie compressed.
func read(t *testing.T, folder, name string) []byte {
	t.Helper()
	content, err := os.ReadFile(filepath.Join(folder, name))
	if err == nil {
		return content
	}
	f, err := os.Open(filepath.Join(folder, name+".gz"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	plain, err := gzip.NewReader(f)
	if err != nil {
		t.Fatal(err)
	}
	if content, err = io.ReadAll(plain); err != nil {
		t.Fatal(err)
	}
	return content
}
