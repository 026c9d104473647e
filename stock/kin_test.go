package stock

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"eyeup/civil"
)

// scribe writes entries one after another, with ids that count up.
type scribe struct {
	t    testing.TB
	book *Book
	n    uint64
}

func (s *scribe) write(on string, kind, body string) ID {
	s.n++
	day, err := civil.Parse(on)
	if err != nil {
		s.t.Fatal(err)
	}
	e := Entry{ID: ID{0: 1, 6: 0x70, 8: 0x80, 13: byte(s.n >> 16), 14: byte(s.n >> 8), 15: byte(s.n)}, Kind: kind, Version: 1, On: day, Body: []byte(body)}
	if err := s.book.Replay(e); err != nil {
		s.t.Fatal(err)
	}
	return e.ID
}

// A plant in the patch shows mosaic. Its kin are what came of it, what it came of, what
// was cut beside it and what stood beside it; nothing else in the garden is.
func TestKinOfASickPlant(t *testing.T) {
	s := &scribe{t: t, book: New()}
	take := func(name string, n int) ID {
		return s.write("2026-11-02", "taken in", fmt.Sprintf(`{"variety":%q,"kind":"dahlia","form":"clump","count":%d,"place":"cellar"}`, name, n))
	}
	heron, ferry, tide, row := take("Pale Heron", 5), take("Plum Ferry", 5), take("Quiet Tide", 5), take("Ember Row", 5)
	divide := func(of ID, on, more string) ID {
		return s.write(on, "divided", fmt.Sprintf(`{"from":"%s/0","clumps":2,"good":6%s}`, of, more))
	}
	sick := divide(heron, "2027-03-20", `,"doubtful":1,"sitting":"bench 20 March","tools":"not cleaned"`)
	after := divide(ferry, "2027-03-20", `,"sitting":"bench 20 March","tools":"cleaned between lots"`)
	alone := divide(row, "2027-03-20", `,"knife":"the red one"`)
	plant := func(lot ID, bed, rowNo string) {
		s.write("2027-05-28", "planted out", fmt.Sprintf(`{"lot":"%s/0","count":4,"to":{"place":"patch","bed":%q,"row":%q}}`, lot, bed, rowNo))
	}
	plant(sick, "2", "1")
	plant(alone, "2", "2")
	cuttings := s.write("2027-06-01", "cuttings taken", fmt.Sprintf(`{"from":"%s/0","place":"patch","count":3,"to":{"place":"glass"}}`, sick))
	s.write("2027-06-10", "given away", fmt.Sprintf(`{"lot":"%s/0","all":true}`, cuttings))

	kin, err := s.book.Kin(LotID{sick, 0}.String())
	if err != nil {
		t.Fatal(err)
	}
	want := []struct {
		lot LotID
		way Way
		why string
	}{
		{LotID{cuttings, 0}, Down, "struck from"},
		{LotID{heron, 0}, Up, "was divided from"},
		{LotID{sick, 1}, Side, "of the same mother"},
		{LotID{ferry, 0}, Side, "cut at the same sitting, bench 20 March, after it; tools: cleaned between lots"},
		{LotID{after, 0}, Side, "cut at the same sitting"},
		{LotID{alone, 0}, Side, "in the next row, patch bed 2 row 2, 2027-05-28 to now"},
	}
	if len(kin) != len(want) {
		t.Fatalf("%d kin, want %d: %+v", len(kin), len(want), kin)
	}
	for _, w := range want {
		at := slices.IndexFunc(kin, func(k Kin) bool { return k.Lot.ID == w.lot })
		if at < 0 || kin[at].Way != w.way || !strings.Contains(strings.Join(kin[at].Why, "\n"), w.why) {
			t.Errorf("want %s %s %q, got %+v", w.lot, w.way, w.why, kin)
		}
	}
	if slices.ContainsFunc(kin, func(k Kin) bool { return k.Lot.ID == LotID{tide, 0} }) {
		t.Error("Quiet Tide never met it")
	}
}

// big makes a book of so many lots, each taken in, moved, divided in part and looked at.
func big(t testing.TB, lots int) *scribe {
	s := &scribe{t: t, book: New()}
	ids := make([]ID, lots/2)
	for i := range ids {
		ids[i] = s.write("2026-11-02", "taken in", fmt.Sprintf(`{"variety":"Variety %d","kind":"dahlia","form":"clump","count":9,"place":"cellar","crate":"%d"}`, i%500, i%2000))
	}
	for _, id := range ids {
		s.write("2027-01-10", "round", fmt.Sprintf(`{"lot":"%s/0","whole":true,"firm":8,"lost":1}`, id))
	}
	for i, id := range ids {
		s.write("2027-03-20", "divided", fmt.Sprintf(`{"from":"%s/0","clumps":3,"good":9,"sitting":"s%d"}`, id, i/20))
	}
	return s
}

func BenchmarkFoldOfAMillion(b *testing.B) {
	book := big(b, 100_000).book
	lines := slices.Clone(book.lines)
	for len(lines) < 1_000_000 {
		lines = append(lines, book.lines...)
	}
	lines = lines[:1_000_000]
	order := make([]int32, len(lines))
	for i := range order {
		order[i] = int32(i)
	}
	counts := make([]int32, len(book.holdings))
	for b.Loop() {
		clear(counts)
		fold(lines, order, counts, nil)
	}
}

func BenchmarkReplay(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		big(b, 2000)
	}
	b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N)/3000, "µs/entry")
}

func BenchmarkRestore100000Lots(b *testing.B) {
	snapshot := big(b, 100_000).book.Snapshot()
	b.SetBytes(int64(len(snapshot)))
	for b.Loop() {
		if _, err := Restore(snapshot); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkKinAmong100000Lots(b *testing.B) {
	book := big(b, 100_000).book
	for n := 0; b.Loop(); n++ {
		if _, err := book.Kin(book.lots[n%len(book.lots)].id.String()); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkLotsOf10000(b *testing.B) {
	book := big(b, 10_000).book
	for b.Loop() {
		book.Lots()
	}
}

func TestTheLastDayOfEachKind(t *testing.T) {
	s := &scribe{t: t, book: New()}
	id := s.write("2026-11-02", "taken in", `{"variety":"Pale Heron","kind":"dahlia","form":"clump","count":5,"place":"cellar"}`)
	lot := LotID{id, 0}.String()
	s.write("2027-03-14", "eyed", fmt.Sprintf(`{"lot":%q,"count":2}`, lot))
	s.write("2027-03-12", "eyed", fmt.Sprintf(`{"lot":%q,"count":1}`, lot))
	l, err := s.book.Find(lot)
	if err != nil || l.Last("eyed") != civil.MustOn(2027, 3, 14) || l.Last("taken in") != civil.MustOn(2026, 11, 2) || !l.Last("up").IsZero() || !l.Last("danced").IsZero() {
		t.Errorf("eyed %s, taken in %s, up %s, %v", l.Last("eyed"), l.Last("taken in"), l.Last("up"), err)
	}
}
