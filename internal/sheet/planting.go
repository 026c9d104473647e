package sheet

import (
	"fmt"
	"io"
)

// PlantingLine is one variety for the patch.
type PlantingLine struct {
	Variety, Kind, Colour string
	Height                string
	Count, Reserve        int
	When                  string // date of planting out, with its spread
}

// PatchRow is a row of the patch from start to end.
type PatchRow struct {
	Parts  []PatchPart
	Places int // of the row, planted or not
}

// PatchPart is a run of plants of one variety.
type PatchPart struct {
	Variety, Colour string
	Count           int
}

// Planting writes the planting list and the plan of the rows. plan says how the rows are
// computed.
func Planting(w io.Writer, head Head, lines []PlantingLine, rows []PatchRow, plan string) (Told, error) {
	li := &Listing{Head: head, Title: "Planting list", Empty: "Nothing is to be planted out.", Columns: []Column{
		Column{Head: "done", Width: 9, Sort: Tick}, Column{Head: "", Width: 8, Sort: Colour}, Column{Head: "variety", Bold: true},
		Column{Head: "kind", Width: 24}, Column{Head: "height", Width: 17, Sort: Number},
		Column{Head: "plant", Width: 15, Sort: Number, Bold: true}, Column{Head: "reserve", Width: 17, Sort: Number}, Column{Head: "planted out", Width: 46},
	}}
	for _, line := range lines {
		reserve := ""
		if line.Reserve > 0 {
			reserve = fmt.Sprint(line.Reserve)
		}
		li.add("", line.Colour, line.Variety, line.Kind, line.Height, fmt.Sprint(line.Count), reserve, line.When)
	}
	l := li.drawn()
	if len(rows) > 0 && len(lines) > 0 {
		l.rows(rows, plan)
	}
	return l.finish(w)
}

// rows draws the patch row by row, each plant a dot in its colour.
func (l *list) rows(rows []PatchRow, plan string) {
	l.need(40)
	l.y += 5
	l.text(edge, l.y+4, "Row by row", 12, bold, black)
	l.y += 7
	l.words(plan, smallSize, grey)
	for i, row := range rows {
		l.patchRow(i+1, row)
	}
}

// dotMost is the largest size of a plant's dot, in millimetres.
const dotMost = 4.4

func (l *list) patchRow(n int, row PatchRow) {
	const names = 9.0 // room for the row's number
	step := (l.inner() - names) / float64(row.Places)
	said := ""
	for _, part := range row.Parts {
		if said != "" {
			said += ", "
		}
		said += fmt.Sprintf("%d %s", part.Count, part.Variety)
	}
	b := l.wrapped(said, smallSize, plain, l.inner()-names)
	dot := min(dotMost, step*0.86)
	l.need(dot + b.height() + 4)
	l.text(edge, l.y+dot/2+1.2, fmt.Sprint(n), bodySize, bold, black)
	x := edge + names
	for i, part := range row.Parts {
		if i > 0 {
			l.line(x, l.y-0.6, x, l.y+dot+0.6, 0.25, black)
		}
		l.dots(x, l.y, step, dot, part)
		x += float64(part.Count) * step
	}
	l.y += dot + 0.8
	l.draw(b, edge+names, l.y, black)
	l.y += b.height() + 2.2
}

func (l *list) dots(x, y, step, dot float64, part PatchPart) {
	fill, known := inkOf(part.Colour)
	for i := range part.Count {
		style := "D"
		if known {
			style = "FD"
			l.pdf.SetFillColor(fill[0], fill[1], fill[2])
		}
		l.pdf.SetDrawColor(grey[0], grey[1], grey[2])
		l.pdf.SetLineWidth(0.15)
		l.pdf.Circle(x+(float64(i)+0.5)*step, y+dot/2, dot/2, style)
	}
}
