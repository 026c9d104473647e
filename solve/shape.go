package solve

import (
	"math"
	"slices"
)

// shape is a programme prepared for Plain: bounds tightened without losing every optimum,
// terms by column, and the rows that are choices identified.
type shape struct {
	q      *Programme // with tightened bounds
	parts  [][]Term   // the terms of each column; Column holds the row
	choice []bool     // rows that distribute units among columns of their own
	group  []int      // the choice row of each column, or -1
	broken bool       // some constraint cannot be satisfied
}

// endless reports whether some cost pulls its column towards an infinite bound. Then Plain
// does not search for values.
func (s *shape) endless() bool {
	for _, c := range s.q.Columns {
		if c.Cost < 0 && math.IsInf(c.High, 1) || c.Cost > 0 && math.IsInf(c.Low, -1) {
			return true
		}
	}
	return false
}

// shaped prepares a sound programme.
func shaped(p *Programme) *shape {
	s := &shape{q: &Programme{Columns: slices.Clone(p.Columns), Rows: p.Rows, Offset: p.Offset}, parts: make([][]Term, len(p.Columns))}
	for i, r := range p.Rows {
		for _, t := range r.Terms {
			if t.Factor != 0 {
				s.parts[t.Column] = append(s.parts[t.Column], Term{i, t.Factor})
			}
		}
	}
	for j := range s.q.Columns {
		c := &s.q.Columns[j]
		if c.Whole {
			c.Low, c.High = math.Ceil(c.Low-smallest), math.Floor(c.High+smallest)
		}
		s.broken = s.broken || c.Low > c.High
	}
	for range 2 { // the second pass uses the bounds of the first
		for j := range s.q.Columns {
			s.imply(j)
			s.cap(j)
		}
	}
	for _, r := range s.q.Rows {
		reach := s.reach(r, -1)
		s.broken = s.broken || reach.low > r.High || reach.high < r.Low
	}
	s.choose()
	return s
}

// DrawnIn returns the programme with its bounds tightened as far as the rows imply and an
// optimum permits: whole columns get whole bounds, and columns without a bound get the most
// that their rows allow or could use. The optimal cost does not change, so a Bound of one
// programme holds for the other. If p leaves a column unbounded, only the tightened programme
// has a finite bound for any prices. It returns false if some constraint can't be satisfied,
// so that there is no answer. The programme must be sound. Rows are shared, not copied.
func (p *Programme) DrawnIn() (*Programme, bool) {
	s := shaped(p)
	return s.q, !s.broken
}

// reach returns the interval of a row's sum without one column.
func (s *shape) reach(r Row, without int) between {
	var b between
	for _, t := range r.Terms {
		if t.Column == without || t.Factor == 0 {
			continue
		}
		c := s.q.Columns[t.Column]
		low, high := least(exactly(t.Factor), c.Low, c.High), least(exactly(-t.Factor), c.Low, c.High)
		b = b.plus(between{low.low, -high.low})
	}
	return b
}

// imply gives an unbounded column the bound that its rows imply, slightly widened.
func (s *shape) imply(j int) {
	c := &s.q.Columns[j]
	for _, t := range s.parts[j] {
		if finite(c.Low) && finite(c.High) {
			break
		}
		r, f := s.q.Rows[t.Column], t.Factor
		reach := s.reach(r, j)
		low, high := (r.Low-reach.high)/f, (r.High-reach.low)/f
		if f < 0 {
			low, high = high, low
		}
		wider := func(x float64) float64 { return smallest * math.Max(1, math.Abs(x)) }
		if math.IsInf(c.Low, -1) && finite(low) {
			c.Low = low - wider(low)
		}
		if math.IsInf(c.High, 1) && finite(high) {
			c.High = high + wider(high)
		}
	}
	if c.Whole {
		c.Low, c.High = math.Ceil(c.Low), math.Floor(c.High)
	}
	s.broken = s.broken || c.Low > c.High
}

// cap bounds a column that has a cost and can only help its rows by being larger: it limits it
// to the most that the rows could use, which keeps some optimum. Likewise for one that helps
// by being smaller.
func (s *shape) cap(j int) {
	c := &s.q.Columns[j]
	if math.IsInf(c.High, 1) && c.Cost >= 0 && finite(c.Low) {
		if most := s.wanted(j, 1); finite(most) {
			c.High = math.Max(c.Low, most)
		}
	}
	if math.IsInf(c.Low, -1) && c.Cost <= 0 && finite(c.High) {
		if most := s.wanted(j, -1); finite(most) {
			c.Low = math.Min(c.High, -most)
		}
	}
}

// wanted returns the largest value of a column, times sign, that its rows could use, slightly
// rounded up; infinite if a larger value could violate one of them.
func (s *shape) wanted(j int, sign float64) float64 {
	most := math.Inf(-1)
	for _, t := range s.parts[j] {
		r, reach := s.q.Rows[t.Column], between{}
		switch f := sign * t.Factor; {
		case f > 0 && math.IsInf(r.High, 1):
			reach = s.reach(r, j)
			most = math.Max(most, (r.Low-reach.low)/f)
		case f < 0 && math.IsInf(r.Low, -1):
			reach = s.reach(r, j)
			most = math.Max(most, (reach.high-r.High)/-f)
		default:
			return math.Inf(1)
		}
	}
	most += smallest * math.Max(1, math.Abs(most))
	if s.q.Columns[j].Whole {
		most = math.Ceil(most)
	}
	return most
}

// choose finds rows with equal coefficients whose columns are in no other such row; equalities
// first.
func (s *shape) choose() {
	s.choice, s.group = make([]bool, len(s.q.Rows)), slices.Repeat([]int{-1}, len(s.q.Columns))
	for _, bound := range []bool{true, false} {
		for i, r := range s.q.Rows {
			if bound == (r.Low == r.High) && (finite(r.Low) || finite(r.High)) && s.alike(r) {
				s.choice[i] = true
				for _, t := range r.Terms {
					s.group[t.Column] = i
				}
			}
		}
	}
}

func (s *shape) alike(r Row) bool {
	for _, t := range r.Terms {
		if t.Factor != r.Terms[0].Factor || t.Factor <= 0 || s.group[t.Column] >= 0 {
			return false
		}
	}
	return len(r.Terms) > 1
}
