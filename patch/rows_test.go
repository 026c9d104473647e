package patch

import (
	"testing"

	"pgregory.net/rapid"

	"eyeup/odds"
	"eyeup/quantity"
	"eyeup/stock"
)

// Worked by hand: beds of 1 m take two rows at 50 cm, rows of 3 m six plants.
func TestRowsByHand(t *testing.T) {
	sort := func(name string, timing stock.Timing, height quantity.Length, plant int) Variety {
		return Variety{Variety: stock.Variety{Name: name, Kind: "dahlia", Timing: timing, Height: height}, Wish: Would, Plant: plant, Spacing: 0.5, Hand: odds.Exactly(50)}
	}
	b := &Brief{Room: 100, Low: 0.8, Tall: 1.2, Varieties: []Variety{
		sort("low", stock.Early, 0.7, 3), sort("tall late", stock.Late, 1.3, 4), sort("middle", stock.Mid, 1, 5), sort("tall early", stock.Early, 1.25, 4),
	}}
	l := made(t, b)
	rows, err := l.Rows(Bed{Width: 1, Length: 3})
	if err != nil {
		t.Fatal(err)
	}
	want := []Row{
		{1, 1, "dahlia", 6, []RowPart{{3, 1, 4, 1}, {1, 5, 2, 2}}},
		{2, 1, "dahlia", 6, []RowPart{{1, 1, 2, 2}, {2, 3, 4, 3}}},
		{3, 2, "dahlia", 6, []RowPart{{2, 1, 1, 3}, {0, 2, 3, 4}}},
	}
	if len(rows) != len(want) {
		t.Fatalf("%d rows: %+v", len(rows), rows)
	}
	for i := range want {
		if rows[i].Number != want[i].Number || rows[i].Bed != want[i].Bed || rows[i].Holds != want[i].Holds || len(rows[i].Parts) != len(want[i].Parts) {
			t.Fatalf("row %d is %+v, want %+v", i+1, rows[i], want[i])
		}
		for j := range want[i].Parts {
			if rows[i].Parts[j] != want[i].Parts[j] {
				t.Errorf("row %d has %+v, want %+v", i+1, rows[i].Parts[j], want[i].Parts[j])
			}
		}
	}
}

// Every plant stands in one row, no row holds more than it takes, no kinds or spacings share
// one, labels go up, and nothing tall stands before what is low of its kind.
func TestRowsHoldAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawn(t, 8, 9)
		for i := range b.Varieties {
			b.Varieties[i].Height = quantity.Length(rapid.Float64Range(0.3, 1.6).Draw(t, "height"))
		}
		l := made(t, b)
		rows, err := l.Rows(Bed{Width: 1.2, Length: quantity.Length(rapid.Float64Range(0.5, 9).Draw(t, "length"))})
		if err != nil {
			t.Fatal(err)
		}
		placed, label, bed := make([]int, len(l.Places)), 0, 1
		rank := map[string]int{"tall": 1, "middle": 2, "low": 3}
		last := map[string]int{}
		for n, r := range rows {
			free := 1
			for _, part := range r.Parts {
				v := &b.Varieties[part.Variety]
				placed[part.Variety] += part.Count
				if part.From != free || v.Kind != r.Kind || part.Label < label || part.Label > label+1 {
					t.Fatalf("row %d: %+v", r.Number, r)
				}
				free, label = free+part.Count, part.Label
				if at := rank[b.height(v.Height)]; at < last[v.Kind] {
					t.Fatalf("%s stands before what is lower", v.Name)
				} else {
					last[v.Kind] = at
				}
			}
			if free-1 > r.Holds || r.Number != n+1 || r.Bed < bed || r.Bed > bed+1 {
				t.Fatalf("row %+v", r)
			}
			bed = r.Bed
		}
		for i, n := range l.Places {
			if placed[i] != n {
				t.Fatalf("%d of %d stand in rows", placed[i], n)
			}
		}
	})
}

func TestBedsTooSmall(t *testing.T) {
	l := made(t, worked())
	for _, bed := range []Bed{{0, 3}, {3, 0}, {0.4, 3}, {3, 0.4}} {
		if _, err := l.Rows(bed); err == nil {
			t.Errorf("a bed of %v by %v took plants 45 cm apart", bed.Width, bed.Length)
		}
	}
}

// Ten clumps give thirty plants in nine cases of ten, three each. Eight places and two kept
// back want four clumps cut; six clumps, or twenty plants, are over.
func TestHandByHand(t *testing.T) {
	b := worked()
	b.Places, b.Varieties[0].Reserve = 40, 2
	b.Varieties[1].Hand, b.Varieties[1].Clumps, b.Varieties[1].Strike = odds.Exactly(5), 2, true
	l := made(t, b)
	if h := l.Hand(0); h != (Hand{Reserve: 2, Cut: 4, Over: 20, Clumps: 6}) {
		t.Errorf("got %+v", h)
	}
	// Five plants for eight places, from two clumps: both are cut and three are short.
	if h := l.Hand(1); h != (Hand{Cut: 2, Short: 3}) || l.Get(1) != Strike || l.Get(0) != Buy {
		t.Errorf("got %+v, %s, %s", h, l.Get(1), l.Get(0))
	}
}

func TestMixFound(t *testing.T) {
	b := worked(Mix{Kind: "dahlia", By: Timing, Want: []Share{{"late", 0.2}, {"noon", 0.1}}})
	b.Places = 32
	for i := range b.Varieties {
		b.Varieties[i].Wish = Must
	}
	found := made(t, b).Mixed()
	// All are musts and fit: eight late of thirty-two are 1.6 more than a fifth.
	if len(found) != 2 || found[0].Places != 8 || found[0].Of != 32 || found[0].Outside < 1.59 || found[0].Outside > 1.61 || !found[1].Nobody {
		t.Errorf("got %+v", found)
	}
}
