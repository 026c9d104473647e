package patch

import (
	"context"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"eyeup/odds"
	"eyeup/quantity"
	"eyeup/solve"
	"eyeup/stock"
)

// worked is the case that the guide works out by hand: twenty places, thirty-two wished.
func worked(late ...Mix) *Brief {
	sort := func(name string, wish Wish, timing stock.Timing, colour string) Variety {
		return Variety{
			Variety: stock.Variety{Name: name, Kind: "dahlia", Timing: timing}, Family: colour,
			Wish: wish, Plant: 8, Spacing: 45 * quantity.Centimetre, Hand: odds.Exactly(30), Clumps: 10,
		}
	}
	return &Brief{Places: 20, Mixes: late, Varieties: []Variety{
		sort("Gable Red", Must, stock.Mid, "red"),
		sort("Apron String", Would, stock.Early, "pink"),
		sort("Vesper Barn", Would, stock.Late, "pink"),
		sort("Saddle Room", Could, stock.Mid, "orange"),
	}}
}

var quarterLate = Mix{Kind: "dahlia", By: Timing, Want: []Share{{"late", 0.25}}}

// The sums are done by hand: eight places lost to what could go count a quarter of
// 2 × 1 + 2 × 1.25 + 2 × 1.5 + 2 × 2 = 11.5, or 2.875; two and two lost to what is liked, 4.
func TestWorkedByHand(t *testing.T) {
	l := made(t, worked())
	if !slices.Equal(l.Places, []int{8, 6, 6, 0}) || l.Proof.Places != 6.875 {
		t.Errorf("got %v, counting %v; want 8, 6, 6 and none, counting 6.875", l.Places, l.Proof.Places)
	}
	// A quarter late of twenty places is five. With six, the mix would count 2; with five
	// and seven the wishes count 4.25 in place of 4.
	l = made(t, worked(quarterLate))
	if !slices.Equal(l.Places, []int{8, 7, 5, 0}) || l.Proof.Places != 7.125 {
		t.Errorf("got %v, counting %v; want 8, 7, 5 and none, counting 7.125", l.Places, l.Proof.Places)
	}
	for i, says := range []string{
		"a must, so it has all of its places",
		"lost one place: the patch is full, and",
		"lost three places: the patch is full, and late dahlias already have their share",
		"makes way completely: the patch is full, and it could go, while others are musts or would be liked",
	} {
		if why := l.Why(i); !strings.HasPrefix(why, says) {
			t.Errorf("%s: %q does not say %q", worked().Varieties[i].Name, why, says)
		}
	}
}

// Moving a place from any variety to any other, or giving or taking one, never betters a
// list: all of them fit by Count, which knows nothing of how lists are made.
func TestNoPlaceBetterElsewhere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawn(t, 8, 9)
		l := made(t, b)
		places := slices.Clone(l.Places)
		try := func(i, j int) {
			places[i]--
			if j >= 0 {
				places[j]++
			}
			if c, ok := b.Count(places); ok && c.Total() < l.Proof.Places-2*telling {
				t.Fatalf("%v counts for %v, the list %v for %v", places, c.Total(), l.Places, l.Proof.Places)
			}
			copy(places, l.Places)
		}
		for i := range places {
			for j := range places {
				if i != j {
					try(i, j)
				}
			}
			try(i, -1)
		}
	})
}

// Whatever a variety lost, it is said why, in words.
func TestEveryLossIsExplained(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawn(t, 8, 9)
		l := made(t, b)
		for i := range b.Varieties {
			why := l.Why(i)
			lost := l.Places[i] < b.Varieties[i].Plant
			if lost != strings.Contains(why, ": ") || strings.HasSuffix(why, ": ") || strings.Contains(why, "%!") {
				t.Fatalf("%d of %d places: %q", l.Places[i], b.Varieties[i].Plant, why)
			}
		}
	})
}

