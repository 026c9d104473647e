package solve

import (
	"fmt"
	"math"
)

// Column is one variable of a programme.
type Column struct {
	Name      string  // for messages and files; may be empty
	Cost      float64 // per unit; negative for a gain
	Low, High float64 // bounds; infinite if there is none
	Whole     bool    // integer variable
}

// Term is a column's coefficient in a row.
type Term struct {
	Column int // index in the programme's columns
	Factor float64
}

// Row is a constraint: the sum of its terms is from Low to High. Equal limits make it an
// equality; an infinite one leaves that side open.
type Row struct {
	Name      string // for messages and files; may be empty
	Low, High float64
	Terms     []Term
}

// Programme asks for values of the columns, within their bounds and whole where required, that
// satisfy every row and minimise Offset + Σ Cost × value. Its zero value is empty and ready
// for use.
type Programme struct {
	Columns []Column
	Rows    []Row
	Offset  float64 // constant part of the cost
}

// Column adds a column and returns its index.
func (p *Programme) Column(c Column) int {
	p.Columns = append(p.Columns, c)
	return len(p.Columns) - 1
}

// Row adds a row and returns its index.
func (p *Programme) Row(r Row) int {
	p.Rows = append(p.Rows, r)
	return len(p.Rows) - 1
}

// The accepted range of numbers. Solvers silently drop smaller coefficients and treat larger
// limits as infinite.
const (
	smallest = 1e-9
	largest  = 1e15
)

// Sound returns an error that names the first invalid column or row: NaN, too large or too
// small a number, crossed limits, or a term whose column does not exist or appears twice in
// the row.
func (p *Programme) Sound() error {
	if !finite(p.Offset) {
		return fmt.Errorf("the programme's offset is %v; give a finite cost", p.Offset)
	}
	for i, c := range p.Columns {
		if err := c.sound(); err != nil {
			return fmt.Errorf("column %d%s: %w", i, named(c.Name), err)
		}
	}
	seen := make([]int, len(p.Columns))
	for i, r := range p.Rows {
		if err := r.sound(i+1, seen); err != nil {
			return fmt.Errorf("row %d%s: %w", i, named(r.Name), err)
		}
	}
	return nil
}

func (c Column) sound() error {
	if !finite(c.Cost) || math.Abs(c.Cost) > largest {
		return fmt.Errorf("cost %v; give a finite cost of at most %g", c.Cost, largest)
	}
	return Ordered(c.Low, c.High)
}

// sound checks a row; seen holds for each column the number of the last row that named it.
func (r Row) sound(mark int, seen []int) error {
	for _, t := range r.Terms {
		size := math.Abs(t.Factor)
		switch {
		case t.Column < 0 || t.Column >= len(seen):
			return fmt.Errorf("names column %d of %d; add the column first", t.Column, len(seen))
		case seen[t.Column] == mark:
			return fmt.Errorf("names column %d twice; give the sum of both factors once", t.Column)
		case !(size <= largest) || size > 0 && size < smallest:
			return fmt.Errorf("factor %v of column %d; leave it out or choose units in which it is between %g and %g",
				t.Factor, t.Column, smallest, largest)
		}
		seen[t.Column] = mark
	}
	return Ordered(r.Low, r.High)
}

// Ordered returns an error for limits that are NaN, crossed, or finite but too large.
func Ordered(low, high float64) error {
	switch {
	case math.IsNaN(low) || math.IsNaN(high) || math.IsInf(low, 1) || math.IsInf(high, -1):
		return fmt.Errorf("limits %v to %v; give numbers, the lower one below +Inf and the upper one above -Inf", low, high)
	case low > high:
		return fmt.Errorf("least %v is above most %v; give least at most as large as most", low, high)
	case finite(low) && math.Abs(low) > largest, finite(high) && math.Abs(high) > largest:
		return fmt.Errorf("limits %v to %v; give an infinite limit or one within %g", low, high, largest)
	}
	return nil
}

// Wholes reports whether any column must be whole.
func (p *Programme) Wholes() bool {
	for _, c := range p.Columns {
		if c.Whole {
			return true
		}
	}
	return false
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

func named(name string) string {
	if name == "" {
		return ""
	}
	return fmt.Sprintf(" (%s)", name)
}
