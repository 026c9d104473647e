package highs

import (
	"context"
	"errors"
	"fmt"
	"math"
	"sync/atomic"

	"eyeup/solve"

	"github.com/tetratelabs/wazero/api"
)

// The solver's states that are distinguished here; in all others it stopped early. Source:
// HiGHS C API, HighsModelStatus.
const (
	empty               = 6 // no columns
	optimal             = 7
	infeasible          = 8
	infeasibleUnbounded = 9 // one of the two
	unbounded           = 10
	stoppedShort        = -1 // ours: out of memory, with an answer found before
)

// Solve solves the programme in its current state; see solve.Solver for the arguments.
func (h *Held) Solve(ctx context.Context, limits solve.Limits, start []float64) (solve.Answer, error) {
	if err := solve.Ready(&h.p, limits, start); err != nil {
		return solve.Answer{}, err
	}
	a := solve.Answer{Objective: math.Inf(1), Bound: math.Inf(-1), Gap: math.Inf(1)}
	if ctx.Err() == nil {
		var err error
		if a, err = h.answer(ctx, limits, start); err != nil {
			return solve.Answer{}, fmt.Errorf("solver: %w", err)
		}
	}
	if a.State == solve.Stopped && start != nil && h.cost(start) < a.Objective {
		a.Values, a.Objective = append([]float64(nil), start...), h.cost(start)
	}
	a.Gap = solve.GapOf(a.Objective, a.Bound)
	return a, nil
}

// cost returns the cost of a start; infinity if it is infeasible.
func (h *Held) cost(start []float64) float64 {
	if v, err := h.p.Check(start); err != nil || !v.Holds(solve.Tolerance) {
		return math.Inf(1)
	}
	return h.p.Cost(start)
}

// answer runs the solver and reads its result.
func (h *Held) answer(ctx context.Context, limits solve.Limits, start []float64) (solve.Answer, error) {
	if err := h.ask(limits, start); err != nil {
		return solve.Answer{}, err
	}
	state, err := h.run(ctx, limits)
	if err != nil {
		return solve.Answer{}, err
	}
	if state == infeasibleUnbounded || state == unbounded {
		if state, err = h.which(ctx); err != nil {
			return solve.Answer{}, err
		}
	}
	if state == empty {
		state = h.bare()
	}
	a := solve.Answer{Objective: math.Inf(1), Bound: h.w.seen.Bound, Nodes: h.w.seen.Nodes, Iterations: h.w.seen.Iterations}
	switch state {
	case infeasible:
		a.State, a.Bound = solve.Infeasible, math.Inf(1)
		return a, nil
	case unbounded:
		a.State, a.Objective, a.Bound = solve.Unbounded, math.Inf(-1), math.Inf(-1)
		return a, nil
	case optimal:
		a.State = solve.Proved
	}
	err = h.read(ctx, &a)
	return a, err
}

// ask sets the limits and the start.
func (h *Held) ask(limits solve.Limits, start []float64) error {
	nodes := uint64(math.MaxInt32)
	if limits.Nodes > 0 {
		nodes = uint64(min(limits.Nodes, math.MaxInt32))
	}
	for _, o := range []struct {
		name, sort string
		value      uint64
	}{
		{"solve_relaxation", "Bool", 0},
		{"mip_rel_gap", "Double", api.EncodeF64(limits.Share)},
		{"mip_abs_gap", "Double", api.EncodeF64(limits.Apart)},
		{"mip_max_nodes", "Int", nodes},
	} {
		if err := h.option(o.name, o.sort, o.value); err != nil {
			return err
		}
	}
	if start == nil || !h.p.Wholes() {
		return nil
	}
	a := arena{g: h.g}
	defer a.release()
	at := a.numbers(start)
	if a.err != nil {
		return a.err
	}
	return h.g.do("Highs_setSolution", h.self, at, 0, 0, 0)
}

