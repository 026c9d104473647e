package highs

import (
	"context"
	"errors"
	"fmt"
	"math"

	"eyeup/solve"

	"github.com/tetratelabs/wazero/api"
)

// info reads one of the solver's results, of type Int, Int64 or Double.
func (h *Held) info(name, sort string) (uint64, error) {
	a := arena{g: h.g}
	defer a.release()
	at, out := a.text(name), a.bytes(make([]byte, 8))
	if a.err != nil {
		return 0, a.err
	}
	if err := h.g.do("Highs_get"+sort+"InfoValue", h.self, at, out); err != nil {
		return 0, fmt.Errorf("figure %s: %w", name, err)
	}
	x, ok := h.g.module.Memory().ReadUint64Le(uint32(out))
	if !ok {
		return 0, errors.New("the solver's figure lies outside its memory")
	}
	return x, nil
}

// figures reads the bound and the counts.
func (h *Held) figures(a *solve.Answer) error {
	steps, err := h.info("simplex_iteration_count", "Int")
	if err != nil {
		return err
	}
	a.Iterations = max(a.Iterations, int(int32(steps)))
	if !h.p.Wholes() {
		return nil
	}
	nodes, err := h.info("mip_node_count", "Int64")
	if err != nil {
		return err
	}
	bound, err := h.info("mip_dual_bound", "Double")
	if err != nil {
		return err
	}
	a.Nodes, a.Bound = int(int64(nodes)), h.w.bounded(math.Float64frombits(bound))
	return nil
}

// values reads the current values, one per column; nil if there are none.
func (h *Held) values() ([]float64, error) {
	if len(h.p.Columns) == 0 {
		return []float64{}, nil
	}
	held, err := h.info("primal_solution_status", "Int")
	const feasible = 2
	if err != nil || int32(held) != feasible {
		return nil, err
	}
	all, err := h.solution()
	return all[0], err
}

// solution reads values and reduced costs of columns, and sums and dual prices of rows.
func (h *Held) solution() ([4][]float64, error) {
	var all [4][]float64
	a := arena{g: h.g}
	defer a.release()
	args := []uint64{h.self}
	sizes := [4]int{len(h.p.Columns), len(h.p.Columns), len(h.p.Rows), len(h.p.Rows)}
	for _, n := range sizes {
		args = append(args, a.bytes(make([]byte, 8*n)))
	}
	if a.err != nil {
		return all, a.err
	}
	if err := h.g.do("Highs_getSolution", args...); err != nil {
		return all, err
	}
	for i, n := range sizes {
		var err error
		if all[i], err = h.g.numbers(args[i+1], n); err != nil {
			return all, err
		}
	}
	return all, nil
}

// beside solves for the continuous columns again, with the whole columns fixed at their
// values.
func (h *Held) beside(ctx context.Context, values []float64) ([]float64, error) {
	for i, c := range h.p.Columns {
		if c.Whole {
			x := api.EncodeF64(values[i])
			if err := h.g.do("Highs_changeColBounds", h.self, uint64(i), x, x); err != nil {
				return nil, err
			}
		}
	}
	state, err := h.run(ctx, solve.Limits{})
	var again []float64
	if err == nil && state == optimal {
		again, err = h.values()
	}
	for i, c := range h.p.Columns {
		if c.Whole && err == nil {
			err = h.g.do("Highs_changeColBounds", h.self, uint64(i), api.EncodeF64(c.Low), api.EncodeF64(c.High))
			if again != nil {
				again[i] = values[i]
			}
		}
	}
	if err != nil || again == nil {
		return nil, err
	}
	if v, err := h.p.Check(again); err != nil || !v.Holds(solve.Tolerance) {
		return nil, err
	}
	return again, nil
}

// Relax solves the linear relaxation, with its dual prices. After a change of costs or limits
// it continues from the last solution.
func (h *Held) Relax(ctx context.Context, limits solve.Limits) (solve.Relaxation, error) {
	if err := solve.Ready(&h.p, limits, nil); err != nil {
		return solve.Relaxation{}, err
	}
	r := solve.Relaxation{Objective: math.Inf(1), Bound: math.Inf(-1)}
	if ctx.Err() != nil {
		return r, nil
	}
	if err := h.option("solve_relaxation", "Bool", 1); err != nil {
		return r, err
	}
	state, err := h.run(ctx, limits)
	if err != nil {
		return r, fmt.Errorf("solver: %w", err)
	}
	if state == infeasibleUnbounded {
		if state, err = h.which(ctx); err != nil {
			return r, fmt.Errorf("solver: %w", err)
		}
	}
	if state == empty {
		state = h.bare()
	}
	switch state {
	case infeasible:
		r.State, r.Bound = solve.Infeasible, math.Inf(1)
	case unbounded:
		r.State, r.Objective = solve.Unbounded, math.Inf(-1)
	case optimal:
		all, err := h.solution()
		if err != nil {
			return r, fmt.Errorf("solver: %w", err)
		}
		r = solve.Relaxation{State: solve.Proved, Values: all[0], Objective: h.p.Cost(all[0]), Reduced: all[1], Prices: all[3]}
		drawn, _ := h.p.DrawnIn() // the relaxation may still be feasible, and the bound holds
		if r.Bound, err = drawn.Bound(r.Prices); err != nil {
			return r, fmt.Errorf("solver: %w", err)
		}
	}
	return r, nil
}
