package book

import (
	"bytes"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/ncruces/go-sqlite3"

	"eyeup/civil"
	"eyeup/stock"
)

// filled is a closed book of some two hundred entries, and what its log says.
func filled(t testing.TB) (path string, log []byte) {
	t.Helper()
	b, p := newBook(t)
	for range 40 {
		first := p.takenIn(9)
		must(t)(b.Append(first, p.givenAway(first.ID, 1), p.givenAway(first.ID, 2)))
		must(t)(b.Append(p.entry("2027-01-10", "round", fmt.Sprintf(`{"lot":"%s/0","whole":true,"firm":5,"soft":1}`, first.ID))))
		must(t)(b.Append(p.entry("2027-01-11", "note", `{"text":"A note of some length, so that the book has more than a page or two to be damaged in."}`)))
	}
	if err := b.snapshot(); err != nil {
		t.Fatal(err)
	}
	if _, err := b.KeepPaper([]byte(strings.Repeat("date,low,high\n", 50))); err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := b.WriteLog(&out); err != nil {
		t.Fatal(err)
	}
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Path(), out.Bytes()
}

// tally lists what stands where.
func tally(s *stock.Book) []string {
	var all []string
	for _, l := range s.Lots() {
		for _, st := range l.Standing {
			all = append(all, fmt.Sprintf("%v%v%s{%v %d %s %v}", l.ID, l.Code, l.Name(), st.Spot, st.Count, st.Pack, st.Since))
		}
	}
	return all
}

