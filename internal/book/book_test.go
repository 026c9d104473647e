package book

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/stock"
)

// clock is a morning in January on which all tests are run.
func clock() time.Time {
	return time.Date(2027, 1, 15, 9, 0, 0, 0, time.FixedZone("", -5*3600))
}

func options() Options { return Options{Now: clock, NoCopies: true} }

// pen makes entries with ids that count up.
type pen struct {
	t testing.TB
	n uint64
}

func (p *pen) entry(on, kind, body string) stock.Entry {
	p.t.Helper()
	p.n++
	var chance [10]byte
	binary.BigEndian.PutUint64(chance[2:], p.n)
	id, err := stock.NewID(clock(), bytes.NewReader(chance[:]))
	if err != nil {
		p.t.Fatal(err)
	}
	day, err := civil.Parse(on)
	if err != nil {
		p.t.Fatal(err)
	}
	canonical, err := stock.Canonical([]byte(body))
	if err != nil {
		p.t.Fatal(err)
	}
	return stock.Entry{ID: id, Kind: kind, Version: 1, On: day, Body: canonical}
}

func (p *pen) takenIn(n int) stock.Entry {
	return p.entry("2026-11-02", "taken in", fmt.Sprintf(`{"variety":"Pale Heron","kind":"dahlia","form":"clump","count":%d,"place":"cellar"}`, n))
}

func (p *pen) givenAway(lot stock.ID, n int) stock.Entry {
	return p.entry("2026-12-02", "given away", fmt.Sprintf(`{"lot":"%s/0","count":%d}`, lot, n))
}

func newBook(t testing.TB) (*Book, *pen) {
	t.Helper()
	b, err := Create(filepath.Join(t.TempDir(), "garden.book"), options())
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = b.Close() })
	return b, &pen{t: t}
}

func must(t testing.TB) func([]Answer, error) []Answer {
	return func(a []Answer, err error) []Answer {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
}

func reopen(t testing.TB, b *Book, o Options) *Book {
	t.Helper()
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	again, err := Open(b.Path(), o)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = again.Close() })
	return again
}

// count is how many of all lots are left.
func count(b *Book) int {
	n := 0
	for _, l := range b.Stock().Lots() {
		n += l.Count()
	}
	return n
}

func TestWhatIsWrittenIsThereAgain(t *testing.T) {
	b, p := newBook(t)
	first := p.takenIn(14)
	a := must(t)(b.Append(first))
	if len(a) != 1 || a[0].Sequence != 1 || len(a[0].Born) != 1 || a[0].Born[0].Code == "" {
		t.Fatalf("answered %+v", a)
	}
	must(t)(b.Append(p.givenAway(first.ID, 3), p.givenAway(first.ID, 1)))
	entries, head := b.Head()
	b = reopen(t, b, options())
	again, headAgain := b.Head()
	if entries != 3 || again != 3 || head != headAgain || count(b) != 10 {
		t.Errorf("%d entries, then %d; %d left", entries, again, count(b))
	}
	lot, err := b.Stock().Find(string(a[0].Born[0].Code))
	if err != nil || lot.Count() != 10 {
		t.Errorf("%+v, %v", lot, err)
	}
	e, err := b.Entry(first.ID)
	if err != nil || e.Offset != "-05:00" || !e.Written.Equal(clock()) {
		t.Errorf("written %v %s, %v", e.Written, e.Offset, err)
	}
}

func TestARefusedGoIsNotWritten(t *testing.T) {
	b, p := newBook(t)
	first := p.takenIn(5)
	must(t)(b.Append(first))
	if _, err := b.Append(p.givenAway(first.ID, 2), p.givenAway(first.ID, 4)); err == nil {
		t.Fatal("six of five were given away")
	}
	if n, _ := b.Head(); n != 1 || count(b) != 5 {
		t.Errorf("%d entries, %d left", n, count(b))
	}
	must(t)(b.Append(p.givenAway(first.ID, 2)))
	if b = reopen(t, b, options()); count(b) != 3 {
		t.Errorf("%d left", count(b))
	}
}

func TestSentTwiceCountsOnce(t *testing.T) {
	b, p := newBook(t)
	first := p.takenIn(5)
	born := must(t)(b.Append(first))[0].Born
	a := must(t)(b.Append(first, p.givenAway(first.ID, 1)))
	if !a[0].Again || a[0].Sequence != 1 || a[1].Again || a[1].Sequence != 2 || len(a[0].Born) != 1 || a[0].Born[0] != born[0] {
		t.Errorf("answered %+v", a)
	}
	other := first
	other.Body = bytes.Replace(first.Body, []byte("5"), []byte("6"), 1)
	if _, err := b.Append(other); err == nil || !strings.Contains(err.Error(), "with other content") {
		t.Errorf("the same id with other bytes: %v", err)
	}
	other = first
	other.Written = clock().Add(time.Hour)
	if _, err := b.Append(other); err == nil {
		t.Error("the same id, written at another time, was taken for the same")
	}
	if n, _ := b.Head(); n != 2 || count(b) != 4 {
		t.Errorf("%d entries, %d left", n, count(b))
	}
}

