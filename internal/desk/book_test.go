package desk

import (
	"bytes"
	"errors"
	"io"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"eyeup/civil"
	"eyeup/stock"
)

// bookDay is a morning in January on which all these tests are run.
func bookDay() time.Time { return time.Date(2027, 1, 15, 9, 0, 0, 0, time.UTC) }

func newTestBook(t *testing.T) *StockBook {
	t.Helper()
	b, err := NewStockBook(filepath.Join(t.TempDir(), "garden.book"), bookDay)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = b.Close() })
	return b
}

// demoBook is the invented garden with its history.
func demoBook(t *testing.T) *StockBook {
	t.Helper()
	b := newTestBook(t)
	if err := b.Demo(); err != nil {
		t.Fatal(err)
	}
	return b
}

func TestBookAnswersFollowTheirSchema(t *testing.T) {
	b := demoBook(t)
	lots := b.Lots()
	if len(*lots) < 40 {
		t.Fatalf("%d rows", len(*lots))
	}
	holds(t, "book lots", lots)
	code := (*lots)[0].Code
	lot, err := b.Lot(code)
	if err != nil || lot.Left == 0 || len(lot.Life) < 5 {
		t.Fatalf("%+v, %v", lot, err)
	}
	holds(t, "book lot", lot)
	kin, err := b.Kin(code)
	if err != nil || len(*kin) == 0 {
		t.Fatalf("%v, %v", kin, err)
	}
	holds(t, "book kin", kin)
	out, err := b.Outlook(civil.MustOn(2027, 1, 15), civil.MustOn(2027, 3, 20))
	if err != nil || len(out.Varieties) < 34 || len(out.Crates) < 34 {
		t.Fatalf("%+v, %v", out, err)
	}
	holds(t, "book outlook", out)
	for _, a := range []Answer{lots, lot, kin, out} {
		narrow(t, a)
	}
}

// memory is a folder being written.
type memory struct{ fstest.MapFS }

func (m memory) create(name string) (io.WriteCloser, error) {
	return &memoryFile{m: m, name: name}, nil
}

type memoryFile struct {
	bytes.Buffer
	m    memory
	name string
}

func (f *memoryFile) Close() error {
	f.m.MapFS[f.name] = &fstest.MapFile{Data: f.Bytes()}
	return nil
}

// The way out and in: the folder of the invented garden's book makes the same book again,
// to the last hash, with the same codes; and the season that its garden asks for is the
// one that the folder asks for.
func TestTheFolderOfABookMakesItAgain(t *testing.T) {
	b := demoBook(t)
	if err := b.Call("p1", "the one who writes"); err != nil {
		t.Fatal(err)
	}
	out := memory{fstest.MapFS{}}
	if err := b.WriteFolder(out.create); err != nil {
		t.Fatal(err)
	}
	again := newTestBook(t)
	if err := again.ReadFolder(out, "out", civil.MustOn(2027, 1, 15)); err != nil {
		t.Fatal(err)
	}
	var log, logAgain bytes.Buffer // each entry with its hash
	if err := errors.Join(b.WriteLog(&log), again.WriteLog(&logAgain)); err != nil {
		t.Fatal(err)
	}
	if n := bytes.Count(log.Bytes(), []byte("\n")); !bytes.Equal(log.Bytes(), logAgain.Bytes()) || n < 2000 {
		t.Errorf("of %d entries another log is made", n)
	}
	var first, second bytes.Buffer
	if err := errors.Join(WriteJSON(&first, b.Lots()), WriteJSON(&second, again.Lots())); err != nil || first.String() != second.String() {
		t.Errorf("other lots: %v", err)
	}
	people, err := again.Names()
	if err != nil || people["p1"] != "the one who writes" {
		t.Errorf("people %v, %v", people, err)
	}
	garden, _, err := OpenBookGarden(again)
	if err != nil {
		t.Fatal(err)
	}
	demo, err := OpenDemo(civil.MustOn(2027, 1, 15))
	if err != nil {
		t.Fatal(err)
	}
	if garden.Name != demo.Name || len(garden.Places) != len(demo.Places) || garden.Span != demo.Span {
		t.Errorf("%s, %d places, %v; the folder has %s, %d, %v", garden.Name, len(garden.Places), garden.Span, demo.Name, len(demo.Places), demo.Span)
	}
}

