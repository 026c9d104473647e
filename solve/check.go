package solve

import (
	"fmt"
	"math"
)

// Tolerance is how far values may overstep a limit, or miss a whole number, and still count:
// the measure that solvers use.
const Tolerance = 1e-6

// Verdict is what multiplying values out has shown. Each figure is rounded outwards: it is
// never better than the truth.
type Verdict struct {
	Least, Most float64 // the cost lies between
	Overstep    float64 // the most by which a row or bound is overstepped, as a share of the limit where that is above 1
	Where       string  // which one; empty when none is
	Fraction    float64 // the most by which a whole column misses a whole number
}

// Holds reports whether nothing is overstepped, and no whole number missed, by more than
// tolerance.
func (v Verdict) Holds(tolerance float64) bool {
	return v.Overstep <= tolerance && v.Fraction <= tolerance
}

// Check multiplies values out: what they cost, what they overstep, and how far they are from
// whole. It shares nothing with any solver. The error says that there is not one finite value
// a column.
func (p *Programme) Check(values []float64) (Verdict, error) {
	var v Verdict
	if len(values) != len(p.Columns) {
		return v, fmt.Errorf("%d values for %d columns; give one a column", len(values), len(p.Columns))
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

// Cost returns what values cost, summed in order as floating-point numbers go. There must be
// one a column, or it panics.
func (p *Programme) Cost(values []float64) float64 {
	cost := p.Offset
	for i, c := range p.Columns {
		cost += float64(c.Cost * values[i])
	}
	return cost
}

// see notes by how much a sum oversteps its limits, if that is the worst yet.
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
