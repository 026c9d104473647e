package stock

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"eyeup/civil"
)

// plain is a model that shares nothing with the book: it keeps what was accepted, and
// reckons the counts from the start by looking at one happening after another.
type plain struct{ did []happening }

type happening struct {
	on    civil.Date
	seq   int
	apply func(counts map[string]int)
}

func (p *plain) counts() map[string]int {
	did := slices.Clone(p.did)
	slices.SortStableFunc(did, func(a, b happening) int {
		if a.on != b.on {
			return int(a.on.Sub(b.on))
		}
		return a.seq - b.seq
	})
	counts := map[string]int{}
	for _, h := range did {
		if h.apply != nil {
			h.apply(counts)
		}
	}
	maps.DeleteFunc(counts, func(_ string, n int) bool { return n == 0 })
	return counts
}

// garden draws entries and keeps the book and the model side by side.
type garden struct {
	t     *rapid.T
	book  *Book
	model plain
	made  int
	lots  []string
	done  []Entry

	mended []Entry
}

func newGarden(t *rapid.T) *garden { return &garden{t: t, book: New()} }

var season = civil.MustOn(2026, 11, 1)

func (g *garden) entry(kind, body string) Entry {
	g.made++
	var chance [10]byte
	binary.BigEndian.PutUint64(chance[2:], uint64(g.made)*0x9e3779b97f4a7c15)
	id, err := NewID(time.UnixMilli(int64(g.made)), bytes.NewReader(chance[:]))
	if err != nil {
		g.t.Fatal(err)
	}
	canonical, err := Canonical([]byte(body))
	if err != nil {
		g.t.Fatal(err)
	}
	on := season.AddDays(civil.Days(rapid.IntRange(0, 30).Draw(g.t, "day")))
	return Entry{ID: id, Kind: kind, Version: 1, On: on, Body: canonical}
}

var places = []string{"cellar", "glass", "patch"}

// mend draws an entry of those taken, and puts it right: with nothing, or, for what was
// taken in, with another count. The model does the same to what it keeps of it.
func (g *garden) mend() {
	if len(g.done) == 0 {
		return
	}
	i := rapid.IntRange(0, len(g.done)-1).Draw(g.t, "which")
	head, stands, _ := g.book.Head(g.done[i].ID)
	n := rapid.IntRange(1, 9).Draw(g.t, "n")
	body := fmt.Sprintf(`{"target":%q,"nothing":true}`, head)
	var apply func(map[string]int)
	if g.done[i].Kind == "taken in" && (n > 4 || !stands) {
		lot := LotID{g.done[i].ID, 0}.String()
		body = fmt.Sprintf(`{"target":%q,"body":{"variety":"V","kind":"dahlia","form":"clump","count":%d,"place":"glass"}}`, head, n)
		apply = func(c map[string]int) { c[lot+"glass"] += n }
	}
	e := g.entry("put right", body)
	if _, err := g.book.Add(e); err != nil {
		return
	}
	g.book.Keep()
	g.model.did[i].apply = apply
	g.mended = append(g.mended, e)
}

// step draws one entry, adds it, and if the book took it lets the model do the same.
func (g *garden) step() {
	place := rapid.SampledFrom(places)
	n := rapid.IntRange(1, 9).Draw(g.t, "n")
	from := place.Draw(g.t, "from")
	to := place.Draw(g.t, "to")
	what := rapid.IntRange(0, 5).Draw(g.t, "what")
	if len(g.lots) == 0 {
		what = 0
	}
	var lot string
	if what > 0 {
		lot = rapid.SampledFrom(g.lots).Draw(g.t, "lot")
	}
	var e Entry
	var apply func(map[string]int)
	switch what {
	case 0:
		e = g.entry("taken in", fmt.Sprintf(`{"variety":"V%d","kind":"dahlia","form":"clump","count":%d,"place":%q}`, n, n, from))
		lot = LotID{e.ID, 0}.String()
		apply = func(c map[string]int) { c[lot+from] += n }
	case 1:
		e = g.entry("moved", fmt.Sprintf(`{"lot":%q,"place":%q,"count":%d,"to":{"place":%q}}`, lot, from, n, to))
		apply = func(c map[string]int) { c[lot+from] -= n; c[lot+to] += n }
	case 2:
		e = g.entry("given away", fmt.Sprintf(`{"lot":%q,"place":%q,"count":%d}`, lot, from, n))
		apply = func(c map[string]int) { c[lot+from] -= n }
	case 3:
		e = g.entry("round", fmt.Sprintf(`{"lot":%q,"place":%q,"whole":true,"firm":%d,"lost":1}`, lot, from, n))
		apply = func(c map[string]int) { c[lot+from] = n }
	case 4:
		e = g.entry("divided", fmt.Sprintf(`{"from":%q,"place":%q,"clumps":%d,"good":%d}`, lot, from, 1, n))
		young := LotID{e.ID, 0}.String()
		apply = func(c map[string]int) { c[lot+from]--; c[young+from+"÷"] += n }
	case 5:
		e = g.entry("set apart", fmt.Sprintf(`{"lot":%q,"place":%q,"count":%d,"why":"promised"}`, lot, from, n))
		young := LotID{e.ID, 0}.String()
		apply = func(c map[string]int) { c[lot+from] -= n; c[young+from] += n }
	}
	if _, err := g.book.Add(e); err != nil {
		return
	}
	g.book.Keep()
	g.done = append(g.done, e)
	g.model.did = append(g.model.did, happening{e.On, len(g.model.did), apply})
	if what == 0 || what == 5 {
		g.lots = append(g.lots, LotID{e.ID, 0}.String())
	}
}

