package solve

import "math"

// move is a change of one column.
type move struct {
	column int
	by     float64
}

// draw returns a random move that keeps all bounds, or nil.
func (h *search) draw() []move {
	if len(h.filled) > 0 && h.random.IntN(8) > 0 {
		from := h.filled[h.random.IntN(len(h.filled))]
		if g := h.s.group[from]; g >= 0 {
			return h.shift(h.peers[g][h.random.IntN(len(h.peers[g]))], from)
		}
	}
	j := h.free[h.random.IntN(len(h.free))]
	if by := h.amble(j); by != 0 {
		return []move{{j, by}}
	}
	return nil
}

// shift returns a move of some units from one column of a choice to another.
func (h *search) shift(to, from int) []move {
	a, b := h.s.q.Columns[to], h.s.q.Columns[from]
	most := math.Min(a.High-h.values[to], h.values[from]-b.Low)
	if to == from || !(most > 0) {
		return nil
	}
	by := most
	switch h.random.IntN(3) {
	case 0:
		by = math.Min(1, most)
	case 1:
		by = most * h.random.Float64()
		if a.Whole || b.Whole {
			by = math.Ceil(by)
		}
	}
	if (a.Whole || b.Whole) && by != math.Floor(by) {
		return nil
	}
	return []move{{to, by}, {from, -by}}
}

// amble returns a random change of one column: a unit, to a bound, or to where one of its rows
// is just satisfied.
func (h *search) amble(j int) float64 {
	c, x := h.s.q.Columns[j], h.values[j]
	var to float64
	switch h.random.IntN(5) {
	case 0:
		to = x + 1
	case 1:
		to = x - 1
	case 2:
		to = idle(c)
	default:
		to = h.just(j)
	}
	to = math.Min(math.Max(to, c.Low), c.High)
	if !finite(to) || c.Whole && to != math.Round(to) {
		return 0
	}
	return to - x
}

// just returns the value at which a random row of the column is just satisfied.
func (h *search) just(j int) float64 {
	c, parts := h.s.q.Columns[j], h.s.parts[j]
	if len(parts) == 0 {
		return idle(c)
	}
	t := parts[h.random.IntN(len(parts))]
	g := h.rows[t.Column]
	limit := g.high
	if !finite(limit) || finite(g.low) && h.random.IntN(2) == 0 {
		limit = g.low
	}
	to := h.values[j] + (limit-g.rest-h.sums[t.Column])/t.Factor
	if c.Whole {
		if to = math.Floor(to); h.random.IntN(2) == 0 {
			to++
		}
	}
	return to
}
