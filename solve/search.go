package solve

import (
	"math"
	"math/rand/v2"
	"slices"
)

// search betters whole values by small moves: one column up or down, or units of a choice
// shifted from one column to another. A row that cannot be kept costs its weight for each
// unit that it is overstepped by, and a row long overstepped grows heavier.
type search struct {
	s      *shape
	rows   []give
	owned  []bool
	idle   []float64 // the values of owned columns when left to themselves
	values []float64
	sums   []float64 // of each row, without its own columns
	costs  []float64 // what each row costs: its give, and the weight of what is overstepped
	over   []float64 // by how much each row is overstepped
	weight []float64
	base   []float64 // the weights at first

	change []float64 // of each row's sum under the move being tried
	marked []bool
	rowsOf []int   // the rows that the move being tried changes
	free   []int   // the columns that may move
	peers  [][]int // by choice row, its columns that may move
	filled []int   // the columns above their least
	at     []int   // where each column stands among the filled; -1 if it does not
	random *rand.Rand
}

// keen is how little a row may be overstepped and count as kept, against a limit above 1 as
// a share of it: well within Tolerance, which also has to bear what sums lose in rounding.
const keen = 1e-9

// How the weights of rows change every thousand moves.
const (
	heavier = 1.2
	lighter = 0.95
)

// newSearch starts from values, whole and within their bounds, and weights for the rows.
func newSearch(s *shape, values, weight []float64, seed uint64) (*search, bool) {
	h := &search{s: s, idle: make([]float64, len(values)), values: slices.Clone(values), weight: slices.Clone(weight), base: weight}
	var ok bool
	if h.rows, h.owned, ok = s.gives(h.idle); !ok {
		return nil, false
	}
	n := len(h.rows)
	h.sums, h.costs, h.over, h.change, h.marked = make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n), make([]bool, n)
	h.peers = make([][]int, n)
	h.random = rand.New(rand.NewPCG(seed, 0x5eed))
	for j, c := range s.q.Columns {
		if h.owned[j] || c.Low == c.High {
			continue
		}
		h.free = append(h.free, j)
		if g := s.group[j]; g >= 0 {
			h.peers[g] = append(h.peers[g], j)
		}
	}
	h.at = slices.Repeat([]int{-1}, len(values))
	for _, j := range h.free {
		h.enlist(j)
	}
	h.resum()
	return h, true
}

// enlist keeps the list of filled columns true to a column's value.
func (h *search) enlist(j int) {
	filled := h.values[j] > h.s.q.Columns[j].Low
	switch at := h.at[j]; {
	case filled && at < 0:
		h.at[j] = len(h.filled)
		h.filled = append(h.filled, j)
	case !filled && at >= 0:
		last := h.filled[len(h.filled)-1]
		h.filled[at], h.at[last] = last, at
		h.filled, h.at[j] = h.filled[:len(h.filled)-1], -1
	}
}

// resum sums every row anew, so that rounding does not pile up.
func (h *search) resum() {
	clear(h.sums)
	for j, x := range h.values {
		if !h.owned[j] {
			for _, t := range h.s.parts[j] {
				h.sums[t.Column] += float64(t.Factor * x)
			}
		}
	}
	h.reweigh(1, 1)
}

// reweigh makes every overstepped row heavier and every other one lighter, though never
// lighter than at first, and reckons all rows anew.
func (h *search) reweigh(heavier, lighter float64) {
	for i := range h.rows {
		if h.over[i] > 0 {
			h.weight[i] *= heavier
		} else {
			h.weight[i] = math.Max(h.base[i], h.weight[i]*lighter)
		}
		h.costs[i], h.over[i] = h.rowCost(i, h.sums[i])
	}
}

func (h *search) rowCost(i int, sum float64) (cost, over float64) {
	cost, over = h.rows[i].cost(sum)
	if over <= keen*math.Max(1, math.Abs(sum)) {
		over = 0
	}
	return cost + float64(h.weight[i]*over), over
}

// kept reports whether every row is kept.
func (h *search) kept() bool {
	for _, over := range h.over {
		if over > 0 {
			return false
		}
	}
	return true
}

// worth returns what a move, of one column or of two, would change the cost by.
func (h *search) worth(moves ...move) float64 {
	total := 0.0
	for _, m := range moves {
		total += float64(h.s.q.Columns[m.column].Cost * m.by)
		for _, t := range h.s.parts[m.column] {
			if !h.marked[t.Column] {
				h.marked[t.Column] = true
				h.rowsOf = append(h.rowsOf, t.Column)
			}
			h.change[t.Column] += float64(t.Factor * m.by)
		}
	}
	for _, i := range h.rowsOf {
		if h.change[i] != 0 {
			cost, _ := h.rowCost(i, h.sums[i]+h.change[i])
			total += cost - h.costs[i]
		}
		h.marked[i], h.change[i] = false, 0
	}
	h.rowsOf = h.rowsOf[:0]
	return total
}

// make carries a move out.
func (h *search) make(moves ...move) {
	for _, m := range moves {
		h.values[m.column] += m.by
		h.enlist(m.column)
		for _, t := range h.s.parts[m.column] {
			h.sums[t.Column] += float64(t.Factor * m.by)
		}
	}
	for _, m := range moves {
		for _, t := range h.s.parts[m.column] {
			h.costs[t.Column], h.over[t.Column] = h.rowCost(t.Column, h.sums[t.Column])
		}
	}
}

// whole returns the values with every row's own columns settled, and what they cost.
func (h *search) whole() ([]float64, float64) {
	values := slices.Clone(h.values)
	for j, owned := range h.owned {
		if owned {
			values[j] = h.idle[j]
		}
	}
	for i := range h.rows {
		h.rows[i].settle(h.sums[i], values)
	}
	return values, h.s.q.Cost(values)
}

// total is the cost of the columns that move and of all rows, up to a constant.
func (h *search) total() float64 {
	total := 0.0
	for _, j := range h.free {
		total += float64(h.s.q.Columns[j].Cost * h.values[j])
	}
	for _, c := range h.costs {
		total += c
	}
	return total
}

// wander tries a number of random moves, at first taking some that cost, in the end none
// (simulated annealing; Kirkpatrick, Gelatt and Vecchi, Science 220 (1983), 671-680), and
// keeps the best values that keep every row. stop is asked now and then.
func (h *search) wander(tries int, heat float64, stop func() bool) (best []float64, cost float64) {
	cost = math.Inf(1)
	now, least := h.total(), math.Inf(1)
	if h.kept() {
		least = now
		best, cost = h.whole()
	}
	for n := range tries {
		if n%1000 == 999 {
			if stop() {
				break
			}
			h.reweigh(heavier, lighter)
			now = h.total()
		}
		moves := h.draw()
		if moves == nil {
			continue
		}
		worth := h.worth(moves...)
		if warm := heat * math.Pow(1e-4, float64(n)/float64(tries)); worth > 0 && h.random.Float64() >= math.Exp(-worth/warm) {
			continue
		}
		h.make(moves...)
		if now += worth; now < least && h.kept() {
			least = now
			best, cost = h.whole()
		}
	}
	return best, cost
}
