package solve

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strconv"
)

// WriteMPS writes the programme as a minimisation in free MPS format, which other solvers
// read. The offset is the cost of a column named offset that is fixed at 1, because solvers
// disagree on the sign of a constant in the objective. Columns are named c0, c1 … and rows r0,
// r1 … in their order; their own names are in comments at the top. Numbers read back exactly,
// except the wider limit of a row with two different limits, which MPS gives as a difference.
//
// Source: GLPK 5.0 Reference Manual, appendix B, "MPS Model Format".
func (p *Programme) WriteMPS(w io.Writer) error {
	if err := p.Sound(); err != nil {
		return err
	}
	b := bufio.NewWriter(w)
	for i, c := range p.Columns {
		remark(b, "c", i, c.Name)
	}
	for i, r := range p.Rows {
		remark(b, "r", i, r.Name)
	}
	fmt.Fprintln(b, "NAME programme")
	fmt.Fprintln(b, "ROWS")
	fmt.Fprintln(b, " N cost")
	for i, r := range p.Rows {
		fmt.Fprintf(b, " %s r%d\n", r.sort(), i)
	}
	p.writeColumns(b)
	p.writeSides(b)
	p.writeBounds(b)
	fmt.Fprintln(b, "ENDATA")
	return b.Flush() // a bufio.Writer keeps its first error
}

// remark writes a name as a comment, escaped so that it can't end the line.
func remark(b *bufio.Writer, sort string, i int, name string) {
	if name != "" {
		fmt.Fprintf(b, "* %s%d %s\n", sort, i, strconv.QuoteToGraphic(name))
	}
}

// sort returns the MPS type of the row: E for equality, G for a lower limit, with or without
// an upper one, L for an upper limit, N for none.
func (r Row) sort() string {
	switch {
	case r.Low == r.High:
		return "E"
	case finite(r.Low):
		return "G"
	case finite(r.High):
		return "L"
	}
	return "N"
}

// writeColumns writes the matrix by columns, with markers around whole ones.
func (p *Programme) writeColumns(b *bufio.Writer) {
	parts := make([][]Term, len(p.Columns)) // the terms of each column; Column holds the row
	for i, r := range p.Rows {
		for _, t := range r.Terms {
			if t.Factor != 0 {
				parts[t.Column] = append(parts[t.Column], Term{i, t.Factor})
			}
		}
	}
	fmt.Fprintln(b, "COLUMNS")
	whole, markers := false, 0
	mark := func(to bool) {
		if whole != to {
			fmt.Fprintf(b, " marker%d 'MARKER' %s\n", markers, map[bool]string{true: "'INTORG'", false: "'INTEND'"}[to])
			whole, markers = to, markers+1
		}
	}
	for i, c := range p.Columns {
		mark(c.Whole)
		fmt.Fprintf(b, " c%d cost %s\n", i, exactText(c.Cost))
		for _, t := range parts[i] {
			fmt.Fprintf(b, " c%d r%d %s\n", i, t.Column, exactText(t.Factor))
		}
	}
	mark(false)
	if p.Offset != 0 {
		fmt.Fprintf(b, " offset cost %s\n", exactText(p.Offset))
	}
}

// writeSides writes the limits of the rows.
func (p *Programme) writeSides(b *bufio.Writer) {
	fmt.Fprintln(b, "RHS")
	for i, r := range p.Rows {
		switch r.sort() {
		case "E", "G":
			fmt.Fprintf(b, " rhs r%d %s\n", i, exactText(r.Low))
		case "L":
			fmt.Fprintf(b, " rhs r%d %s\n", i, exactText(r.High))
		}
	}
	fmt.Fprintln(b, "RANGES")
	for i, r := range p.Rows {
		if r.sort() == "G" && finite(r.High) {
			fmt.Fprintf(b, " ranges r%d %s\n", i, exactText(r.High-r.Low))
		}
	}
}

// writeBounds writes the bounds of every column, because solvers differ in their defaults.
func (p *Programme) writeBounds(b *bufio.Writer) {
	fmt.Fprintln(b, "BOUNDS")
	if p.Offset != 0 {
		fmt.Fprintln(b, " FX bounds offset 1")
	}
	for i, c := range p.Columns {
		low, high := math.IsInf(c.Low, -1), math.IsInf(c.High, 1)
		switch {
		case low && high:
			fmt.Fprintf(b, " FR bounds c%d\n", i)
			continue
		case c.Low == c.High:
			fmt.Fprintf(b, " FX bounds c%d %s\n", i, exactText(c.Low))
			continue
		case low:
			fmt.Fprintf(b, " MI bounds c%d\n", i)
		default:
			fmt.Fprintf(b, " LO bounds c%d %s\n", i, exactText(c.Low))
		}
		if high {
			fmt.Fprintf(b, " PL bounds c%d\n", i)
		} else {
			fmt.Fprintf(b, " UP bounds c%d %s\n", i, exactText(c.High))
		}
	}
}

func exactText(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }
