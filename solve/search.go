package solve

import (
	"math"
	"math/rand/v2"
	"slices"
)

// search improves whole values by local search: it changes one column, or shifts units of a
// choice from one column to another. A violated row costs its weight per unit of violation,
// and the weight grows while the violation lasts.
type search struct {
	s      *shape
	rows   []give
	owned  []bool
	idle   []float64 // values of columns that belong to one row, without that row
	values []float64
	sums   []float64 // of each row, without its own columns
	costs  []float64 // cost of each row: that of its give, and its weighted violation
	over   []float64 // violation of each row
	weight []float64
	base   []float64 // initial weights

	change []float64 // change of each row's sum by the current move
	marked []bool
	rowsOf []int   // rows changed by the current move
	free   []int   // columns that may move
	peers  [][]int // columns that may move, by choice row
	filled []int   // columns above their lower bound
	at     []int   // index of each column in filled; -1 if not in it
	random *rand.Rand
}

// keen is the largest violation of a satisfied row, relative to limits above 1. It is far
// below Tolerance, which must also cover rounding errors of sums.
const keen = 1e-9

// How the weights of rows change every thousand moves.
const (
	heavier = 1.2
	lighter = 0.95
)

// newSearch starts from values that are whole and within their bounds, and from weights of the
// rows.
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

// enlist updates filled after a change of a column.
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

// resum recomputes the sum of every row, so that rounding errors don't accumulate.
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

// reweigh raises the weight of every violated row and lowers the others, though not below
// their initial weight, and recomputes all costs.
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

// kept reports whether every row is satisfied.
func (h *search) kept() bool {
	for _, over := range h.over {
		if over > 0 {
			return false
		}
	}
	return true
}

// worth returns the change of cost by a move of one column or of two.
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

// make applies a move.
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

// whole returns the values with each row's own columns set, and their cost.
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

// total returns the cost of the moving columns and of all rows, up to a constant.
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

// wander tries random moves by simulated annealing (Kirkpatrick, Gelatt and Vecchi, Science
// 220 (1983), 671-680) and returns the best feasible values. It calls stop now and then.
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
