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
	f.planner.batches = nil
	waits := map[lotKey][]stock.Holding{}
	for i, h := range f.planner.Given.Stock {
		if h.Count > 0 {
			waits[lotOf(h, i)] = append(waits[lotOf(h, i)], h)
		}
	}
	for _, lot := range f.byLot() {
		spots := bySpot(lot)
		for i, h := range shareOut(waits[lot[0].lot()], spots) {
			if h.Count == 0 {
				if n := plants(spots[i]); n > 0 {
					f.say("%s: none is left; %d were decided", f.called(lot[0]), n)
				}
				continue
			}
			f.fit = append(f.fit, f.taken(spots[i], h)...)
		}
	}
	f.planner.sortBatches()
}

// shareOut gives what waits of a lot to what is decided about it, place by place: first of what
// waits in that place, then of what has come to wait elsewhere. What nobody wants stays with
// the first that has any.
func shareOut(waits []stock.Holding, spots [][]Decided) []stock.Holding {
	given, rest := make([]stock.Holding, len(spots)), 0
	for _, h := range waits {
		rest += h.Count
	}
	if rest == 0 {
		return given
	}
	for i, spot := range spots {
		at := max(0, slices.IndexFunc(waits, func(h stock.Holding) bool { return h.Place == spot[0].Place }))
		here := 0
		if given[i] = waits[at]; given[i].Place == spot[0].Place {
			here = given[i].Count
		}
		given[i].Count = min(here, wanted(spot))
		rest -= given[i].Count
	}
	for i, spot := range spots {
		more := min(rest, max(0, wanted(spot)-given[i].Count))
		given[i].Count, rest = given[i].Count+more, rest-more
	}
	first := max(0, slices.IndexFunc(given, func(h stock.Holding) bool { return h.Count > 0 }))
	given[first].Count += rest
	return given
}

// byLot puts together what is decided of one lot, in the order of the decisions.
func (f *following) byLot() [][]Decided {
	at, all := map[lotKey]int{}, [][]Decided{}
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

// lotKey identifies a lot in one form.
type lotKey [3]string

func (d Decided) lot() lotKey {
	return lotKey{cmp.Or(d.Code, d.row()), d.Kind, string(d.Form)}
}

// lotOf is the same of the holding in a row of the stock.
func lotOf(h stock.Holding, row int) lotKey {
	return lotKey{cmp.Or(h.Code, fmt.Sprintf("row %d", row+1)), h.Variety.Kind, string(h.Form)}
}

// bySpot takes apart what is decided of one lot by the places in which it waits.
func bySpot(lot []Decided) [][]Decided {
	at, all := map[string]int{}, [][]Decided{}
	for _, d := range lot {
		i, known := at[d.Place]
		if !known {
			i = len(all)
			at[d.Place] = i
			all = append(all, nil)
		}
		all[i] = append(all[i], d)
	}
	return all
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
	base, err := f.planner.lifeFor(key)
	if err != nil {
		return err
	}
	key.how = d.How
	own, err := f.planner.lifeFor(key)
	if err != nil {
		return err
	}
	b := &batch{Holding: h, id: id, how: d.How, life: own, base: base, store: f.planner.placeNamed(h.Place), want: d.Of, parents: d.Parents, bed: 1}
	if want := h.Plant + h.Reserve; want > 0 {
		b.bed = float64(h.Plant) / float64(want)
	}
	if h.Form == stock.Seed {
		b.store = -1
	}
	f.lots[id] = b
	f.planner.batches = append(f.planner.batches, b)
	return nil
}

// notCovered lists the stock that a season can't cover, and what nothing is decided about.
func (f *following) notCovered() []NotCovered {
	all, known := slices.Clone(f.planner.left), map[lotKey]bool{}
	for _, d := range f.decided.Batches {
		known[d.lot()] = true
	}
	left := map[NotCovered]bool{}
	for _, n := range all {
		n.Why = ""
		left[n] = true
	}
	for i, h := range f.planner.Given.Stock {
		n := notCovered(h, "")
		if !known[lotOf(h, i)] && !left[n] {
			n.Why = "nothing is decided about it in the plan that is followed"
			all = append(all, n)
		}
	}
	return all
}
