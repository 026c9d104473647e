package book

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/stock"
)

// A copy of a book of any size opens. Of a large one much still stands in the write-ahead
// log when it was copied.
func TestACopyOfALargeBookOpens(t *testing.T) {
	b, p := newBook(t)
	for range 8 {
		var all []stock.Entry
		for range 1000 {
			all = append(all, p.takenIn(3))
		}
		must(t)(b.Append(all...))
	}
	path := filepath.Join(t.TempDir(), "copy.book")
	if err := b.CopyTo(path); err != nil {
		t.Fatal(err)
	}
	if r := checked(t, path); !r.Whole() || r.Entries != 8000 || r.ID != b.ID() {
		t.Errorf("%d entries, %v", r.Entries, r.Wrong)
	}
	for _, suffix := range []string{"-wal", "-shm", lockSuffix} {
		if _, err := os.Stat(path + suffix); err == nil {
			t.Errorf("%s was left beside the copy", suffix)
		}
	}
}

// A clock that jumped ahead for a day clears no copies away.
func TestAClockThatJumpsClearsNothing(t *testing.T) {
	b, p := newBook(t)
	must(t)(b.Append(p.takenIn(5)))
	now := clock()
	var folder string
	for range 28 {
		b = reopen(t, b, daily(now))
		must(t)(b.Append(p.takenIn(5)))
		folder = b.Path() + copiesSuffix
		now = now.AddDate(0, 0, 1)
	}
	b = reopen(t, b, daily(time.Date(2099, 5, 1, 9, 0, 0, 0, time.UTC)))
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	copies, err := copiesIn(folder)
	if err != nil || len(copies) != 29 {
		t.Errorf("%d copies, %v", len(copies), err)
	}
	r := checked(t, b.Path())
	if told := strings.Join(r.Notices, " "); !strings.Contains(told, "2099-05-01.book bears a day to come") {
		t.Error(told)
	}
}

// Restoring takes the copy that holds most entries, not the one with the latest name.
func TestRestoreTakesTheFullestCopy(t *testing.T) {
	b, p := newBook(t)
	must(t)(b.Append(p.takenIn(5)))
	folder := b.Path() + copiesSuffix
	if err := b.CopyTo(filepath.Join(folder, "2099-05-01.book")); err != nil {
		t.Fatal(err)
	}
	must(t)(b.Append(p.takenIn(6)))
	if err := b.CopyTo(filepath.Join(folder, "2027-01-15.book")); err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(b.Close(), os.Remove(b.Path()), os.Remove(b.Path()+journalSuffix)); err != nil {
		t.Fatal(err)
	}
	r, err := Restore(b.Path(), "", options())
	if err != nil || r.From.Made != civil.MustOn(2027, 1, 15) || r.Entries != 2 {
		t.Errorf("%+v, %v", r, err)
	}
}

// Copies of another book are told, and never put in the place of this one.
func TestCopiesOfAnotherBookAreNotOffered(t *testing.T) {
	b, p := newBook(t)
	must(t)(b.Append(p.takenIn(5), p.takenIn(6)))
	folder := b.Path() + copiesSuffix
	if err := b.CopyTo(filepath.Join(folder, "2027-01-14.book")); err != nil {
		t.Fatal(err)
	}
	path := b.Path()
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	removeAll(path)
	again, err := Create(path, options())
	if err != nil {
		t.Fatal(err)
	}
	if again.ID() == b.ID() {
		t.Fatal("two books have one id")
	}
	must(t)(again.Append(p.takenIn(7)))
	if err := again.Close(); err != nil {
		t.Fatal(err)
	}
	r := checked(t, path)
	if told := strings.Join(r.Notices, " "); !r.Whole() || !strings.Contains(told, "2027-01-14.book is of another book") {
		t.Errorf("%v, %s", r.Wrong, told)
	}
	flip(t, path, 20, 4)
	if err := os.Remove(path + journalSuffix); err != nil {
		t.Fatal(err)
	}
	if got, err := Restore(path, "", options()); err == nil {
		t.Errorf("restored from %s", got.From.Path)
	}
}

// Copies go to another disk as well, where one is named.
func TestCopiesGoToAnotherDiskToo(t *testing.T) {
	b, p := newBook(t)
	must(t)(b.Append(p.takenIn(5)))
	o := daily(clock())
	o.CopiesTo = t.TempDir()
	b = reopen(t, b, o)
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	for _, folder := range []string{filepath.Dir(b.Path()), o.CopiesTo} {
		if r := checked(t, filepath.Join(folder, "garden.book.copies", "2027-01-15.book")); !r.Whole() || r.Entries != 1 {
			t.Errorf("%s: %+v", folder, r)
		}
	}
}

// A new book has an id of version 7, which its log and its copies bear.
func TestABookHasAnIdentity(t *testing.T) {
	b, p := newBook(t)
	must(t)(b.Append(p.takenIn(5)))
	if id := b.ID(); id[6]>>4 != 7 {
		t.Errorf("%s is not of version 7", id)
	}
	log := logOf(t, b)
	if want := `{"book":"` + b.ID().String() + "\"}\n"; !strings.HasPrefix(string(log), want) {
		t.Errorf("the log begins with %.60s", log)
	}
	again, err := Create(filepath.Join(t.TempDir(), "again.book"), options())
	if err != nil {
		t.Fatal(err)
	}
	defer again.Close()
	if err := again.ReadLog(strings.NewReader(string(log))); err != nil || again.ID() != b.ID() {
		t.Errorf("%s, %v", again.ID(), err)
	}
	if err := b.conn.Exec("delete from identity"); err == nil {
		t.Error("the id of a used book can be taken away")
	}
	if err := b.conn.Exec("update identity set id = zeroblob(16)"); err == nil {
		t.Error("the id of a book can be changed")
	}
}
