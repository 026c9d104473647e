package patch

import (
	"context"
	"math"
	"testing"

	"pgregory.net/rapid"

	"eyeup/odds"
	"eyeup/quantity"
	"eyeup/solve"
	"eyeup/stock"
)

// drawn makes a small brief by chance.
func drawn(t *rapid.T, varieties, plant int) *Brief {
	b := &Brief{Low: 80 * quantity.Centimetre, Tall: 110 * quantity.Centimetre}
	colours := []string{"red", "white", "dark"}
	for i := range rapid.IntRange(1, varieties).Draw(t, "varieties") {
		v := Variety{Variety: stock.Variety{Name: string(rune('A' + i)), Kind: rapid.SampledFrom([]string{"dahlia", "dahlia", "anemone"}).Draw(t, "kind")}}
		v.Family = rapid.SampledFrom(colours).Draw(t, "family")
		v.Timing = rapid.SampledFrom([]stock.Timing{stock.Early, stock.Late}).Draw(t, "timing")
		v.Wish = rapid.SampledFrom(Wishes()).Draw(t, "wish")
		v.Plant = rapid.IntRange(0, plant).Draw(t, "plant")
		v.Most = v.Plant + rapid.IntRange(0, 1).Draw(t, "more")
		v.Least = rapid.IntRange(0, v.Most).Draw(t, "least")
		v.Reserve = rapid.IntRange(0, 2).Draw(t, "reserve")
		v.Spacing = rapid.SampledFrom([]quantity.Length{20 * quantity.Centimetre, 45 * quantity.Centimetre}).Draw(t, "spacing")
		v.Hand = odds.Exactly(float64(rapid.IntRange(0, plant+2).Draw(t, "hand")))
		if rapid.IntRange(0, 4).Draw(t, "sown") == 0 {
			v.Hand = odds.Exactly(math.NaN())
		}
		b.Varieties = append(b.Varieties, v)
	}
	b.Room = quantity.Area(rapid.Float64Range(0.05, 0.2*float64(varieties*plant)*0.7).Draw(t, "room"))
	if rapid.Bool().Draw(t, "counted") {
		b.Places = rapid.IntRange(1, varieties*plant).Draw(t, "places")
	}
	for _, by := range []Trait{Colour, Timing} {
		if rapid.Bool().Draw(t, "mix") {
			m := Mix{Kind: "dahlia", By: by, Slack: 0.05, Want: []Share{{"red", 0.3}, {"white", 0.2}}}
			if by == Timing {
				m.Want = []Share{{"late", quantity.Share(rapid.Float64Range(0, 1).Draw(t, "late"))}}
			}
			b.Mixes = append(b.Mixes, m)
		}
	}
	return b
}

// every calls try with every list that the brief allows.
func every(b *Brief, try func([]int)) {
	places := make([]int, len(b.Varieties))
	var from func(int)
	from = func(i int) {
		if i == len(places) {
			try(places)
			return
		}
		for places[i] = 0; places[i] <= b.Varieties[i].most(); places[i]++ {
			from(i + 1)
		}
		places[i] = 0
	}
	from(0)
}

func made(t interface{ Fatal(...any) }, b *Brief) *List { return madeBy(t, b, nil) }

func madeBy(t interface{ Fatal(...any) }, b *Brief, solver solve.Solver) *List {
	l, err := Make(context.Background(), b, solver, nil)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// No list of all there are counts for less than the bound, nor is one better than the list
// made by more than its gap.
func TestBruteForce(t *testing.T) {
	for name, solver := range map[string]solve.Solver{"plain": solve.Plain, "none": nil} {
		t.Run(name, func(t *testing.T) { bruteForce(t, solver) })
	}
}

func bruteForce(t *testing.T, solver solve.Solver) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawn(t, 4, 4)
		l := madeBy(t, b, solver)
		c, ok := b.Count(l.Places)
		if !ok || math.Abs(c.Total()-l.Proof.Places) > 1e-9 {
			t.Fatalf("the list %v keeps its limits: %v; it counts for %v, not %v", l.Places, ok, c.Total(), l.Proof.Places)
		}
		least := math.Inf(1)
		every(b, func(places []int) {
			if c, ok := b.Count(places); ok {
				least = min(least, c.Total())
			}
		})
		if _, bound := newSums(b).seek(math.Inf(-1)); bound > least+1e-7 {
			t.Fatalf("prices give a bound of %v, above the best list's %v", bound, least)
		}
		if least < l.Proof.Bound-1e-7 {
			t.Fatalf("a list counts for %v, below the bound of %v", least, l.Proof.Bound)
		}
		if l.Proof.Places-least > l.Proof.Gap+1e-7 {
			t.Fatalf("the list counts for %v, the best for %v: further apart than %v", l.Proof.Places, least, l.Proof.Gap)
		}
	})
}