func checked(t testing.TB, path string) *Report {
	t.Helper()
	r, err := Check(path, options())
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestAWholeBookIsWhole(t *testing.T) {
	path, _ := filled(t)
	if r := checked(t, path); !r.Whole() || r.Entries != 200 || r.Lots != 40 {
		t.Errorf("%+v", r)
	}
	for _, suffix := range []string{"-wal", "-shm"} {
		if _, err := os.Stat(path + suffix); err == nil {
			t.Errorf("%s was left behind", suffix)
		}
	}
}

// The way out: the log makes the same book again, to the same last hash and the same
// labels.
func TestTheLogRebuildsTheBook(t *testing.T) {
	path, log := filled(t)
	again, err := Create(filepath.Join(t.TempDir(), "again.book"), options())
	if err != nil {
		t.Fatal(err)
	}
	defer again.Close()
	if err := again.ReadLog(bytes.NewReader(log)); err != nil {
		t.Fatal(err)
	}
	first, err := Open(path, options())
	if err != nil {
		t.Fatal(err)
	}
	defer first.Close()
	n, head := first.Head()
	m, headAgain := again.Head()
	if n != m || head != headAgain {
		t.Errorf("%d entries to %x, again %d to %x", n, head, m, headAgain)
	}
	if a, b := tally(first.Stock()), tally(again.Stock()); strings.Join(a, "\n") != strings.Join(b, "\n") {
		t.Error("the counts or codes are others")
	}
	var out bytes.Buffer
	if err := again.WriteLog(&out); err != nil || !bytes.Equal(out.Bytes(), log) {
		t.Errorf("the log is another: %v", err)
	}
	if err := again.ReadLog(bytes.NewReader(log)); err == nil {
		t.Error("a log was read into a book that has entries")
	}
}

// line returns where line n of a text begins, from 0.
func line(text []byte, n int) (at int) {
	for range n {
		at += bytes.IndexByte(text[at:], '\n') + 1
	}
	return at
}

func TestAChangedLogIsRefused(t *testing.T) {
	_, log := filled(t)
	for name, changed := range map[string][]byte{
		"a count":      bytes.Replace(log, []byte(`"count":9`), []byte(`"count":8`), 1),
		"a line lost":  append(bytes.Clone(log[:line(log, 1)]), log[line(log, 2):]...),
		"a line twice": append(bytes.Clone(log[:line(log, 2)]), log[line(log, 1):]...),
		"half a line":  log[:len(log)-20],
	} {
		again, err := Create(filepath.Join(t.TempDir(), "again.book"), options())
		if err != nil {
			t.Fatal(err)
		}
		if err := again.ReadLog(bytes.NewReader(changed)); err == nil {
			t.Errorf("%s: taken", name)
		}
		if n, _ := again.Head(); n != 0 || len(again.Stock().Lots()) != 0 {
			t.Errorf("%s: %d entries are left of it", name, n)
		}
		_ = again.Close()
	}
}

// A byte is flipped anywhere: either a check finds it, or it is in no place that matters
// and the log comes out the same. Never is it silently wrong.
func TestAFlippedByteIsNeverSilent(t *testing.T) {
	path, log := filled(t)
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	chance := rand.New(rand.NewPCG(5, 2027))
	const tries = 50
	found := 0
	for range tries {
		at := chance.IntN(len(whole))
		damaged := filepath.Join(t.TempDir(), "damaged.book")
		flipped := bytes.Clone(whole)
		flipped[at] ^= byte(1 << chance.IntN(8))
		if err := os.WriteFile(damaged, flipped, 0o600); err != nil {
			t.Fatal(err)
		}
		r, err := Check(damaged, options())
		if err != nil || !r.Whole() {
			found++
			continue
		}
		b, err := Open(damaged, options())
		if err != nil {
			t.Errorf("byte %d: the check found nothing, yet: %v", at, err)
			continue
		}
		var out bytes.Buffer
		if err := b.WriteLog(&out); err != nil || !bytes.Equal(out.Bytes(), log) {
			t.Errorf("byte %d: silently wrong: %v", at, err)
		}
		_ = b.Close()
	}
	if found < tries*8/10 {
		t.Errorf("only %d of %d were found", found, tries)
	}
}

// A changed entry, made by someone who took the guards away first, breaks the chain.
func TestAForgedEntryIsFound(t *testing.T) {
	path, _ := filled(t)
	b, err := Open(path, options())
	if err != nil {
		t.Fatal(err)
	}
	err = b.conn.Exec(`drop trigger entries_are_never_changed; update entries set body = replace(body, '"count":9', '"count":8') where sequence = 1`)
	if err != nil {
		t.Fatal(err)
	}
	_ = b.Close()
	r := checked(t, path)
	if all := strings.Join(r.Wrong, "\n"); !strings.Contains(all, "chain of entries is broken") || !strings.Contains(all, "triggers that protect the entries are missing") {
		t.Errorf("found: %s", all)
	}
}

func daily(on time.Time) Options {
	return Options{Now: func() time.Time { return on }}
}

// A copy is made each day, once.
func TestDailyCopies(t *testing.T) {
	b, p := newBook(t)
	must(t)(b.Append(p.takenIn(5)))
	for n := range 3 {
		b = reopen(t, b, daily(clock().AddDate(0, 0, n)))
		b = reopen(t, b, daily(clock().AddDate(0, 0, n).Add(time.Hour)))
	}
	copies, err := Copies(b.Path())
	if err != nil || len(copies) != 3 || copies[0].Made.String() != "2027-01-17" {
		t.Fatalf("%+v, %v", copies, err)
	}
	if r, err := Check(copies[0].Path, still(options())); err != nil || !r.Whole() || r.Entries != 1 {
		t.Errorf("%+v, %v", r, err)
	}
	info, err := os.Stat(copies[0].Path)
	if err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("%v, %v", info.Mode(), err)
	}
}

// A book that lies open overnight is copied after the first entry of the next day.
func TestABookLeftOpenIsCopied(t *testing.T) {
	b, p := newBook(t)
	must(t)(b.Append(p.takenIn(5)))
	day := clock()
	o := Options{Now: func() time.Time { return day }}
	b = reopen(t, b, o)
	day = day.AddDate(0, 0, 1)
	must(t)(b.Append(p.takenIn(6)))
	b.tending.Wait()
	copies, err := Copies(b.Path())
	if err != nil || len(copies) != 2 || copies[0].Made.String() != "2027-01-16" {
		t.Errorf("%+v, %v", copies, err)
	}
}

