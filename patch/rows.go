package patch

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"eyeup/quantity"
)

// Bed is the size of the beds; rows run along their length.
type Bed struct{ Width, Length quantity.Length }

// Row is one row of the patch.
type Row struct {
	Number int // from 1, where it shades no other
	Bed    int // from 1
	Kind   string
	Holds  int // capacity at the spacing of its widest variety
	Parts  []RowPart
}

// RowPart is a run of plants of one variety within a row.
type RowPart struct {
	Variety int // index in the brief
	From    int // position of its first plant in the row, from 1
	Count   int
	Label   int // number of its label in the order of setting out; the same for all plants of a variety
}

// Rows arranges the list in rows: each kind by itself; tall behind low, with row 1 where it
// shades no other; within one height early varieties first, then by name. If the brief does
// not define low and tall, the taller variety stands behind. A variety fills a row before it
// begins the next. A bed too small for a plant is an error.
func (l *List) Rows(bed Bed) ([]Row, error) {
	b := l.s.b
	if !(bed.Width > 0) || !(bed.Length > 0) {
		return nil, fmt.Errorf("beds of %v by %v m hold no plants; give their width and length", float64(bed.Width), float64(bed.Length))
	}
	r := &laying{list: l, bed: bed}
	for _, i := range l.inOrder() {
		if !(b.Varieties[i].Spacing > 0) {
			return nil, fmt.Errorf("%s has no spacing between plants; give one", b.Varieties[i].Name)
		}
		if b.Varieties[i].Spacing > min(bed.Width, bed.Length)+slight {
			return nil, fmt.Errorf("%s needs a spacing of %v m, too wide for a bed of %v by %v m; give larger beds", b.Varieties[i].Name,
				float64(b.Varieties[i].Spacing), float64(bed.Width), float64(bed.Length))
		}
		r.lay(i)
	}
	return r.rows, nil
}

// inOrder returns the varieties that have places, in planting order.
func (l *List) inOrder() []int {
	var all []int
	for i, n := range l.Places {
		if n > 0 {
			all = append(all, i)
		}
	}
	slices.SortStableFunc(all, func(i, j int) int {
		v, o := &l.s.b.Varieties[i], &l.s.b.Varieties[j]
		return cmp.Or(cmp.Compare(v.Kind, o.Kind), l.s.b.behind(v, o), cmp.Compare(order[string(v.Timing)], order[string(o.Timing)]), cmp.Compare(v.Name, o.Name))
	})
	return all
}

// behind compares which of two varieties stands further back.
func (b *Brief) behind(v, o *Variety) int {
	if b.Low == 0 && b.Tall == 0 {
		return cmp.Compare(o.Height, v.Height)
	}
	rank := map[string]int{"tall": 1, "middle": 2, "": 2, "low": 3}
	return cmp.Compare(rank[b.height(v.Height)], rank[b.height(o.Height)])
}

// laying is the state while a patch is arranged in rows.
type laying struct {
	list *List
	bed  Bed
	rows []Row
	free int             // places left in the last row
	step quantity.Length // spacing of its plants
	deep quantity.Length // depth of the last bed used by its rows
	tags int
}

// lay places all plants of a variety.
func (r *laying) lay(i int) {
	v := &r.list.s.b.Varieties[i]
	r.tags++
	for left := r.list.Places[i]; left > 0; {
		if r.free == 0 || r.rows[len(r.rows)-1].Kind != v.Kind || r.step != v.Spacing {
			r.row(v)
		}
		row := &r.rows[len(r.rows)-1]
		n := min(left, r.free)
		row.Parts = append(row.Parts, RowPart{i, row.Holds - r.free + 1, n, r.tags})
		left, r.free = left-n, r.free-n
	}
}

// row begins a row for a variety, in the last bed if it is deep enough.
func (r *laying) row(v *Variety) {
	row := Row{Number: len(r.rows) + 1, Bed: 1, Kind: v.Kind, Holds: int(math.Floor(float64(r.bed.Length/v.Spacing) + 1e-9))}
	if n := len(r.rows); n > 0 {
		row.Bed = r.rows[n-1].Bed
	}
	if r.deep += v.Spacing; r.deep > r.bed.Width+slight {
		row.Bed, r.deep = row.Bed+1, v.Spacing
	}
	r.rows, r.free, r.step = append(r.rows, row), row.Holds, v.Spacing
}
