package solve

import (
	"math"
	"slices"
)

// give is what a row can do by itself to be kept. A column that need not be whole and stands
// in one row alone, such as hours hired in a week that wants more than there are, belongs to
// that row: whatever the other columns sum to, its best value follows. So a search need move
// the others only, and asks the give what their sum costs.
type give struct {
	low, high float64 // the row's limits
	rest      float64 // what its own columns add to the sum when left to themselves
	more      []part  // ways to add to the sum, cheapest first
	less      []part  // ways to take from it
}

// part is a stretch that one column can add to or take from its row.
type part struct {
	column int
	rate   float64 // cost of one unit of the sum; 0 or more
	length float64 // how far it goes; may be infinite
	step   float64 // what adding one unit to the sum moves the column by
}

// gives finds the columns that belong to a row of their own, writes the values they have
// when left to themselves, and reports whether all of these are finite; if not, costs may
// fall without end.
func (s *shape) gives(values []float64) (rows []give, owned []bool, ok bool) {
	rows, owned = make([]give, len(s.q.Rows)), make([]bool, len(s.q.Columns))
	for i, r := range s.q.Rows {
		rows[i].low, rows[i].high = r.Low, r.High
	}
	for j, c := range s.q.Columns {
		if c.Whole || len(s.parts[j]) != 1 || s.group[j] >= 0 {
			continue
		}
		owned[j], values[j] = true, idle(c)
		if !finite(values[j]) {
			return nil, nil, false
		}
		t := s.parts[j][0]
		rows[t.Column].own(j, t.Factor, c, values[j])
	}
	for i := range rows {
		for _, parts := range [][]part{rows[i].more, rows[i].less} {
			slices.SortStableFunc(parts, func(a, b part) int {
				if a.rate < b.rate {
					return -1
				} else if a.rate > b.rate {
					return 1
				}
				return 0
			})
		}
	}
	return rows, owned, true
}

// idle is the value of a column that nothing binds but its bounds.
func idle(c Column) float64 {
	switch {
	case c.Cost > 0:
		return c.Low
	case c.Cost < 0:
		return c.High
	}
	return math.Min(math.Max(0, c.Low), c.High)
}

// own adds a column to the row's give.
func (g *give) own(j int, factor float64, c Column, value float64) {
	g.rest += float64(factor * value)
	rate, size := math.Abs(c.Cost/factor), math.Abs(factor)
	up := part{j, rate, size * (c.High - value), 1 / factor}
	down := part{j, rate, size * (value - c.Low), 1 / factor}
	if factor < 0 {
		up, down = down, up
	}
	if up.length > 0 {
		g.more = append(g.more, up)
	}
	if down.length > 0 {
		g.less = append(g.less, down)
	}
}

// cost returns what it costs the row to be kept when the other columns come to sum, and by
// how much it cannot be kept.
func (g *give) cost(sum float64) (cost, over float64) {
	sum += g.rest
	parts, need := g.less, sum-g.high
	if sum < g.low {
		parts, need = g.more, g.low-sum
	}
	for _, p := range parts {
		if need <= 0 {
			return cost, 0
		}
		take := math.Min(need, p.length)
		cost += float64(p.rate * take)
		need -= take
	}
	return cost, math.Max(0, need)
}

// settle moves the row's own columns to where cost reckoned them.
func (g *give) settle(sum float64, values []float64) {
	sum += g.rest
	parts, need, sign := g.less, sum-g.high, -1.0
	if sum < g.low {
		parts, need, sign = g.more, g.low-sum, 1
	}
	for _, p := range parts {
		if need <= 0 {
			return
		}
		take := math.Min(need, p.length)
		values[p.column] += float64(sign * take * p.step)
		need -= take
	}
}