// standing lists what the book has, keyed as the model keys it.
func standing(b *Book) map[string]int {
	all := map[string]int{}
	for _, l := range b.Lots() {
		for _, s := range l.Standing {
			key := l.ID.String() + s.Spot.Place
			if s.Spot.Form == Division {
				key += "÷"
			}
			all[key] += s.Count
		}
	}
	return all
}

// tellAll writes all that a book has to say.
func tellAll(b *Book) string {
	var s strings.Builder
	for _, l := range b.Lots() {
		life, _ := b.Life(string(l.Code))
		fmt.Fprintf(&s, "%+v %+v\n", l, life)
	}
	fmt.Fprintf(&s, "%+v\n%+v\n%v\n", b.Rounds(), b.Yields(), b.Varieties())
	return s.String()
}

// Any legal sequence folds to the counts of the plain model, whatever the order in which
// it was written down; none is ever below nothing; a refused entry leaves no trace.
func TestAnyLegalSequenceConserves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := newGarden(t)
		for range 40 {
			before := tellAll(g.book)
			taken := len(g.done)
			g.step()
			if len(g.done) == taken && tellAll(g.book) != before {
				t.Fatal("a refused entry left a trace")
			}
		}
		if got, want := standing(g.book), g.model.counts(); !maps.Equal(got, want) {
			t.Fatalf("the book has %v, the model %v", got, want)
		}
	})
}

// The same holds when entries are put right among the others, and a book made by the same
// entries again says the same.
func TestPuttingRightConserves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := newGarden(t)
		var all []Entry
		for range 40 {
			before, done, mended := tellAll(g.book), len(g.done), len(g.mended)
			if rapid.IntRange(0, 3).Draw(t, "mend") == 0 {
				g.mend()
			} else {
				g.step()
			}
			all = append(append(all, g.done[done:]...), g.mended[mended:]...)
			if len(g.done) == done && len(g.mended) == mended && tellAll(g.book) != before {
				t.Fatal("a refused entry left a trace")
			}
			if got, want := standing(g.book), g.model.counts(); !maps.Equal(got, want) {
				t.Fatalf("the book has %v, the model %v", got, want)
			}
		}
		again := New()
		if err := again.Replay(all...); err == nil && tellAll(again) != tellAll(g.book) {
			t.Fatal("in one go it comes to something else")
		}
		again = New()
		for _, e := range all {
			if err := again.Replay(e); err != nil {
				t.Fatal(err)
			}
		}
		if tellAll(again) != tellAll(g.book) {
			t.Fatal("made again it says something else")
		}
	})
}

// A book made of a snapshot says the same, and goes on the same.
func TestSnapshotsSayTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := newGarden(t)
		for range 20 {
			g.step()
		}
		again, err := Restore(g.book.Snapshot())
		if err != nil || tellAll(again) != tellAll(g.book) {
			t.Fatalf("another book: %v", err)
		}
		taken := len(g.done)
		for range 10 {
			g.step()
		}
		if err := again.Replay(g.done[taken:]...); err != nil || tellAll(again) != tellAll(g.book) {
			t.Fatalf("it goes on otherwise: %v", err)
		}
	})
}

// What is undone might never have been; what is taken back neither.
func TestUndoRestores(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := newGarden(t)
		for range 20 {
			g.step()
		}
		counts := standing(g.book)
		taken := len(g.done)
		g.step()
		if len(g.done) == taken {
			return
		}
		undo := g.entry("put right", fmt.Sprintf(`{"target":%q,"nothing":true}`, g.done[taken].ID))
		if _, err := g.book.Add(undo); err != nil {
			t.Fatal(err)
		}
		if got := standing(g.book); !maps.Equal(got, counts) {
			t.Fatalf("%v, want %v", got, counts)
		}
		g.book.TakeBack()
		if got := standing(g.book); maps.Equal(got, counts) && g.done[taken].Kind == "taken in" {
			t.Fatal("taking back the undoing did nothing")
		}
	})
}

// Entries that concern different lots may be written down in either order.
func TestIndependentEntriesCommute(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := newGarden(t)
		a := g.entry("taken in", `{"variety":"A","kind":"dahlia","form":"clump","count":9,"place":"cellar"}`)
		b := g.entry("taken in", `{"variety":"B","kind":"dahlia","form":"clump","count":9,"place":"cellar"}`)
		a.On, b.On = season, season
		n := rapid.IntRange(1, 9).Draw(t, "n")
		c := g.entry("given away", fmt.Sprintf(`{"lot":%q,"count":%d}`, LotID{a.ID, 0}, n))
		d := g.entry("divided", fmt.Sprintf(`{"from":%q,"clumps":%d,"good":3}`, LotID{b.ID, 0}, n))
		one, other := New(), New()
		if err := one.Replay(a, b, c, d); err != nil {
			t.Fatal(err)
		}
		if err := other.Replay(a, b, d, c); err != nil {
			t.Fatal(err)
		}
		if !maps.Equal(standing(one), standing(other)) {
			t.Fatalf("%v, %v", standing(one), standing(other))
		}
	})
}

// A go of several is all or nothing.
func TestAGoIsAllOrNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := newGarden(t)
		for range 10 {
			g.step()
		}
		before := tellAll(g.book)
		good := g.entry("taken in", `{"variety":"A","kind":"dahlia","form":"clump","count":9,"place":"cellar"}`)
		bad := g.entry("given away", fmt.Sprintf(`{"lot":%q,"count":10}`, LotID{good.ID, 0}))
		if _, err := g.book.Add(good, bad); err == nil {
			t.Fatal("ten of nine were given away")
		}
		if tellAll(g.book) != before || g.book.Holds(good.ID) {
			t.Fatal("a refused go left a trace")
		}
	})
}