// Two programs have the book open; neither loses nor doubles anything, and neither takes
// what the other has taken already.
func TestTwoWritersAtOnce(t *testing.T) {
	b, p := newBook(t)
	first := p.takenIn(100)
	must(t)(b.Append(first))
	other, err := Open(b.Path(), options())
	if err != nil {
		t.Fatal(err)
	}
	defer other.Close()
	var entries []stock.Entry
	for range 40 {
		entries = append(entries, p.givenAway(first.ID, 1), p.givenAway(first.ID, 2))
	}
	var wg sync.WaitGroup
	refused := make([]int, 2)
	for w, book := range []*Book{b, other} {
		wg.Go(func() {
			for i := w; i < len(entries); i += 2 {
				if _, err := book.Append(entries[i]); err != nil {
					var r *stock.Refusal
					if !errors.As(err, &r) {
						t.Error(err)
					}
					refused[w] += i%2 + 1
				}
			}
		})
	}
	wg.Wait()
	left := 0
	for _, book := range []*Book{b, other} {
		if err := book.View(func(s *stock.Book) error { left = count(book); return nil }); err != nil {
			t.Fatal(err)
		}
		if want := 100 - 120 + refused[0] + refused[1]; left != want || left < 0 || left > 1 {
			t.Errorf("%d left, want %d", left, want)
		}
	}
}

func TestEntriesCannotBeTouched(t *testing.T) {
	b, p := newBook(t)
	must(t)(b.Append(p.takenIn(5)))
	for _, sql := range []string{"update entries set body = '{}'", "delete from entries", "insert or replace into entries select sequence, id, 'note', version, \"on\", at, written, offset, who, device, body, hash from entries"} {
		if err := b.conn.Exec(sql); err == nil {
			t.Errorf("let through: %s", sql)
		}
	}
}

func TestASnapshotIsACache(t *testing.T) {
	b, p := newBook(t)
	first := p.takenIn(5)
	must(t)(b.Append(first))
	if err := b.snapshot(); err != nil {
		t.Fatal(err)
	}
	must(t)(b.Append(p.givenAway(first.ID, 1)))
	b = reopen(t, b, options())
	if b.snapped != 1 || count(b) != 4 {
		t.Errorf("snapshot of entry %d, %d left", b.snapped, count(b))
	}
	other := stock.New()
	e := p.takenIn(77)
	if err := other.Replay(e); err != nil {
		t.Fatal(err)
	}
	for _, content := range [][]byte{{}, {1, 2, 3}, other.Snapshot()} {
		s, _, err := b.conn.Prepare("update snapshots set content = ?")
		if err == nil {
			err = errors.Join(s.BindBlob(1, content), s.Exec(), s.Close())
		}
		if err != nil {
			t.Fatal(err)
		}
		if b = reopen(t, b, options()); b.snapped != 0 || count(b) != 4 {
			t.Errorf("a damaged snapshot was trusted: %d, %d left", b.snapped, count(b))
		}
	}
}

func TestANewerBookIsForReadingOnly(t *testing.T) {
	t.Run("form", func(t *testing.T) {
		b, p := newBook(t)
		must(t)(b.Append(p.takenIn(5)))
		if err := b.conn.Exec("insert into goose_db_version (version_id, is_applied) values (999, true)"); err != nil {
			t.Fatal(err)
		}
		b = reopen(t, b, options())
		if _, err := b.Append(p.takenIn(1)); !errors.Is(err, ErrReadOnly) || !strings.Contains(err.Error(), "newer eyeup") || count(b) != 5 {
			t.Errorf("%v, %d left", err, count(b))
		}
	})
	t.Run("kind", func(t *testing.T) {
		b, p := newBook(t)
		must(t)(b.Append(p.takenIn(5)))
		e := p.entry("2027-01-01", "danced", `{}`)
		e.Written = clock()
		r := row{2, e, chain(b.head, e.Canonical())}
		if err := errors.Join(b.fill(&r), b.insert.Exec()); err != nil {
			t.Fatal(err)
		}
		b = reopen(t, b, options())
		if _, err := b.Append(p.takenIn(1)); !errors.Is(err, ErrReadOnly) || !strings.Contains(err.Error(), "a newer eyeup wrote it") || count(b) != 5 {
			t.Errorf("%v, %d left", err, count(b))
		}
	})
}

func TestOnlyTheOwnerMayRead(t *testing.T) {
	b, p := newBook(t)
	must(t)(b.Append(p.takenIn(5)))
	for _, suffix := range []string{"", "-wal", "-shm"} {
		info, err := os.Stat(b.Path() + suffix)
		if err != nil || info.Mode().Perm() != 0o600 {
			t.Errorf("%q: %v, %v", suffix, info.Mode(), err)
		}
	}
}

func TestWhatIsNoBookIsTold(t *testing.T) {
	dir := t.TempDir()
	write := func(name string, content []byte) string {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, content, 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	b, p := newBook(t)
	must(t)(b.Append(p.takenIn(5)))
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	whole, err := os.ReadFile(b.Path())
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		path, want string
	}{
		"missing": {filepath.Join(dir, "missing"), "there is no such file"},
		"empty":   {write("empty", nil), "the file is empty"},
		"text":    {write("text", bytes.Repeat([]byte("code,variety\n"), 20)), "not a stock book"},
		"half":    {write("half", whole[:len(whole)/2]), "a copy had been interrupted"},
		"start":   {write("start", whole[:50]), "a copy had been interrupted"},
	} {
		if _, err := Open(c.path, options()); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
	}
	if _, err := Create(b.Path(), options()); err == nil || !strings.Contains(err.Error(), "already exists") {
		t.Errorf("a book was written over: %v", err)
	}
	if _, err := Create(filepath.Join(dir, "no", "such"), options()); err == nil {
		t.Error("a book was made in a folder that is not there")
	}
}
