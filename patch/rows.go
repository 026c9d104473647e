package patch

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"eyeup/quantity"
)

// Bed is how a patch is laid out: beds of a width, rows along their length.
type Bed struct{ Width, Length quantity.Length }

// Row is one row of the patch.
type Row struct {
	Number int // from 1, which lies where it shades no other
	Bed    int // from 1
	Kind   string
	Holds  int // plants it takes at the spacing of its widest variety
	Parts  []RowPart
}

// RowPart is some plants of one variety, from left to right.
type RowPart struct {
	Variety int // in the brief
	From    int // the place in the row of its first plant, from 1
	Count   int
	Label   int // of all labels, in the order in which they are put out; the same for all of a variety
}

// Rows lays the list into rows: each kind by itself; tall behind low, so that row 1 belongs
// where it shades no other; among those of one height early ones first, then by name.
// Where heights are not told apart by the brief, the taller variety stands behind. A variety
// fills a row before it begins the next. It fails for a bed too small for a plant.
func (l *List) Rows(bed Bed) ([]Row, error) {
	b := l.s.b
	if !(bed.Width > 0) || !(bed.Length > 0) {
		return nil, fmt.Errorf("beds of %v by %v m hold nothing; give their width and length", float64(bed.Width), float64(bed.Length))
	}
	r := &laying{list: l, bed: bed}
	for _, i := range l.inOrder() {
		if !(b.Varieties[i].Spacing > 0) {
			return nil, fmt.Errorf("%s has no spacing from plant to plant; give one", b.Varieties[i].Name)
		}
		if b.Varieties[i].Spacing > min(bed.Width, bed.Length)+slight {
			return nil, fmt.Errorf("%s stands %v m apart, which no bed of %v by %v m takes; give larger beds", b.Varieties[i].Name,
				float64(b.Varieties[i].Spacing), float64(bed.Width), float64(bed.Length))
		}
		r.lay(i)
	}
	return r.rows, nil
}

// inOrder returns the varieties that have places, in the order in which they stand.
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

// behind compares how far back two varieties stand.
func (b *Brief) behind(v, o *Variety) int {
	if b.Low == 0 && b.Tall == 0 {
		return cmp.Compare(o.Height, v.Height)
	}
	rank := map[string]int{"tall": 1, "middle": 2, "": 2, "low": 3}
	return cmp.Compare(rank[b.height(v.Height)], rank[b.height(o.Height)])
}

// laying is a patch being laid into rows.
type laying struct {
	list *List
	bed  Bed
	rows []Row
	free int             // places left in the last row
	step quantity.Length // from plant to plant in it
	deep quantity.Length // of the last bed, taken by its rows
	tags int
}

// lay puts all of a variety down.
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

// row begins a row for a variety, in the last bed if that is wide enough.
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
