package sheet

import (
	"fmt"
	"io"

	"eyeup/civil"
)

// Head is the heading of every list.
type Head struct {
	Garden   string
	Today    civil.Date
	Paper    Size
	Notes    []string // such as where the weather is from
	Cautions []string // said where the work is
}

// Measures of a list's page, in millimetres, and sizes of type, in points.
const (
	edge      = 14.0
	footRoom  = 12.0
	titleSize = 17.0
	bodySize  = 9.5
	smallSize = 8.0
)

// list is a list being drawn, page by page from the top.
type list struct {
	*paper
	head Head
	y    float64
	top  func() // draws what is repeated at the head of a further page
}

// newList begins a list with its title, notes and cautions.
func newList(title string, head Head) *list {
	l := &list{paper: newPaper(head.Garden+": "+title, head.Paper, head.Today), head: head}
	l.page()
	l.y = edge
	l.text(edge, l.y+5, title, titleSize, bold, black)
	l.textEnd(l.right(), l.y+5, head.Garden, 11, plain, grey)
	l.y += 10
	for _, note := range head.Notes {
		l.words(note, smallSize, grey)
	}
	if len(head.Cautions) > 0 {
		l.care(head.Cautions)
	}
	l.y += 2
	return l
}

func (l *list) right() float64  { return l.size.Width - edge }
func (l *list) bottom() float64 { return l.size.Height - edge - footRoom }
func (l *list) inner() float64  { return l.size.Width - 2*edge }

// turn starts a new page.
func (l *list) turn() {
	l.page()
	l.y = edge
	if l.top != nil {
		l.top()
	}
}

// need starts a new page unless the given height is left.
func (l *list) need(height float64) {
	if l.y+height > l.bottom() {
		l.turn()
	}
}

// words writes a paragraph across the page.
func (l *list) words(text string, size float64, colour ink) {
	b := l.wrapped(text, size, plain, l.inner())
	l.need(b.height())
	l.draw(b, edge, l.y, colour)
	l.y += b.height() + 0.8
}

// care writes the cautions in a tinted box with a bar at its side.
func (l *list) care(cautions []string) {
	var blocks []block
	height := 3.0
	for _, c := range cautions {
		b := l.wrapped(c, smallSize+0.5, plain, l.inner()-9)
		blocks = append(blocks, b)
		height += b.height() + 0.8
	}
	l.need(height)
	l.fill(edge, l.y+1, l.inner(), height, wash)
	l.fill(edge, l.y+1, 1.2, height, black)
	y := l.y + 2.5
	for _, b := range blocks {
		l.draw(b, edge+4, y, black)
		y += b.height() + 0.8
	}
	l.y += height + 3
}

// finish writes the foot of every page and the file.
func (l *list) finish(w io.Writer) (Told, error) {
	pages := l.pdf.PageCount()
	for n := 1; n <= pages; n++ {
		l.pdf.SetPage(n)
		y := l.size.Height - edge
		l.line(edge, y-5, l.right(), y-5, 0.2, rule)
		l.text(edge, y-1, fmt.Sprintf("%s, written %s %d", l.head.Garden, l.head.Today.Short(), l.head.Today.Year()), smallSize, plain, grey)
		l.textEnd(l.right(), y-1, fmt.Sprintf("page %d of %d", n, pages), smallSize, plain, grey)
	}
	return l.paper.finish(w)
}
