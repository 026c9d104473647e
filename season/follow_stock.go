package season

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"eyeup/stock"
)

// takeBatches makes the batches that are decided out of the stock, in place of those that a
// season would make of it today.
func (f *following) takeBatches() {
	f.batches = nil
	at := map[[3]string]int{}
	for i, h := range slices.Backward(f.Stock) {
		at[lotOf(h, i)] = i
	}
	for _, lot := range f.byLot() {
		at, is := at[lot[0].lot()]
		if !is || f.Stock[at].Count <= 0 {
			if n := plants(lot); n > 0 {
				f.say("%s: none is left; %d were decided", f.called(lot[0]), n)
			}
			continue
		}
		f.fit = append(f.fit, f.taken(lot, f.Stock[at])...)
	}
	f.sortBatches()
}

// byLot puts together what is decided of one lot, in the order of the decisions.
func (f *following) byLot() [][]Decided {
	at, all := map[[3]string]int{}, [][]Decided{}
	for _, d := range f.decided.Batches {
		key := d.lot()
		if _, known := at[key]; !known {
			at[key] = len(all)
			all = append(all, nil)
		}
		all[at[key]] = append(all[at[key]], d)
	}
	return all
}

// lot tells the lot that is decided about, in one form, from every other.
func (d Decided) lot() [3]string {
	return [3]string{cmp.Or(d.Code, d.row()), d.Kind, string(d.Form)}
}

// lotOf is the same of the holding in a row of the stock.
func lotOf(h stock.Holding, row int) [3]string {
	return [3]string{cmp.Or(h.Code, fmt.Sprintf("row %d", row+1)), h.Variety.Kind, string(h.Form)}
}

// row is the id of a lot without a code: its row in the stock.
func (d Decided) row() string {
	if d.How == Whole {
		return d.batch()
	}
	id := d.batch()
	return id[:max(0, len(id)-len(d.How)-1)]
}

func plants(all []Decided) int {
	n := 0
	for _, d := range all {
		n += d.Count
	}
	return n
}

// taken makes the batches of one lot and returns what it still gives of what is decided.
func (f *following) taken(lot []Decided, h stock.Holding) []Decided {
	for i := range lot {
		lot[i].Variety = h.Variety.Name
	}
	if short := wanted(lot) - h.Count; short > 0 && h.Form != stock.Seed {
		f.say("%s: %d are there of the %d decided", f.called(lot[0]), h.Count, wanted(lot))
		lot = shortened(lot, short)
	}
	if h.Plant+h.Reserve == 0 {
		h.Plant, h.Reserve = lot[0].Plant, lot[0].Reserve
	}
	var fit []Decided
	for _, d := range lot {
		if err := f.takeBatch(d, h); err != nil {
			f.say("%s: %v", f.called(d), err)
			continue
		}
		if d.Count > 0 {
			fit = append(fit, d)
		}
	}
	return fit
}

// wanted is how many of a lot its decisions want: each that is raised whole, and the clumps that
// are cut. Mothers of cuttings are planted afterwards.
func wanted(lot []Decided) int {
	n, cut := 0, map[string]bool{}
	for _, d := range lot {
		switch id := d.batch(); {
		case d.How == Whole:
			n += d.Count
		case d.How == Divided && !cut[id]:
			cut[id] = true
			n += d.Parents
		}
	}
	return n
}

// shortened takes off what a lot does not give any more: first of those raised whole, those that
// are started last before the others; then of the clumps that are cut, with their share of the
// pieces.
func shortened(lot []Decided, short int) []Decided {
	lot = slices.Clone(lot)
	last := make([]int, len(lot))
	for i := range last {
		last[i] = i
	}
	slices.SortStableFunc(last, func(a, b int) int { return int(lot[b].Start.Sub(lot[a].Start)) })
	off := 0
	for _, i := range last {
		if lot[i].How == Whole {
			n := min(short, lot[i].Count)
			lot[i].Count, short, off = lot[i].Count-n, short-n, off+n
		}
	}
	for i, d := range lot {
		switch d.How {
		case Whole:
			lot[i].Of -= off
		case Divided:
			lot[i].Parents = max(0, d.Parents-short)
			share := float64(lot[i].Parents) / float64(max(d.Parents, 1))
			lot[i].Count, lot[i].Of = int(math.Floor(share*float64(d.Count))), int(math.Floor(share*float64(d.Of)))
		}
	}
	return lot
}

// takeBatch makes the batch of a decision, once for all ways in which it is raised.
func (f *following) takeBatch(d Decided, h stock.Holding) error {
	id := d.batch()
	if f.lots[id] != nil {
		return nil
	}
	key := lifeKey{h.Variety.Kind, h.Variety.Timing, h.Form, Whole}
	base, err := f.lifeFor(key)
	if err != nil {
		return err
	}
	key.how = d.How
	own, err := f.lifeFor(key)
	if err != nil {
		return err
	}
	b := &batch{Holding: h, id: id, how: d.How, life: own, base: base, store: f.placeNamed(h.Place), want: d.Of, parents: d.Parents, bed: 1}
	if want := h.Plant + h.Reserve; want > 0 {
		b.bed = float64(h.Plant) / float64(want)
	}
	if h.Form == stock.Seed {
		b.store = -1
	}
	f.lots[id] = b
	f.batches = append(f.batches, b)
	return nil
}

// notCovered lists the stock that a season can't cover, and what nothing is decided about.
func (f *following) notCovered() []NotCovered {
	all, known := slices.Clone(f.left), map[[3]string]bool{}
	for _, d := range f.decided.Batches {
		known[d.lot()] = true
	}
	left := map[NotCovered]bool{}
	for _, n := range all {
		n.Why = ""
		left[n] = true
	}
	for i, h := range f.Stock {
		n := NotCovered{Kind: h.Variety.Kind, Variety: h.Variety.Name, Count: h.Count, Form: string(h.Form)}
		if !known[lotOf(h, i)] && !left[n] {
			n.Why = "nothing is decided about it in the plan that is followed"
			all = append(all, n)
		}
	}
	return all
}