func TestABookThatDoesNotSayWhereItLies(t *testing.T) {
	if _, _, err := OpenBookGarden(newTestBook(t)); err == nil || !strings.Contains(err.Error(), "--folder") {
		t.Errorf("%v", err)
	}
}

// An undoing is undone, and undone again: the stock is as it was each time.
func TestUndoOfAnUndo(t *testing.T) {
	b := newTestBook(t)
	add := func(kind string, words ...string) stock.ID {
		t.Helper()
		body, err := Body(kind, words)
		if err != nil {
			t.Fatal(err)
		}
		e, err := b.NewEntry(kind, body)
		if err != nil {
			t.Fatal(err)
		}
		e.On = civil.MustOn(2027, 1, 10)
		if _, err := b.Append(e); err != nil {
			t.Fatal(err)
		}
		return e.ID
	}
	count := func() int {
		n := 0
		for _, r := range *b.Lots() {
			n += r.Count
		}
		return n
	}
	taken := add("taken in", "variety=Pale Heron", "kind=dahlia", "form=clump", "count=9", "place=cellar", "price=4.50 USD")
	given := add("given away", "lot="+stock.LotID{Entry: taken}.String(), "count=4")
	undo := func(id stock.ID, want int) stock.ID {
		t.Helper()
		_, by, err := b.Undo(id)
		if err != nil || count() != want {
			t.Fatalf("%d are left, want %d; %v", count(), want, err)
		}
		return by.ID
	}
	first := undo(given, 9)
	second := undo(first, 5)
	undo(second, 9)
	if _, _, err := b.Undo(given); err == nil {
		t.Error("what was put right was undone past its head")
	}
}

func TestWordsBecomeABody(t *testing.T) {
	for _, c := range []struct{ kind, words, want string }{
		{"moved", "lot=MRMM5 count=3 to.place=glass to.form=pot", `{"count":3,"lot":"MRMM5","to":{"form":"pot","place":"glass"}}`},
		{"round", "lot=MRMM5 whole=yes firm=3 unaccounted=-1 weight=12.5kg", `{"firm":3,"lot":"MRMM5","unaccounted":-1,"weight":{"u":"kg","v":"12.5"},"whole":true}`},
		{"taken in", "variety=a=b crate=1 candidates=A,B", `{"candidates":["A","B"],"crate":"1","variety":"a=b"}`},
		{"put right", "target=x nothing=yes", `{"nothing":true,"target":"x"}`},
	} {
		got, err := Body(c.kind, strings.Fields(c.words))
		if err != nil || string(got) != c.want {
			t.Errorf("%s %s: %s, %v", c.kind, c.words, got, err)
		}
	}
	for words, want := range map[string]string{
		"count": "not name=value", "count=x": "not a whole number", "all=maybe": "neither yes nor no", "lot.place=x": "has no parts", "to=x": "not JSON", "cont=1": `is "count" meant?`,
	} {
		if _, err := Body("moved", []string{words}); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", words, err)
		}
	}
	if _, err := Body("sold", []string{"price=4.50"}); err == nil || !strings.Contains(err.Error(), "currency") {
		t.Errorf("a price without its currency: %v", err)
	}
}

// Every kind can be asked for, with what is due first.
func TestEveryKindIsAsked(t *testing.T) {
	for _, kind := range stock.Kinds() {
		questions, err := Questions(kind)
		if err != nil || len(questions) == 0 {
			t.Errorf("%s: %v", kind, err)
		}
	}
	questions, err := Questions("taken in")
	if err != nil || !questions[0].Due || questions[len(questions)-1].Due {
		t.Errorf("%+v, %v", questions, err)
	}
	if _, err := Questions("danced"); err == nil {
		t.Error("danced can be asked for")
	}
}
