package sheet

import "io"

// SeasonPage is a plan of the season for one page.
type SeasonPage struct {
	Plan    string
	Says    string      // the plan in one sentence
	Picture []byte      // SVG of the garden's own
	Facts   [][2]string // name and figure
	Batches []SeasonBatch
	Next    []string // the jobs that come next
}

// SeasonBatch is a group of plants raised in the same way.
type SeasonBatch struct {
	Name, Start, Out, Flower string
	Count                    string
}

// Season writes a plan on one page: its picture, its figures, and the dates of every group.
// Groups that don't fit beside the picture follow on a second page.
func Season(w io.Writer, head Head, page SeasonPage) (Told, error) {
	l := newList("Season: "+page.Plan, head)
	l.words(page.Says, bodySize, black)
	l.y += 2
	top := l.y
	room := l.bottom() - top
	size := l.picture(page.Picture, edge, top, l.inner()*0.6, room)
	left := edge + size.Width + 6
	l.side(page, left, l.right()-left)
	return l.finish(w)
}

// side writes the column beside the picture.
func (l *list) side(page SeasonPage, x, width float64) {
	for _, fact := range page.Facts {
		b := l.wrapped(fact[1], bodySize, bold, width*0.6)
		l.text(x, l.y+3.4, fact[0], smallSize, plain, grey)
		l.draw(b, x+width*0.4, l.y, black)
		l.y += b.height() + 0.6
	}
	l.y += 3
	l.text(x, l.y+3.4, "out, and first flower (one in ten earlier to later)", smallSize-0.5, plain, grey)
	l.y += 5
	for _, b := range page.Batches {
		x, width = l.further(x, width, 14)
		name := l.wrapped(b.Name, bodySize-0.5, bold, width-12)
		l.draw(name, x, l.y, black)
		l.textEnd(x+width, l.y+3.2, b.Count, bodySize-0.5, bold, black)
		l.y += name.height()
		line := l.wrapped("start "+b.Start+", out "+b.Out+", flower "+b.Flower, smallSize, plain, width)
		l.draw(line, x, l.y, black)
		l.y += line.height() + 1.2
	}
	l.y += 2
	if len(page.Next) > 0 {
		l.text(x, l.y+3.4, "next", smallSize, plain, grey)
		l.y += 5
	}
	for _, job := range page.Next {
		x, width = l.further(x, width, 10)
		b := l.wrapped(job, smallSize, plain, width-6)
		l.box(x, l.y+0.3, 3)
		l.draw(b, x+5, l.y, black)
		l.y += b.height() + 1
	}
}

// further returns the column to continue in: the same if the height is left in it, else the
// whole width of a new page.
func (l *list) further(x, width, height float64) (newX, newWidth float64) {
	if l.y+height <= l.bottom() {
		return x, width
	}
	l.turn()
	return edge, l.inner()
}
