package garden

import (
	"testing"

	"eyeup/civil"
	"eyeup/stock"
)

// TestWantedIsAllocatedToHoldings compares with allocations made by hand: first what each holding has,
// in order, then by the clumps that are to be cut.
func TestWantedIsAllocatedToHoldings(t *testing.T) {
	of := func(code, place string, form stock.Form, count, plant, reserve, line int) stock.Holding {
		return stock.Holding{Code: code, Variety: stock.Variety{Name: "Pale Heron", Kind: "dahlia"}, Form: form, Count: count, Place: place, Plant: plant, Reserve: reserve, Line: line}
	}
	for _, c := range []struct {
		name string
		in   []stock.Holding
		want [][2]int // plant, reserve
	}{
		{"enough in the first place", []stock.Holding{of("A", "cellar", stock.Clump, 9, 6, 2, 0), of("A", "shed", stock.Clump, 5, 0, 0, 0)}, [][2]int{{6, 2}, {0, 0}}},
		{"some of the second too", []stock.Holding{of("A", "cellar", stock.Clump, 7, 6, 4, 0), of("A", "shed", stock.Clump, 5, 0, 0, 0)}, [][2]int{{6, 1}, {0, 3}}},
		{"two lots of a book", []stock.Holding{of("A", "cellar", stock.Clump, 4, 6, 0, 0), of("B", "cellar", stock.Division, 3, 0, 0, 0)}, [][2]int{{4, 0}, {2, 0}}},
		{"more than there are, by clumps", []stock.Holding{of("A", "cellar", stock.Clump, 4, 20, 1, 0), of("A", "shed", stock.Clump, 2, 0, 0, 0), of("A", "shed", stock.Division, 3, 0, 0, 0)}, [][2]int{{12, 0}, {6, 0}, {2, 1}}},
		{"lots of a list keep their own numbers", []stock.Holding{of("A", "cellar", stock.Clump, 4, 6, 0, 2), of("B", "cellar", stock.Clump, 3, 0, 0, 3)}, [][2]int{{6, 0}, {0, 0}}},
		{"a lot of a list in two places", []stock.Holding{of("A", "cellar", stock.Clump, 4, 6, 0, 2), of("A", "shed", stock.Clump, 3, 0, 0, 3)}, [][2]int{{4, 0}, {2, 0}}},
		{"half of them grow already", []stock.Holding{of("A", "warm room", stock.Pot, 5, 8, 2, 0), of("A", "cellar", stock.Clump, 7, 0, 0, 0)}, [][2]int{{0, 0}, {3, 2}}},
		{"more grow than the patch takes", []stock.Holding{of("A", "cellar", stock.Clump, 7, 8, 3, 0), of("B", "warm room", stock.Pot, 9, 0, 0, 0)}, [][2]int{{0, 2}, {0, 0}}},
		{"all of them grow already", []stock.Holding{of("A", "cellar", stock.Clump, 7, 8, 3, 0), of("B", "warm room", stock.Pot, 12, 0, 0, 0)}, [][2]int{{0, 0}, {0, 0}}},
		{"packets of seed", []stock.Holding{of("A", "drawer", stock.Seed, 1, 30, 0, 0), of("A", "shed", stock.Seed, 1, 0, 0, 0)}, [][2]int{{30, 0}, {0, 0}}},
	} {
		got := allocateWanted(c.in, func(h stock.Holding) bool { return h.Form == stock.Pot })
		for i, h := range got {
			if [2]int{h.Plant, h.Reserve} != c.want[i] {
				t.Errorf("%s: %d and %d of %s in %s, want %v", c.name, h.Plant, h.Reserve, h.Code, h.Place, c.want[i])
			}
		}
	}
}

// TestOnlyPotsOfThisSeasonGrow distinguishes pots of this season from older pots and from pots that rest
// in a store.
func TestOnlyPotsOfThisSeasonGrow(t *testing.T) {
	g, err := OpenDemo(civil.MustOn(2027, 3, 22))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		form  stock.Form
		place string
		since civil.Date
		line  int
		want  bool
	}{
		{stock.Pot, "warm room", civil.MustOn(2027, 3, 1), 0, true},
		{stock.Pot, "warm room", civil.MustOn(2026, 5, 1), 0, false},
		{stock.Pot, "cellar", civil.MustOn(2027, 3, 1), 0, false},
		{stock.Plant, "patch", civil.MustOn(2027, 6, 1), 0, true},
		{stock.Tray, "warm room", civil.Date{}, 7, true},
		{stock.Clump, "warm room", civil.MustOn(2027, 3, 1), 0, false},
	} {
		h := stock.Holding{Form: c.form, Place: c.place, Since: c.since, Line: c.line}
		if got := g.growsNow(h); got != c.want {
			t.Errorf("%s in %s since %v, line %d: grows now is %v", c.form, c.place, c.since, c.line, got)
		}
	}
}