// The thirty newest copies are kept, then the first of each month.
func TestCopiesAreSpent(t *testing.T) {
	var kept []Copy
	first := civil.MustOn(2027, 1, 15)
	for n := range civil.Days(100) {
		today := first.AddDays(n)
		kept = append([]Copy{{Made: today}}, kept...)
		old := spent(kept)
		kept = slices.DeleteFunc(kept, func(c Copy) bool { return slices.Contains(old, c) })
	}
	var left []string
	for _, c := range kept[30:] {
		left = append(left, c.Made.String())
	}
	// on 24 April the last thirty days begin on 26 March
	if len(kept) != 33 || strings.Join(left, " ") != "2027-03-01 2027-02-01 2027-01-15" {
		t.Errorf("%d copies, the old ones %v", len(kept), left)
	}
}

// A damaged book is restored from its copy, and what was written since the copy is saved
// as far as it can be read.
func TestRestoreSavesWhatIsNewer(t *testing.T) {
	b, p := newBook(t)
	first := p.takenIn(50)
	must(t)(b.Append(first))
	b = reopen(t, b, daily(clock()))
	for range 20 {
		must(t)(b.Append(p.givenAway(first.ID, 1)))
	}
	want, head := b.Head()
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	// An index is damaged: the entries themselves can still be read.
	whole, err := os.ReadFile(b.Path())
	if err != nil {
		t.Fatal(err)
	}
	id := first.ID
	at := bytes.LastIndex(whole, id[:12])
	whole[at] ^= 0xff
	if err := os.WriteFile(b.Path(), whole, 0o600); err != nil {
		t.Fatal(err)
	}
	if r := checked(t, b.Path()); r.Whole() {
		t.Fatal("the damage was not found")
	}
	r, err := Restore(b.Path(), "", options())
	if err != nil {
		t.Fatal(err)
	}
	if r.Aside == "" || r.From.Made.String() != "2027-01-15" {
		t.Errorf("%+v", r)
	}
	again, err := Open(b.Path(), options())
	if err != nil {
		t.Fatal(err)
	}
	defer again.Close()
	n, headAgain := again.Head()
	if int64(r.Saved)+1 != n || n > want || (n == want) != (head == headAgain) {
		t.Errorf("saved %d, %d entries of %d", r.Saved, n, want)
	}
	must(t)(again.Append(p.givenAway(first.ID, 1)))
}

func TestNothingToRestoreFrom(t *testing.T) {
	path, _ := filled(t)
	if err := os.Remove(path + journalSuffix); err != nil {
		t.Fatal(err)
	}
	if _, err := Restore(path, "", options()); err == nil || !strings.Contains(err.Error(), "no daily copy") {
		t.Errorf("%v", err)
	}
	if r := checked(t, path); !r.Whole() {
		t.Errorf("a restoring that failed left %v", r.Wrong)
	}
}

// A book that was put back to an older state shows against its copy.
func TestABookOlderThanItsCopyIsTold(t *testing.T) {
	b, p := newBook(t)
	must(t)(b.Append(p.takenIn(5)))
	if err := b.CopyTo(b.Path() + ".older"); err != nil {
		t.Fatal(err)
	}
	must(t)(b.Append(p.takenIn(6)))
	b = reopen(t, b, daily(clock()))
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	if err := os.Rename(b.Path()+".older", b.Path()); err != nil {
		t.Fatal(err)
	}
	if r := checked(t, b.Path()); r.Whole() || !strings.Contains(r.Wrong[0], "holds 2 entries, the book only 1") {
		t.Errorf("%+v", r)
	}
}

// Where SQLite can't write beside the book, it is read all the same. (A folder stands in
// the way, since rights would not hinder root.)
func TestWhereABookCannotBeWritten(t *testing.T) {
	path, _ := filled(t)
	if err := os.Mkdir(path+"-shm", 0o700); err != nil {
		t.Fatal(err)
	}
	b, err := Open(path, options())
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	if !errors.Is(b.ReadOnly(), ErrReadOnly) || len(b.Stock().Lots()) != 40 {
		t.Errorf("%v, %d lots", b.ReadOnly(), len(b.Stock().Lots()))
	}
	if _, err := b.Append((&pen{t: t}).takenIn(1)); !errors.Is(err, ErrReadOnly) {
		t.Errorf("%v", err)
	}
	if _, err := b.KeepPaper([]byte("x")); !errors.Is(err, ErrReadOnly) {
		t.Errorf("%v", err)
	}
}