// Nothing is lost between what is in hand, planted, kept back, over and short.
func TestNothingIsLost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawn(t, 8, 9)
		l := made(t, b)
		used := 0.0
		for i := range b.Varieties {
			v, h := &b.Varieties[i], l.Hand(i)
			used += float64(l.Places[i]) * float64(v.Spacing) * float64(v.Spacing)
			if h.Sown {
				continue
			}
			if got, want := int(v.Hand.Low)+h.Short, l.Places[i]+v.Reserve+h.Over; got != want {
				t.Fatalf("%d in hand and %d short do not make %d planted, %d kept back and %d over", int(v.Hand.Low), h.Short, l.Places[i], v.Reserve, h.Over)
			}
			if h.Reserve > v.Reserve || h.Over > 0 && h.Short > 0 {
				t.Fatalf("%+v makes no sense for a reserve of %d", h, v.Reserve)
			}
		}
		if math.Abs(used-l.Used) > 1e-9 || used > float64(b.Room)+1e-9 {
			t.Fatalf("%v m² used, not %v of %v", used, l.Used, b.Room)
		}
	})
}

func TestSameBriefSameList(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawn(t, 8, 9)
		one, two := made(t, b), made(t, b)
		if !reflect.DeepEqual(one.Places, two.Places) || one.Proof != two.Proof {
			t.Fatalf("%v with %v, then %v with %v", one.Places, one.Proof, two.Places, two.Proof)
		}
	})
}

// The programme and Count agree on every list: its values keep every row if and only if it
// is allowed, and cost what Count says.
func TestProgrammeAgreesWithCount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawn(t, 3, 4)
		p := newSums(b).programme()
		every(b, func(places []int) {
			c, ok := b.Count(places)
			s := newSums(b)
			for i, n := range places {
				s.add(i, n-s.places[i])
			}
			v, err := p.Check(p.values(s))
			if !ok {
				if v.Holds(1e-9) {
					t.Fatalf("%v is no list, but keeps every row", places)
				}
				return
			}
			if err != nil || !v.Holds(1e-9) || math.Abs(v.Least-c.Total()) > 1e-9 {
				t.Fatalf("%v: %+v, %v; Count says %v", places, v, err, c.Total())
			}
			for j, x := range p.values(s) { // what counts is no more than the rows ask for
				if values := p.values(s); !p.Columns[j].Whole && p.Columns[j].Cost > 0 && x > 1e-3 {
					values[j] -= 1e-3
					if v, _ := p.Check(values); v.Holds(1e-9) {
						t.Fatalf("%v: %s could be less than %v", places, p.Columns[j].Name, x)
					}
				}
			}
			if !slices.Equal(p.read(p.values(s)), places) {
				t.Fatalf("%v is read as %v", places, p.read(p.values(s)))
			}
		})
	})
}

// Two of sixteen late, where a quarter is wished and an eighth may be missed, are enough; one
// is one too few, seven are one too many: worked by hand.
func TestSlackCountsNothing(t *testing.T) {
	slack := quarterLate
	slack.Slack = 0.125
	b := worked(slack)
	b.Varieties[0].Most, b.Varieties[2].Wish = 15, Could
	for _, c := range []struct {
		late int
		mix  float64
	}{{2, 0}, {6, 0}, {7, 2}, {8, 4}, {1, 1}, {0, 2}} {
		places := []int{16 - c.late - 4, 4, c.late, 0}
		if places[0] > 15 {
			t.Fatal(places)
		}
		if count, ok := b.Count(places); !ok || count.Mix != c.mix {
			t.Errorf("%d late of 16: %v, want %v (%v)", c.late, count.Mix, c.mix, ok)
		}
	}
}

// Where only a must could give way, that is what is said.
func TestMustsComeFirst(t *testing.T) {
	b := worked()
	b.Varieties, b.Places = b.Varieties[:2], 10
	l := made(t, b)
	if why := l.Why(1); !slices.Equal(l.Places, []int{8, 2}) || why != "lost six places: the patch is full, and the musts come first" {
		t.Errorf("%v: %q", l.Places, why)
	}
}

