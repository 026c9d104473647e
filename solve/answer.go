package solve

import (
	"context"
	"fmt"
	"math"
)

// Solver answers a programme. It stops early, and says so, when ctx ends or a limit is met;
// that is an answer, not an error. start is a first guess at the values, or nil; one that
// breaks the programme is mended or left aside. An error means that the programme is not
// sound or that the solver itself broke.
type Solver func(ctx context.Context, p *Programme, limits Limits, start []float64) (Answer, error)

// Limits say when to stop. The zero value asks for the best answer however long it takes.
type Limits struct {
	Nodes      int             // most branches looked into; 0 for no limit
	Iterations int             // most steps of the linear method; 0 for no limit
	Share      float64         // stop when cost and bound are this share of the cost apart
	Apart      float64         // stop when cost and bound are this far apart, in the unit of cost
	Progress   func(*Progress) // told when cost or bound got better; may be nil
}

// sound checks the limits and the size of a start.
func (l Limits) sound(columns int, start []float64) error {
	switch {
	case l.Nodes < 0 || l.Iterations < 0:
		return fmt.Errorf("limits of %d nodes and %d iterations; give counts, or 0 for none", l.Nodes, l.Iterations)
	case !(l.Share >= 0) || !(l.Apart >= 0):
		return fmt.Errorf("gaps of %v and %v to stop at; give 0 or more", l.Share, l.Apart)
	case start != nil && len(start) != columns:
		return fmt.Errorf("a start of %d values for %d columns; give one a column, or none", len(start), columns)
	}
	return nil
}

// Ready returns why a solver must refuse this call: a programme that is not sound, limits
// below nothing, or a start of the wrong length. Every Solver begins with it.
func Ready(p *Programme, limits Limits, start []float64) error {
	if err := p.Sound(); err != nil {
		return err
	}
	return limits.sound(len(p.Columns), start)
}

// Progress is how far a solver has come.
type Progress struct {
	Objective  float64 // cost of the best answer so far; +Inf before the first
	Bound      float64 // no answer costs less; -Inf before it is known
	Nodes      int     // branches looked into
	Iterations int     // steps of the linear method
}

// State says how a solver ended.
type State int

// How a solver ends.
const (
	Stopped    State = iota // by a limit, by ctx, or at the end of its wits; Values are the best so far, nil when there are none
	Proved                  // Values are best within the gap asked for
	Infeasible              // no values keep every limit
	Unbounded               // costs fall without end
)

// String says the state in a word.
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

// Answer is what a solver found.
type Answer struct {
	State      State
	Values     []float64 // one a column; nil when none were found
	Objective  float64   // what they cost; +Inf without values, -Inf when unbounded
	Bound      float64   // no answer costs less; -Inf when not known, +Inf when infeasible
	Gap        float64   // how far apart the two are, as a share of the cost; +Inf without values
	Prices     []float64 // one a row, where the solver has them: DrawnIn's Bound by them is Bound; else nil
	Nodes      int       // branches looked into
	Iterations int       // steps of the linear method
}

// Apart returns how far cost and bound stand apart, in the unit of cost: no answer is more
// than this better.
func (a Answer) Apart() float64 {
	if a.Objective == a.Bound {
		return 0
	}
	return a.Objective - a.Bound
}

// GapOf returns the gap between a cost and its bound as a share of the cost: 0 when they are
// equal, +Inf when either is not known or only the cost is nothing.
func GapOf(objective, bound float64) float64 {
	switch {
	case objective == bound:
		return 0
	case !finite(objective) || !finite(bound) || objective == 0:
		return math.Inf(1)
	}
	return math.Abs(objective-bound) / math.Abs(objective)
}

// Met reports whether a cost and its bound are as close as the limits ask.
func (l Limits) Met(objective, bound float64) bool {
	return finite(objective) && (objective-bound <= l.Apart || GapOf(objective, bound) <= l.Share)
}

// Relaxation is a programme's answer with whole numbers not asked for, and the prices that
// prove it.
type Relaxation struct {
	State     State
	Values    []float64 // one a column, not whole
	Objective float64   // what they cost
	Bound     float64   // what the prices prove: DrawnIn's Bound by them; -Inf where they prove nothing
	Prices    []float64 // one a row: what one unit more of its limit would add to the cost
	Reduced   []float64 // one a column: what one unit more of it would add to the cost
}