// run runs the solver until it ends, ctx does, or a limit is met.
func (h *Held) run(ctx context.Context, limits solve.Limits) (int32, error) {
	h.w.limits, h.w.best = limits, nil
	h.w.seen = solve.Progress{Objective: math.Inf(1), Bound: math.Inf(-1)}
	h.w.told = h.w.seen
	if err := h.g.do("Highs_zeroAllClocks", h.self); err != nil {
		return 0, err
	}
	hurried := new(atomic.Bool)
	stop := context.AfterFunc(ctx, func() { hurried.Store(true) })
	h.g.hurried, h.g.watch = hurried, h.w
	err := h.g.do("Highs_run", h.self)
	stop()
	h.g.calm()
	if h.g.broken != nil && h.w.best != nil {
		return stoppedShort, nil
	}
	if err != nil {
		return 0, fmt.Errorf("%w; the programme may be too large for the solver's %d MiB: solve a smaller one", err, h.g.pages>>4)
	}
	state, err := h.g.call("Highs_getModelStatus", h.self)
	return api.DecodeI32(state), err
}

// bare returns the state of a programme without columns: its rows are satisfied or not.
func (h *Held) bare() int32 {
	for _, r := range h.p.Rows {
		if r.Low > 0 || r.High < 0 {
			return infeasible
		}
	}
	return optimal
}

// which distinguishes an infeasible programme from an unbounded one: without costs, only the
// first has no answer. For programmes with whole numbers this holds if their figures are
// rational, as all floating-point numbers are (Meyer 1974).
func (h *Held) which(ctx context.Context) (int32, error) {
	costs := make([]float64, len(h.p.Columns))
	if err := h.charge(costs, 0); err != nil {
		return 0, err
	}
	state, err := h.run(ctx, solve.Limits{})
	for i, c := range h.p.Columns {
		costs[i] = c.Cost
	}
	if back := h.charge(costs, h.p.Offset); err == nil {
		err = back
	}
	if state == optimal {
		state = unbounded
	}
	return state, err
}

// read reads the values, rounds whole columns, and checks them against the programme.
func (h *Held) read(ctx context.Context, a *solve.Answer) error {
	values := h.w.best
	if h.g.broken == nil {
		if err := h.figures(a); err != nil {
			return err
		}
		var err error
		if values, err = h.values(); err != nil {
			return err
		}
	}
	values, err := h.settled(ctx, values)
	if err != nil || values == nil {
		if a.State == solve.Proved && err == nil {
			err = errors.New("it reports an optimum, but its answer is infeasible; choose units in which the figures are nearer 1")
		}
		return err
	}
	a.Values, a.Objective = values, h.p.Cost(values)
	if a.State == solve.Proved && !h.p.Wholes() {
		a.Bound = a.Objective
	}
	a.Bound = math.Min(a.Bound, a.Objective) // larger only by the effect of rounding to whole numbers
	return nil
}

// settled rounds the whole columns; if the rounding violated a constraint, it solves for the
// others again. It returns nil if the values are infeasible.
func (h *Held) settled(ctx context.Context, values []float64) ([]float64, error) {
	if values == nil {
		return nil, nil
	}
	mixed := false
	for i, c := range h.p.Columns {
		mixed = mixed || !c.Whole
		values[i] = tidy(values[i], c)
	}
	v, err := h.p.Check(values)
	if err != nil || v.Holds(solve.Tolerance) {
		return values, err
	}
	if !mixed || v.Fraction > solve.Tolerance || ctx.Err() != nil || h.g.broken != nil {
		return nil, nil
	}
	return h.beside(ctx, values)
}

// tidy removes a deviation within the solver's own tolerance from a whole number or a bound.
// Larger ones are left for Check to find.
func tidy(x float64, c solve.Column) float64 {
	near := math.Min(math.Max(x, c.Low), c.High)
	if c.Whole {
		near = math.Round(x)
	}
	if math.Abs(near-x) > solve.Tolerance {
		return x
	}
	return near + 0 // -0 becomes 0
}