// Where every wish fits, no solver is asked and the proof is whole.
func TestAllThatFitsNeedsNoSolver(t *testing.T) {
	b := worked()
	b.Places = 40
	l, err := Make(context.Background(), b, nil, nil)
	if err != nil || l.Proof != (Proof{Proved: true}) || !slices.Equal(l.Places, []int{8, 8, 8, 8}) {
		t.Errorf("got %v, %+v, %v", l.Places, l.Proof, err)
	}
}

// Musts that do not fit are told, and share what there is.
func TestMustsThatDoNotFit(t *testing.T) {
	b := worked()
	for i := range b.Varieties {
		b.Varieties[i].Wish, b.Varieties[i].Least = Must, 8
	}
	l := made(t, b)
	if l.Crowd != 12 || l.Proof.Places != 52 { // three lost each: 4 × 4 × (2 × 1 + 1.25)
		t.Errorf("%v counts %v, %d too many; want 52 and twelve too many", l.Places, l.Proof.Places, l.Crowd)
	}
}

// A new variety that is a must gets its places, and what could go gives way first.
func TestRoomForTheNew(t *testing.T) {
	b := worked()
	b.Places = 32
	b.Varieties = append(b.Varieties, Variety{
		Variety: stock.Variety{Name: "Newcomer", Kind: "dahlia"}, Wish: Must, Plant: 5, Spacing: 0.45, Hand: odds.Exactly(5), Whole: 5,
	})
	if l := made(t, b); !slices.Equal(l.Places, []int{8, 8, 8, 3, 5}) {
		t.Errorf("got %v", l.Places)
	}
}

// What stops early still has a list, and a bound that holds.
func TestStoppedEarly(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	b := worked(quarterLate)
	l, err := Make(ctx, b, solve.Plain, nil)
	if err != nil || l.Proof.Bound > 7.125 || l.Proof.Places < 7.125 {
		t.Errorf("%+v, %v", l, err)
	}
}

func TestBriefsRefused(t *testing.T) {
	for says, spoil := range map[string]func(*Brief){
		"no room":            func(b *Brief) { b.Places = 0 },
		"can't be planted":   func(b *Brief) { b.Room = -1 },
		"appears twice":      func(b *Brief) { b.Varieties[1].Name = "Gable Red" },
		"give must have":     func(b *Brief) { b.Varieties[1].Wish = "maybe" },
		"swap them":          func(b *Brief) { b.Varieties[1].Least = 9 },
		"change one of them": func(b *Brief) { b.Varieties[1].Most = 3 },
		"no spacing":         func(b *Brief) { b.Room, b.Varieties[1].Spacing = 20, 0 },
		"a count of -1":      func(b *Brief) { b.Varieties[1].Reserve = -1 },
		"to count on":        func(b *Brief) { b.Varieties[1].Hand = odds.Exactly(-2) },
		"100% or less": func(b *Brief) {
			b.Mixes = []Mix{{Kind: "dahlia", By: Colour, Want: []Share{{"red", 0.7}, {"pink", 0.4}}}}
		},
		"a share of":      func(b *Brief) { b.Mixes = []Mix{{Kind: "dahlia", By: Colour, Want: []Share{{"red", -0.7}}}} },
		"a slack of":      func(b *Brief) { b.Mixes = []Mix{{Kind: "dahlia", By: Colour, Slack: 2}} },
		"give both":       func(b *Brief) { b.Mixes = []Mix{{Kind: "dahlia", By: Height}} },
		"is not a colour": func(b *Brief) { b.Varieties[1].Colour = "red" },
	} {
		b := worked()
		spoil(b)
		if _, err := Make(context.Background(), b, solve.Plain, nil); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("want %q, got %v", says, err)
		}
	}
}
