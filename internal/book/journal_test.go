package book

import (
	"bytes"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// copyAll copies a book and what lies beside it into a folder of its own.
func copyAll(t testing.TB, path string) string {
	t.Helper()
	to := filepath.Join(t.TempDir(), filepath.Base(path))
	for _, suffix := range []string{"", "-wal", journalSuffix} {
		content, err := os.ReadFile(path + suffix)
		if errors.Is(err, os.ErrNotExist) {
			continue
		}
		if err == nil {
			err = os.WriteFile(to+suffix, content, 0o600)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	return to
}

// flip changes one bit of a file.
func flip(t testing.TB, path string, at int, bit byte) {
	t.Helper()
	content, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	content[at] ^= bit
	if err := os.WriteFile(path, content, 0o600); err != nil {
		t.Fatal(err)
	}
}

func logOf(t testing.TB, b *Book) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := b.WriteLog(&out); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// opened opens a book, returns its log, and closes it.
func opened(t testing.TB, path string) (log []byte, warnings []string) {
	t.Helper()
	b, err := Open(path, options())
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	return logOf(t, b), b.Warnings()
}

// The journal is the log, at every moment.
func TestTheJournalIsTheLog(t *testing.T) {
	b, p := newBook(t)
	other, err := Open(b.Path(), options())
	if err != nil {
		t.Fatal(err)
	}
	defer other.Close()
	first := p.takenIn(90)
	must(t)(b.Append(first))
	for n := range 20 {
		writer := []*Book{b, other}[n%2]
		must(t)(writer.Append(p.givenAway(first.ID, 1), p.givenAway(first.ID, 2)))
		if _, err := writer.Append(p.givenAway(first.ID, 500)); err == nil {
			t.Fatal("more was given away than there is")
		}
		journal, err := os.ReadFile(b.Path() + journalSuffix)
		if err != nil || !bytes.Equal(journal, logOf(t, writer)) {
			t.Fatalf("after %d goes the journal is not the log, %v", n, err)
		}
	}
}

// Whatever befalls one of book and journal is made good from the other.
func TestTheShorterIsCompletedFromTheLonger(t *testing.T) {
	path, log := filled(t)
	older := copyAll(t, path)
	b, err := Open(path, options())
	if err != nil {
		t.Fatal(err)
	}
	p := &pen{t: t, n: 1000}
	for range 30 {
		must(t)(b.Append(p.takenIn(3)))
	}
	want := logOf(t, b)
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	for name, befalls := range map[string]func(at string) error{
		"the journal is deleted":      func(at string) error { return os.Remove(at + journalSuffix) },
		"the journal is empty":        func(at string) error { return os.Truncate(at+journalSuffix, 0) },
		"the journal is older":        func(at string) error { return os.WriteFile(at+journalSuffix, log, 0o600) },
		"the journal ends in a line":  func(at string) error { return os.Truncate(at+journalSuffix, int64(len(want)-30)) },
		"the journal's end is broken": func(at string) error { flip(t, at+journalSuffix, len(want)-30, 1); return nil },
		"the journal is another's": func(at string) error {
			return os.WriteFile(at+journalSuffix, bytes.Replace(want, want[:20], []byte(`{"book":"aaaaaaaa-aa`), 1), 0o600)
		},
		"the book is older": func(at string) error { return os.Rename(older, at) },
	} {
		t.Run(name, func(t *testing.T) {
			at := copyAll(t, path)
			if err := befalls(at); err != nil {
				t.Fatal(err)
			}
			if got, _ := opened(t, at); !bytes.Equal(got, want) {
				t.Errorf("the log has %d bytes, want %d", len(got), len(want))
			}
			journal, err := os.ReadFile(at + journalSuffix)
			if err != nil || !bytes.Equal(journal, want) {
				t.Errorf("the journal has %d bytes, want %d, %v", len(journal), len(want), err)
			}
			if r := checked(t, at); !r.Whole() || !r.Journal.Whole || r.Journal.Entries != 230 {
				t.Errorf("%+v", r)
			}
		})
	}
}

// A journal that is deleted while the book is open is made again with the next entry.
func TestADeletedJournalIsMadeAgain(t *testing.T) {
	b, p := newBook(t)
	must(t)(b.Append(p.takenIn(5)))
	if err := os.Remove(b.Path() + journalSuffix); err != nil {
		t.Fatal(err)
	}
	must(t)(b.Append(p.takenIn(6)))
	journal, err := os.ReadFile(b.Path() + journalSuffix)
	if err != nil || !bytes.Equal(journal, logOf(t, b)) {
		t.Errorf("%s, %v", journal, err)
	}
}

// A flipped bit in the write-ahead log loses nothing: what SQLite passes over in silence
// stands in the journal. Without a journal the check tells.
func TestAFlippedBitInTheWriteAheadLog(t *testing.T) {
	b, p := newBook(t)
	for range 60 {
		must(t)(b.Append(p.takenIn(9)))
	}
	want := logOf(t, b)
	crashed := copyAll(t, b.Path())
	info, err := os.Stat(crashed + "-wal")
	if err != nil {
		t.Fatal(err)
	}
	chance := rand.New(rand.NewPCG(5, 15))
	for n := range 60 {
		at := copyAll(t, crashed)
		where, bit := chance.IntN(int(info.Size())), byte(1)<<chance.IntN(8)
		flip(t, at+"-wal", where, bit)
		alone := copyAll(t, at)
		if err := os.Remove(alone + journalSuffix); err != nil {
			t.Fatal(err)
		}
		if r, err := Check(alone, options()); err == nil && r.Whole() && r.Entries < 60 {
			t.Errorf("flip %d at %d: without a journal %d entries are called whole", n, where, r.Entries)
		}
		if got, _ := opened(t, at); !bytes.Equal(got, want) {
			t.Errorf("flip %d at %d: %d bytes of log, want %d", n, where, len(got), len(want))
		}
	}
}

// With a whole journal a restoring brings back every entry, wherever the book was hit.
func TestRestoreLosesNothing(t *testing.T) {
	path, want := filled(t)
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	chance := rand.New(rand.NewPCG(7, 15))
	for n := range 30 {
		at := copyAll(t, path)
		where := chance.IntN(len(whole))
		if n == 0 {
			where = 20 // on the first page, without which nothing can be read
		}
		flip(t, at, where, byte(1)<<chance.IntN(8))
		r, err := Restore(at, "", options())
		if err != nil || len(r.Missing) > 0 || r.Entries != 200 {
			t.Fatalf("flip at %d: %+v, %v", where, r, err)
		}
		if got, _ := opened(t, at); !bytes.Equal(got, want) {
			t.Errorf("flip at %d: the log is another", where)
		}
	}
}

// Where book and journal are both hit, what is missing is told by number and day, and what
// can still be read of it is kept.
func TestRestoreTellsWhatIsMissing(t *testing.T) {
	path, log := filled(t)
	at := copyAll(t, path)
	content, err := os.ReadFile(at)
	if err != nil {
		t.Fatal(err)
	}
	clear(content[:4096])
	if err := os.WriteFile(at, content, 0o600); err != nil {
		t.Fatal(err)
	}
	flip(t, at+journalSuffix, line(log, 151)-40, 4) // the line of entry 150
	r, err := Restore(at, "", options())
	if err != nil {
		t.Fatal(err)
	}
	if r.Entries != 149 || len(r.Missing) != 51 || r.Missing[0].Sequence != 150 || r.Missing[50].Sequence != 200 {
		t.Fatalf("%d entries, missing %+v", r.Entries, r.Missing)
	}
	if says := Numbers(r.Missing); !strings.HasPrefix(says, "150 to 200 (2026-11-02 to 2027-01-11)") {
		t.Error(says)
	}
	loose, err := os.ReadFile(r.Loose)
	if err != nil || bytes.Count(loose, []byte("\n")) != 50 {
		t.Errorf("%d lines are kept, %v", bytes.Count(loose, []byte("\n")), err)
	}
	err = ReadLines(bytes.NewReader(loose), func([]Line) error { return nil })
	if err != nil {
		t.Error(err)
	}
}

// A damaged line of the journal is told, and the journal is begun anew by the day's copy.
func TestADamagedJournalIsMended(t *testing.T) {
	path, log := filled(t)
	flip(t, path+journalSuffix, line(log, 50)+60, 4)
	if r := checked(t, path); !r.Whole() || r.Journal.Whole || r.Journal.Entries != 49 {
		t.Errorf("%+v, journal %+v", r, r.Journal)
	}
	b, err := Open(path, daily(clock()))
	if err != nil {
		t.Fatal(err)
	}
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	if r := checked(t, path); !r.Journal.Whole || r.Journal.Entries != 200 {
		t.Errorf("journal %+v", r.Journal)
	}
}

// failing is a journal that can't be written from some byte on.
type failing struct {
	PlainFile
	room int64
}

func (f *failing) WriteAt(b []byte, at int64) (int, error) {
	if at+int64(len(b)) > f.room {
		return 0, fmt.Errorf("writing: %w", errFull)
	}
	return f.PlainFile.WriteAt(b, at)
}

// A disk that is full when the journal is written is told as full; nothing is acknowledged.
func TestAFullDiskIsCalledFull(t *testing.T) {
	o := options()
	journal := &failing{room: 3000}
	o.OpenPlain = func(path string) (f PlainFile, err error) {
		journal.PlainFile, err = openPlain(path)
		return journal, err
	}
	b, err := Create(filepath.Join(t.TempDir(), "garden.book"), o)
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	p := &pen{t: t}
	taken := int64(0)
	for ; err == nil; taken++ {
		_, err = b.Append(p.takenIn(1))
	}
	if !strings.Contains(err.Error(), "the disk is full") {
		t.Error(err)
	}
	if n, _ := b.Head(); n != taken-1 {
		t.Errorf("%d entries, %d were acknowledged", n, taken-1)
	}
	journal.room = 1 << 20
	must(t)(b.Append(p.takenIn(1)))
}

// Without a copy, papers and names of people are brought over from the damaged book.
func TestRestoreBringsPapersAndPeople(t *testing.T) {
	b, p := newBook(t)
	first := p.takenIn(9)
	must(t)(b.Append(first, p.givenAway(first.ID, 1)))
	paper, err := b.KeepPaper([]byte("date,low,high\n2027-01-01,-5,2\n"))
	if err == nil {
		err = errors.Join(b.Call("p1", "Ines"), b.Close())
	}
	if err != nil {
		t.Fatal(err)
	}
	content, err := os.ReadFile(b.Path())
	if err != nil {
		t.Fatal(err)
	}
	flip(t, b.Path(), bytes.LastIndex(content, first.ID[:12]), 4)
	if _, err := Restore(b.Path(), "", options()); err != nil {
		t.Fatal(err)
	}
	again, err := Open(b.Path(), options())
	if err != nil {
		t.Fatal(err)
	}
	defer again.Close()
	people, err := again.People()
	if err != nil || people["p1"] != "Ines" {
		t.Errorf("%v, %v", people, err)
	}
	if _, err := again.Paper(paper); err != nil {
		t.Error(err)
	}
}
