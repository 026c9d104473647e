package season

import (
	"maps"
	"math"
	"strings"
	"testing"

	"eyeup/stock"
	"eyeup/supply"
)

// withSmallPots is waterville with divisions, and a price on small pots.
func withSmallPots(t testing.TB) Brief {
	b := waterville(t)
	for i := range b.Given.Stock {
		b.Given.Stock[i].Form = stock.Division
	}
	b.Given.Prices.Pots = map[string]Price{"no1": {0.6, true}, "square4half": {0.3, true}}
	return b
}

// TestSmallPotsSaveRoom sets every way that begins in a small pot beside the same in a trade
// gallon: it flowers no earlier, and until its leaves meet takes the room of the small pot.
func TestSmallPotsSaveRoom(t *testing.T) {
	m := makerOf(t, withSmallPots(t))
	all := m.options(m.batches[0], Levels{0, 0, 3, 0})
	gallon := map[int]*outcome{}
	for _, o := range of(all, "room, then glass") {
		gallon[o.start] = o
	}
	seen := 0
	for _, o := range of(all, "room, then glass"+pottedName) {
		for year, f := range o.fates() {
			if other := gallon[o.start].fates()[year]; f.flower < other.flower {
				t.Errorf("started on day %d, in %d, it flowers on day %d out of a small pot, on %d out of a gallon", o.start, m.Given.Years[year], f.flower, other.flower)
			}
			if f.potted != Never {
				seen++
				if !o.isMonday(f.potted) || f.potted <= f.full || f.potted >= o.outFrom-pottedNoMore {
					t.Errorf("full on day %d, potted up on %d, out from %d", f.full, f.potted, o.outFrom)
				}
			}
			for day := f.up + 1; day < min(f.touch, f.out); day++ {
				if _, area := o.stands(f, day); area != o.route.pot.tight || area >= o.life.tight {
					t.Fatalf("a small pot takes %g m² on day %d", area, day)
				}
			}
			if f.potted < f.meet && f.meet < f.out {
				if _, area := o.stands(f, f.meet-1); area != o.life.tight {
					t.Fatalf("potted up and not yet meeting it takes %g m²", area)
				}
			}
		}
	}
	if seen == 0 {
		t.Error("nothing is ever potted up")
	}
	for _, clumps := range m.options(makerOf(t, waterville(t)).batches[0], Levels{0, 0, 3, 0}) {
		if strings.Contains(clumps.route.name, pottedName) {
			t.Fatal("a whole clump begins in a small pot")
		}
	}
}

// TestContainersByTheWay: what is potted up takes both pots and the mix of both, what never
// is the small one alone, and without a price on small pots none is used.
func TestContainersByTheWay(t *testing.T) {
	b := withSmallPots(t)
	m := makerOf(t, b)
	l := m.batches[0].life
	small := (&route{}).pottedUp(m.smallPot(l))
	litres := map[bool]float64{}
	for potted, want := range map[bool]map[string]int{true: {"square4half": 7, "no1": 7}, false: {"square4half": 7}} {
		pots := fill(l.containers(small, potted), 7, "division", func(n supply.Need, err error) {
			if err != nil {
				t.Fatal(err)
			}
			litres[potted] += n.Litres.Middle
		})
		if !maps.Equal(pots, want) {
			t.Errorf("potted up %v: %v, not %v", potted, pots, want)
		}
	}
	if litres[true] <= litres[false] {
		t.Errorf("potted up they take %.1f L, else %.1f", litres[true], litres[false])
	}
	delete(b.Given.Prices.Pots, "square4half")
	if pot := makerOf(t, b).smallPot(l); pot != nil {
		t.Errorf("a garden without small pots uses a %s", pot.container)
	}
}

// TestSmallPotHoldsBackTillPottedUp: the small pot's limit counts until the day of potting up
// and the large one's from then on; in the last fortnight before planting out none is potted up.
func TestSmallPotHoldsBackTillPottedUp(t *testing.T) {
	m := makerOf(t, withSmallPots(t))
	o := of(m.options(m.batches[0], Levels{0, 0, 3, 0}), "room, then glass"+pottedName)[0]
	w, small := walker{life: o.life, option: &o.option}, o.route.pot.limit/o.life.flower
	if small >= w.potLimit {
		t.Fatalf("a small pot holds back from %g of the way on, a large one from %g", small, w.potLimit)
	}
	f := newFate()
	for day, want := range map[int]float64{f.potted - 1: small, 0: small} {
		if got := w.limitOf(day, &f); got != want {
			t.Errorf("never potted up it is held back from %g of the way on, not %g", got, want)
		}
	}
	f.potted = 100
	if before, after := w.limitOf(99, &f), w.limitOf(100, &f); before != small || after != w.potLimit {
		t.Errorf("potted up on day 100 it is held back from %g on the day before and from %g then", before, after)
	}
	for before, want := range map[int]bool{28: true, 15: true, 14: false, 7: false} {
		late := newFate()
		late.full = o.outFrom - 60
		if w.pots(o.outFrom-before, &late); (late.potted != Never) != want {
			t.Errorf("%d days before planting out: potted up on day %d", before, late.potted)
		}
	}
}

// TestADayInAPotIsItsHours sets a day's growth in a pot beside that of a thousand parts of the day,
// from long before the pot tells to long after.
func TestADayInAPotIsItsHours(t *testing.T) {
	w := walker{life: makerOf(t, waterville(t)).batches[0].life}
	const parts = 1000
	for progress := 0.0; progress < w.flower; progress += 0.37 {
		whole, inParts := w.potted(0.9, progress, w.potLimit), 0.0
		for range parts {
			inParts += w.potted(0.9/parts, progress+inParts, w.potLimit)
		}
		if math.Abs(whole-inParts) > 1e-9 {
			t.Errorf("from %.2f days on, %.6f in one and %.6f in parts", progress, whole, inParts)
		}
	}
}
