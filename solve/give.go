package solve

import (
	"math"
	"slices"
)

// give is the slack of a row through its own columns. A continuous column that is in one row
// only, such as hours hired in a week that needs more than there are, belongs to that row: its
// best value follows from the sum of the other columns. So the search moves the other columns
// only, and give returns the cost of their sum.
type give struct {
	low, high float64 // the row's limits
	rest      float64 // sum of its own columns at their values without the row
	more      []part  // ways to raise the sum, cheapest first
	less      []part  // ways to lower it, cheapest first
}

// part is a range by which one column can raise or lower its row's sum.
type part struct {
	column int
	rate   float64 // cost of one unit of the sum; 0 or more
	length float64 // largest change of the sum; may be infinite
	step   float64 // change of the column per unit of the sum
}

// gives finds the columns that belong to one row, writes their values without the row, and
// reports whether all of these are finite; otherwise the cost may be unbounded.
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

// idle returns the cheapest value of a column that only its bounds limit.
func idle(c Column) float64 {
	switch {
	case c.Cost > 0:
		return c.Low
	case c.Cost < 0:
		return c.High
	}
	return math.Min(math.Max(0, c.Low), c.High)
}

// own adds a column to the give of a row.
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

// cost returns the cost of satisfying the row when the other columns add up to sum, and the
// violation that remains.
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

// settle sets the row's own columns to the values that cost assumed.
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
