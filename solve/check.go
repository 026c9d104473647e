package solve

import (
	"fmt"
	"math"
)

// Tolerance is by how much values may violate a limit, or miss a whole number, and still be
// accepted, as is usual for solvers.
const Tolerance = 1e-6

// Verdict is the result of Check. Each figure is rounded outwards: it is never better than the
// truth.
type Verdict struct {
	Least, Most float64 // the cost is between these
	Overstep    float64 // largest violation of a row or bound, relative to limits above 1
	Where       string  // which row or column; empty if none
	Fraction    float64 // largest distance of a whole column from a whole number
}

// Holds reports whether no violation and no distance from a whole number exceeds tolerance.
func (v Verdict) Holds(tolerance float64) bool {
	return v.Overstep <= tolerance && v.Fraction <= tolerance
}

// Check evaluates values: their cost, the largest violation, and the distance from whole
// numbers. It shares no code with any solver. It fails unless there is one finite value per
// column.
func (p *Programme) Check(values []float64) (Verdict, error) {
	var v Verdict
	if len(values) != len(p.Columns) {
		return v, fmt.Errorf("%d values for %d columns; give one per column", len(values), len(p.Columns))
	}
	cost := exactly(p.Offset)
	for i, c := range p.Columns {
		x := values[i]
		if !finite(x) {
			return v, fmt.Errorf("column %d%s is %v; give a finite value", i, named(c.Name), x)
		}
		cost = cost.plus(exactly(x).times(c.Cost))
		v.see(exactly(x), c.Low, c.High, "column", i, c.Name)
		if c.Whole {
			v.Fraction = math.Max(v.Fraction, math.Abs(x-math.Round(x)))
		}
	}
	v.Least, v.Most = cost.low, cost.high
	for i, r := range p.Rows {
		sum := between{}
		for _, t := range r.Terms {
			sum = sum.plus(exactly(values[t.Column]).times(t.Factor))
		}
		v.see(sum, r.Low, r.High, "row", i, r.Name)
	}
	return v, nil
}

// Cost returns the cost of values, summed in order in floating point. It panics unless there
// is one value per column.
func (p *Programme) Cost(values []float64) float64 {
	cost := p.Offset
	for i, c := range p.Columns {
		cost += float64(c.Cost * values[i])
	}
	return cost
}

// see records a violation of limits if it is the largest so far.
func (v *Verdict) see(sum between, low, high float64, sort string, i int, name string) {
	over := 0.0
	if sum.low < low {
		over = up(up(low-sum.low) / math.Max(1, math.Abs(low)))
	}
	if sum.high > high {
		over = math.Max(over, up(up(sum.high-high)/math.Max(1, math.Abs(high))))
	}
	if over > v.Overstep {
		v.Overstep, v.Where = over, fmt.Sprintf("%s %d%s", sort, i, named(name))
	}
}
