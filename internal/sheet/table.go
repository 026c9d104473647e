package sheet

// Sort is what a column of a list holds.
type Sort int

// The sorts of columns.
const (
	Words  Sort = iota
	Number      // set to the right
	Tick        // a box to tick by hand
	Entry       // a box to write a number into
	Colour      // a swatch; the cell is #rrggbb
	Blank       // room to write, with a line
)

// ByHand reports whether a column is filled in by hand.
func (s Sort) ByHand() bool { return s == Tick || s == Entry || s == Blank }

// IsColour and IsNumber report columns that are shown in ways of their own.
func (s Sort) IsColour() bool { return s == Colour }
func (s Sort) IsNumber() bool { return s == Number }

// Column is one of a list's.
type Column struct {
	Head  string
	Width float64 // on paper, in millimetres; 0 shares what is left
	Sort  Sort
	Bold  bool
}

// Measures of a table, in millimetres.
const (
	cellGap  = 2.0 // after a cell
	numGap   = 4.0 // after a number
	rowSpace = 1.7 // above and below the words of a row
	tickSide = 4.2
	entryW   = 13.0
	entryH   = 6.6
)

// table draws rows under the heads of its columns.
type table struct {
	*list
	columns []Column
	x       []float64
	tall    float64 // the least height of a row
}

// newTable begins a table; its heads are repeated on further pages.
func (l *list) newTable(columns ...Column) *table {
	t := &table{list: l, columns: columns, tall: 6}
	left, shares := l.inner(), 0
	for _, c := range columns {
		left -= c.Width
		if c.Width == 0 {
			shares++
		}
		if c.Sort == Entry || c.Sort == Blank {
			t.tall = entryH + 1.6
		}
	}
	x := edge
	for i := range t.columns {
		if t.columns[i].Width == 0 {
			t.columns[i].Width = left / float64(shares)
		}
		t.x = append(t.x, x)
		x += t.columns[i].Width
	}
	l.top = t.heads
	l.y++
	l.need(24)
	t.heads()
	return t
}

// heads writes the heads of the columns.
func (t *table) heads() {
	tall := 0.0
	blocks := make([]block, len(t.columns))
	for i, c := range t.columns {
		blocks[i] = t.wrapped(c.Head, smallSize, plain, c.Width-cellGap)
		tall = max(tall, blocks[i].height())
	}
	for i, b := range blocks {
		x := t.x[i]
		if t.columns[i].Sort == Number && len(b.lines) == 1 {
			x += t.columns[i].Width - numGap - t.width(b.lines[0], smallSize, plain)
		}
		t.draw(b, x, t.y+tall-b.height(), grey)
	}
	t.y += tall + 1
	t.line(edge, t.y, t.right(), t.y, 0.35, black)
	t.y += 0.5
}

// group writes a heading between rows, and keeps it with the row that follows.
func (t *table) group(text, aside string) {
	t.need(9 + t.tall)
	t.y += 2
	t.text(edge, t.y+4, text, bodySize+1, bold, black)
	t.textEnd(t.right(), t.y+4, aside, smallSize, plain, grey)
	t.y += 6
	t.line(edge, t.y, t.right(), t.y, 0.2, rule)
}

// row writes one row; there is a cell for every column.
func (t *table) row(cells ...string) {
	blocks := make([]block, len(cells))
	tall := t.tall
	for i, c := range t.columns {
		if c.Sort == Words || c.Sort == Number {
			blocks[i] = t.wrapped(cells[i], bodySize, c.Bold, c.Width-cellGap)
			tall = max(tall, blocks[i].height()+2*rowSpace)
		}
	}
	t.need(tall)
	for i, c := range t.columns {
		t.cell(c, cells[i], blocks[i], t.x[i], tall)
	}
	t.y += tall
	t.line(edge, t.y, t.right(), t.y, 0.12, rule)
}

func (t *table) cell(c Column, text string, b block, x, tall float64) {
	middle := t.y + tall/2
	switch c.Sort {
	case Words:
		t.draw(b, x, middle-b.height()/2, black)
	case Number:
		for i, line := range b.lines {
			one := b
			one.lines = b.lines[i : i+1]
			t.draw(one, x+c.Width-numGap-t.width(line, b.size, b.bold), middle-b.height()/2+float64(i)*one.height(), black)
		}
	case Tick:
		t.box(x, middle-tickSide/2, tickSide)
	case Entry:
		t.frame(x, middle-entryH/2, min(entryW, c.Width-cellGap), entryH, 0.2, grey)
	case Colour:
		t.swatch(x, middle-2, min(6, c.Width-1), 4, text)
	case Blank:
		t.line(x, middle+entryH/2, x+c.Width-cellGap, middle+entryH/2, 0.15, grey)
	}
}
