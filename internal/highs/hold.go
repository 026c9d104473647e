package highs

import (
	"context"
	"fmt"
	"slices"

	"eyeup/solve"

	"github.com/tetratelabs/wazero/api"
)

// Held is a programme in the solver's memory. Its costs and limits can be changed and it can
// be solved again; the simplex method then continues from the last solution. It serves one
// goroutine at a time. Its answers depend on earlier calls, and on nothing else.
type Held struct {
	p    solve.Programme // current state
	e    *Engine
	g    *guest
	self uint64 // the solver's handle
	w    *watch
}

// Hold loads a programme into the solver. Later changes of p have no effect.
func (e *Engine) Hold(ctx context.Context, p *solve.Programme) (*Held, error) {
	if err := p.Sound(); err != nil {
		return nil, err
	}
	g, err := e.guest(ctx)
	if err != nil {
		return nil, err
	}
	h := &Held{p: solve.Programme{Columns: slices.Clone(p.Columns), Rows: slices.Clone(p.Rows), Offset: p.Offset}, e: e, g: g}
	if err := h.fill(); err != nil {
		h.Close()
		return nil, fmt.Errorf("put the programme into the solver: %w", err)
	}
	return h, nil
}

// Close frees the programme. It must not be used afterwards.
func (h *Held) Close() {
	if h.g != nil {
		h.e.leave(h.g, h.self)
		h.g = nil
	}
}

// Programme returns the programme in its current state; it must not be changed.
func (h *Held) Programme() *solve.Programme { return &h.p }

// fill creates the solver, sets the constant options, and loads the programme.
func (h *Held) fill() (err error) {
	if h.self, err = h.g.call("Highs_create"); err != nil {
		return err
	}
	if err := h.option("output_flag", "Bool", 0); err != nil {
		return err
	}
	if err := h.option("time_limit", "Double", api.EncodeF64(never/1e6)); err != nil {
		return err
	}
	if err := h.pass(); err != nil {
		return err
	}
	return h.listen()
}

// pass loads the columns and rows, by rows.
func (h *Held) pass() error {
	a := arena{g: h.g}
	defer a.release()
	var cost, low, high, least, most, factors []float64
	var whole, start, index []int32
	for _, c := range h.p.Columns {
		cost, low, high = append(cost, c.Cost), append(low, c.Low), append(high, c.High)
		whole = append(whole, api32(c.Whole))
	}
	for _, r := range h.p.Rows {
		least, most, start = append(least, r.Low), append(most, r.High), append(start, int32(len(index)))
		for _, t := range r.Terms {
			if t.Factor != 0 {
				index, factors = append(index, int32(t.Column)), append(factors, t.Factor)
			}
		}
	}
	const byRows, leastCost = 2, 1
	args := []uint64{
		h.self, uint64(len(cost)), uint64(len(least)), uint64(len(index)), byRows, leastCost, api.EncodeF64(h.p.Offset),
		a.numbers(cost), a.numbers(low), a.numbers(high), a.numbers(least), a.numbers(most),
		a.counts(start), a.counts(index), a.numbers(factors), a.counts(whole),
	}
	if a.err != nil {
		return a.err
	}
	return h.g.do("Highs_passMip", args...)
}

// listen registers for the callbacks that are used.
func (h *Held) listen() error {
	h.w = &watch{p: &h.p, names: h.g.names}
	if err := h.g.do("Highs_js_setCallback", h.self, h.g.place, 0); err != nil {
		return err
	}
	for _, occasion := range []uint64{simplexStep, betterFound, branchStep} {
		if err := h.g.do("Highs_startCallback", h.self, occasion); err != nil {
			return err
		}
	}
	return nil
}

func api32(b bool) int32 {
	if b {
		return 1
	}
	return 0
}

// option sets one of the solver's options, of type Bool, Int or Double.
func (h *Held) option(name, sort string, value uint64) error {
	a := arena{g: h.g}
	defer a.release()
	at := a.text(name)
	if a.err != nil {
		return a.err
	}
	if err := h.g.do("Highs_set"+sort+"OptionValue", h.self, at, value); err != nil {
		return fmt.Errorf("option %s: %w", name, err)
	}
	return nil
}

// Costs sets the costs, one per column, and the offset.
func (h *Held) Costs(costs []float64, offset float64) error {
	if len(costs) != len(h.p.Columns) {
		return fmt.Errorf("%d costs for %d columns; give one per column", len(costs), len(h.p.Columns))
	}
	was := h.p
	h.p.Columns, h.p.Offset = slices.Clone(h.p.Columns), offset
	for i, c := range costs {
		h.p.Columns[i].Cost = c
	}
	if err := h.p.Sound(); err != nil {
		h.p = was
		return err
	}
	return h.charge(costs, offset)
}

// charge sets the costs in the solver only.
func (h *Held) charge(costs []float64, offset float64) error {
	if err := h.g.do("Highs_changeObjectiveOffset", h.self, api.EncodeF64(offset)); err != nil {
		return err
	}
	if len(costs) == 0 {
		return nil
	}
	a := arena{g: h.g}
	defer a.release()
	at := a.numbers(costs)
	if a.err != nil {
		return a.err
	}
	return h.g.do("Highs_changeColsCostByRange", h.self, 0, uint64(len(costs)-1), at)
}

// Column changes the bounds of a column.
func (h *Held) Column(i int, low, high float64) error {
	if i < 0 || i >= len(h.p.Columns) {
		return fmt.Errorf("there is no column %d among %d; give the number of a column", i, len(h.p.Columns))
	}
	if err := solve.Ordered(low, high); err != nil {
		return fmt.Errorf("column %d: %w", i, err)
	}
	h.p.Columns[i].Low, h.p.Columns[i].High = low, high
	return h.g.do("Highs_changeColBounds", h.self, uint64(i), api.EncodeF64(low), api.EncodeF64(high))
}

// Row changes the limits of a row.
func (h *Held) Row(i int, low, high float64) error {
	if i < 0 || i >= len(h.p.Rows) {
		return fmt.Errorf("there is no row %d among %d; give the number of a row", i, len(h.p.Rows))
	}
	if err := solve.Ordered(low, high); err != nil {
		return fmt.Errorf("row %d: %w", i, err)
	}
	h.p.Rows[i].Low, h.p.Rows[i].High = low, high
	return h.g.do("Highs_changeRowBounds", h.self, uint64(i), api.EncodeF64(low), api.EncodeF64(high))
}
