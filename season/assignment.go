package season

import (
	"cmp"
	"math"
	"slices"
)

// Made is a plan being worked out: where it is held at what levels, and what all batches
// do.
type Made struct {
	Name       string
	says       string
	Levels     Levels
	fill       func(fits float64) Assignment // on a basis of room that suffices in so great a share of years
	Assignment Assignment
}

// assignment is what all batches are to do, with what was short.
type Assignment struct {
	Portions []Portion
	short    map[*batch]*lack
	Left     map[*batch]int // plants that found no way at all
	Value    float64        // weeks of flower gained, all plants together
	Steps    map[int]Step   // changes of level, by place
}

// assign fills the benches batch by batch, those that have most to gain first.
func (m *Planner) assign(at Levels, rank func([]*outcome) []*outcome) Assignment {
	return m.assignOn(float64(m.Asked.Fits), at, rank)
}

// assignOn does so on a basis of room that suffices in so great a share of years.
func (m *Planner) assignOn(fits float64, at Levels, rank func([]*outcome) []*outcome) Assignment {
	benches, ranked := m.newBenches(fits), map[sortOf][]*outcome{}
	a := Assignment{short: map[*batch]*lack{}, Left: map[*batch]int{}}
	for _, b := range m.inOrder(at) {
		sort := sortOf{b.life, b.store}
		if ranked[sort] == nil {
			ranked[sort] = rank(m.options(b, at))
		}
		portions, short, left := benches.place(b, m.held(b, ranked[sort]))
		a.Portions = append(a.Portions, portions...)
		if short != nil {
			a.short[b] = short
		}
		if left > 0 {
			a.Left[b] = left
		}
		for _, p := range portions {
			a.Value += float64(p.Count) * p.gain
		}
	}
	return a
}

// held keeps to a start that is decided already: of all options those of its week, and
// the ground where none of them can be.
func (m *Planner) held(b *batch, ranked []*outcome) []*outcome {
	decided, is := m.Asked.Held[b.Code]
	if !is {
		return ranked
	}
	start := m.day(decided.Monday())
	return slices.DeleteFunc(slices.Clone(ranked), func(o *outcome) bool { return !o.route.direct && o.start != start })
}

// inOrder sorts the batches by the weeks that an early place can gain them, most first.
func (m *Planner) inOrder(at Levels) []*batch {
	most := map[*batch]float64{}
	for _, b := range m.batches {
		most[b] = math.Inf(-1)
		for _, o := range m.options(b, at) {
			if m.admissible(o) {
				most[b] = max(most[b], o.gain)
			}
		}
	}
	ordered := slices.Clone(m.batches)
	slices.SortStableFunc(ordered, func(a, b *batch) int {
		return cmp.Or(cmp.Compare(most[b], most[a]), cmp.Compare(a.id, b.id))
	})
	return ordered
}
