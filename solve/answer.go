package solve

import (
	"context"
	"fmt"
	"math"
)

// Solver solves a programme. When ctx ends or a limit is reached it stops early and says so in
// the answer; that is not an error. start is a first guess at the values, or nil; an
// infeasible start is repaired or ignored. An error means that the programme is not sound or
// that the solver failed.
type Solver func(ctx context.Context, p *Programme, limits Limits, start []float64) (Answer, error)

// Limits are the stopping criteria. The zero value asks for the optimum however long it takes.
type Limits struct {
	Nodes      int             // most branch-and-bound nodes; 0: no limit
	Iterations int             // most simplex iterations; 0: no limit
	Share      float64         // relative gap at which to stop
	Apart      float64         // absolute gap at which to stop, in the unit of cost
	Progress   func(*Progress) // called when the cost or the bound improves; may be nil
}

// sound checks the limits and the length of a start.
func (l Limits) sound(columns int, start []float64) error {
	switch {
	case l.Nodes < 0 || l.Iterations < 0:
		return fmt.Errorf("limits of %d nodes and %d iterations; give 0 or more, 0 for no limit", l.Nodes, l.Iterations)
	case !(l.Share >= 0) || !(l.Apart >= 0):
		return fmt.Errorf("gaps of %v and %v to stop at; give 0 or more", l.Share, l.Apart)
	case start != nil && len(start) != columns:
		return fmt.Errorf("a start of %d values for %d columns; give one per column, or none", len(start), columns)
	}
	return nil
}

// Ready returns an error if a solver must refuse this call: an unsound programme, negative
// limits, or a start of the wrong length. Every Solver calls it first.
func Ready(p *Programme, limits Limits, start []float64) error {
	if err := p.Sound(); err != nil {
		return err
	}
	return limits.sound(len(p.Columns), start)
}

// Progress is the state of a running solver.
type Progress struct {
	Objective  float64 // cost of the best values so far; +Inf before the first
	Bound      float64 // lower bound on the cost; -Inf before one is known
	Nodes      int     // branch-and-bound nodes
	Iterations int     // simplex iterations
}

// State is how a solver ended.
type State int

// How a solver ends.
const (
	Stopped    State = iota // by a limit, by ctx, or without further progress; Values are the best so far, nil if none
	Proved                  // Values are optimal within the requested gap
	Infeasible              // no values satisfy every constraint
	Unbounded               // the cost has no lower limit
)

// String returns the state as a word.
func (s State) String() string {
	switch s {
	case Stopped:
		return "stopped"
	case Proved:
		return "proved"
	case Infeasible:
		return "infeasible"
	case Unbounded:
		return "unbounded"
	}
	return fmt.Sprintf("state %d", int(s))
}

// Answer is the result of a solver.
type Answer struct {
	State      State
	Values     []float64 // one per column; nil if none were found
	Objective  float64   // their cost; +Inf without values, -Inf if unbounded
	Bound      float64   // lower bound on the cost; -Inf if unknown, +Inf if infeasible
	Gap        float64   // relative gap between the two; +Inf without values
	Prices     []float64 // dual prices, one per row, if the solver has them: DrawnIn's Bound with them is Bound; else nil
	Nodes      int       // branch-and-bound nodes
	Iterations int       // simplex iterations
}

// Apart returns the absolute gap, in the unit of cost: no other values are better by more.
func (a Answer) Apart() float64 {
	if a.Objective == a.Bound {
		return 0
	}
	return a.Objective - a.Bound
}

// GapOf returns the gap between a cost and its bound relative to the cost: 0 if they are
// equal, +Inf if either is unknown or only the cost is 0.
func GapOf(objective, bound float64) float64 {
	switch {
	case objective == bound:
		return 0
	case !finite(objective) || !finite(bound) || objective == 0:
		return math.Inf(1)
	}
	return math.Abs(objective-bound) / math.Abs(objective)
}

// Met reports whether the gap between a cost and its bound is within the limits.
func (l Limits) Met(objective, bound float64) bool {
	return finite(objective) && (objective-bound <= l.Apart || GapOf(objective, bound) <= l.Share)
}

// Relaxation is the optimum of the linear relaxation, which ignores integrality, with its dual
// prices.
type Relaxation struct {
	State     State
	Values    []float64 // one per column, not necessarily whole
	Objective float64   // their cost
	Bound     float64   // DrawnIn's Bound with the prices; -Inf if they prove none
	Prices    []float64 // dual prices, one per row: change of cost per unit of its limit
	Reduced   []float64 // reduced costs, one per column: change of cost per unit of it
}
