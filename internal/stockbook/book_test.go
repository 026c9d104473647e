package stockbook

import (
	"path/filepath"
	"strings"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/internal/report"
	"eyeup/internal/testkit"
	"eyeup/stock"
)

// bookDay is the time at which all these tests run: a morning in January.
func bookDay() time.Time { return time.Date(2027, 1, 15, 9, 0, 0, 0, time.UTC) }

func newTestBook(t *testing.T) *Book {
	t.Helper()
	b, err := New(filepath.Join(t.TempDir(), "garden.book"), bookDay)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = b.Close() })
	return b
}

// demoBook returns a book of the invented garden with its history.
func demoBook(t *testing.T) *Book {
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
	testkit.Holds(t, "book lots", lots)
	code := (*lots)[0].Code
	lot, err := b.Lot(code)
	if err != nil || lot.Left == 0 || len(lot.Life) < 5 {
		t.Fatalf("%+v, %v", lot, err)
	}
	testkit.Holds(t, "book lot", lot)
	kin, err := b.Kin(code)
	if err != nil || len(*kin) == 0 {
		t.Fatalf("%v, %v", kin, err)
	}
	testkit.Holds(t, "book kin", kin)
	out, err := b.Outlook(civil.MustOn(2027, 1, 15), civil.MustOn(2027, 3, 20))
	if err != nil || len(out.Varieties) < 34 || len(out.Crates) < 34 {
		t.Fatalf("%+v, %v", out, err)
	}
	testkit.Holds(t, "book outlook", out)
	for _, a := range []report.Answer{lots, lot, kin, out} {
		testkit.Narrow(t, a)
	}
}

// Undoing an undo, twice over, restores the stock each time.
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
			t.Fatalf("%d left, want %d; %v", count(), want, err)
		}
		return by.ID
	}
	first := undo(given, 9)
	second := undo(first, 5)
	undo(second, 9)
	if _, _, err := b.Undo(given); err == nil {
		t.Error("an entry was undone although a later correction replaced it")
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
		"count": "not name=value", "count=x": "not a whole number", "all=maybe": "neither yes nor no", "lot.place=x": "has no parts", "to=x": "must be JSON", "cont=1": `is "count" meant?`,
	} {
		if _, err := Body("moved", []string{words}); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", words, err)
		}
	}
	if _, err := Body("sold", []string{"price=4.50"}); err == nil || !strings.Contains(err.Error(), "currency") {
		t.Errorf("a price without its currency: %v", err)
	}
}

// Every kind of entry has questions, required ones first.
func TestEveryKindHasQuestions(t *testing.T) {
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
		t.Error("an unknown kind has questions")
	}
}
