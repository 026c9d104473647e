package demo_test

import (
	"bytes"
	"testing"

	"eyeup/internal/demo"
	"eyeup/stock"
)

// The three years fold without a hitch, and come to the stock list of the folder: as many
// of each variety, as what, and where.
func TestHistoryComesToTheStockList(t *testing.T) {
	entries := demo.NewScribe().History()
	b := stock.New()
	for _, e := range entries {
		if err := b.Replay(e); err != nil {
			t.Fatalf("%s of %s: %v", e.Kind, e.On, err)
		}
	}
	type spot struct {
		variety, place, crate, pack string
		form                        stock.Form
	}
	have := map[spot]int{}
	for _, h := range b.Holdings() {
		if h.Place == "cellar" {
			have[spot{h.Variety.Name, h.Place, h.Crate, h.Pack, h.Form}] += h.Count
		}
	}
	for _, h := range read(t).Stock {
		if got := have[spot{h.Variety.Name, h.Place, h.Crate, h.Pack, h.Form}]; got != h.Count {
			t.Errorf("%s: %d %s in %s crate %s, not %d", h.Variety.Name, got, h.Form, h.Place, h.Crate, h.Count)
		}
	}
	if len(entries) < 1500 || len(b.Yields()) < 90 || len(b.Rounds()) < 200 {
		t.Errorf("%d entries, %d dividings, %d rounds", len(entries), len(b.Yields()), len(b.Rounds()))
	}
}

func TestHistoryIsTheSameEachTime(t *testing.T) {
	a, b := demo.NewScribe().History(), demo.NewScribe().History()
	for i := range a {
		if !bytes.Equal(a[i].Canonical(), b[i].Canonical()) {
			t.Fatalf("entry %d differs", i)
		}
	}
}