// The making of a book was cut short: it is finished when it is opened.
func TestAHalfMadeBookIsFinished(t *testing.T) {
	path := filepath.Join(t.TempDir(), "half.book")
	if err := os.WriteFile(path, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	o := options()
	o.VFS = diskName
	b, err := connect(path, o, sqlite3.OPEN_READWRITE, nil)
	if err == nil {
		err = errors.Join(b.conn.EnableChecksums("main"), b.conn.Exec(fmt.Sprintf("pragma journal_mode = wal; pragma application_id = %d", applicationID)), b.conn.Close())
	}
	if err != nil {
		t.Fatal(err)
	}
	whole, err := Open(path, options())
	if err != nil {
		t.Fatal(err)
	}
	defer whole.Close()
	must(t)(whole.Append((&pen{t: t}).takenIn(1)))
}

func TestALockedBookIsTold(t *testing.T) {
	b, p := newBook(t)
	o := options()
	o.Busy = 20 * time.Millisecond
	other, err := Open(b.Path(), o)
	if err != nil {
		t.Fatal(err)
	}
	defer other.Close()
	tx, err := b.conn.BeginImmediate()
	if err != nil {
		t.Fatal(err)
	}
	if _, err := other.Append(p.takenIn(1)); err == nil || !strings.Contains(err.Error(), "another program is writing") {
		t.Errorf("%v", err)
	}
	if err := tx.Rollback(); err != nil {
		t.Fatal(err)
	}
	must(t)(other.Append(p.takenIn(1)))
}

func TestDangerousFoldersAreTold(t *testing.T) {
	for path, want := range map[string]bool{
		filepath.FromSlash("/home/gardener/Garden Cloud/2027/garden.book"): true,
		filepath.FromSlash("/home/gardener/books/garden.book"):             false,
	} {
		if _, is := syncing(path); is != want {
			t.Errorf("%s: %v", path, is)
		}
	}
}

// A clock set back a day changes what is written as the time of writing, and nothing else.
func TestAClockSetBack(t *testing.T) {
	b, p := newBook(t)
	first := p.takenIn(5)
	must(t)(b.Append(first))
	o := options()
	o.Now = func() time.Time { return clock().AddDate(0, 0, -1) }
	b = reopen(t, b, o)
	must(t)(b.Append(p.givenAway(first.ID, 2)))
	if b = reopen(t, b, options()); count(b) != 3 {
		t.Errorf("%d left", count(b))
	}
	if r := checked(t, b.Path()); !r.Whole() {
		t.Errorf("%v", r.Wrong)
	}
}

func TestPapersAndPeople(t *testing.T) {
	b, p := newBook(t)
	content := []byte(strings.Repeat("2027-01-01,-5,3\n", 1000))
	name, err := b.KeepPaper(content)
	if err != nil {
		t.Fatal(err)
	}
	if again, err := b.KeepPaper(content); err != nil || again != name {
		t.Errorf("%s, %v", again, err)
	}
	must(t)(b.Append(p.entry("2027-01-01", "described", fmt.Sprintf(`{"what":"weather","name":"weather.csv","body":{"paper":%q}}`, name))))
	if got, named, err := b.Weather("weather.csv"); err != nil || !named || !bytes.Equal(got, content) {
		t.Errorf("%v, %v, %d bytes", named, err, len(got))
	}
	if _, named, err := b.Weather("other.csv"); named || err != nil {
		t.Errorf("%v, %v", named, err)
	}
	if err := errors.Join(b.Call("p1", "A friend"), b.Call("p2", "Another"), b.Call("p1", "")); err != nil {
		t.Fatal(err)
	}
	people, err := b.People()
	if err != nil || len(people) != 2 || people["p1"] != "" || people["p2"] != "Another" {
		t.Errorf("%v, %v", people, err)
	}
}
