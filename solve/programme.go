package solve

import (
	"fmt"
	"math"
)

// Column is one unknown of a programme: how much of something.
type Column struct {
	Name      string  // for messages and files; may be empty
	Cost      float64 // of one unit; below nothing for what is worth having
	Low, High float64 // least and most; infinite where there is none
	Whole     bool    // whole numbers only
}

// Term is a column's part in a row: Factor for each unit of the column.
type Term struct {
	Column int // its place in the programme's columns
	Factor float64
}

// Row is a limit: the sum of its terms lies from Low to High. Equal limits bind it to one
// value; an infinite one leaves that side open.
type Row struct {
	Name      string // for messages and files; may be empty
	Low, High float64
	Terms     []Term
}

// Programme asks for column values within their bounds, whole where they must be, that keep
// every row and whose cost, Offset + Σ Cost × value, is least. Its zero value is empty and
// ready for use.
type Programme struct {
	Columns []Column
	Rows    []Row
	Offset  float64 // cost of what is settled already
}

// Column adds a column and returns its place.
func (p *Programme) Column(c Column) int {
	p.Columns = append(p.Columns, c)
	return len(p.Columns) - 1
}

// Row adds a row and returns its place.
func (p *Programme) Row(r Row) int {
	p.Rows = append(p.Rows, r)
	return len(p.Rows) - 1
}

// The range of sizes that can be reckoned with: solvers drop smaller factors and take larger
// limits for none at all, which would be done in silence.
const (
	smallest = 1e-9
	largest  = 1e15
)

// Sound returns an error that names the first column or row that makes no sense: not a
// number, too large or too small to be reckoned with, its limits crossed, or a term whose
// column does not exist or stands twice in one row.
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

// sound checks a row; seen holds for each column the mark of the last row that named it.
func (r Row) sound(mark int, seen []int) error {
	for _, t := range r.Terms {
		size := math.Abs(t.Factor)
		switch {
		case t.Column < 0 || t.Column >= len(seen):
			return fmt.Errorf("names column %d of %d; add the column first", t.Column, len(seen))
		case seen[t.Column] == mark:
			return fmt.Errorf("names column %d twice; give the sum of both factors once", t.Column)
		case !(size <= largest) || size > 0 && size < smallest:
			return fmt.Errorf("factor %v of column %d; leave it out or choose units in which it lies between %g and %g",
				t.Factor, t.Column, smallest, largest)
		}
		seen[t.Column] = mark
	}
	return Ordered(r.Low, r.High)
}

// Ordered returns what is wrong with a pair of limits: not numbers, crossed, or finite but too
// large to be reckoned with.
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
