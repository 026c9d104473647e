package sheet

import (
	"fmt"
	"io"

	"eyeup/civil"
)

// Alignment writes a page that shows where each label of a layout falls. Hold it against the
// light with a sheet of labels. Each box has its number in the exact middle.
func Alignment(w io.Writer, l Layout, today civil.Date) (Told, error) {
	p := newPaper("alignment test", l.Page, today)
	p.page()
	size := l.Label()
	for n := range l.PerPage() {
		x, y := l.corner(n)
		p.frame(x, y, size.Width, size.Height, 0.15, black)
		middleX, middleY := x+size.Width/2, y+size.Height/2
		p.line(middleX-size.Width*0.3, middleY, middleX-5, middleY, 0.1, rule)
		p.line(middleX+5, middleY, middleX+size.Width*0.3, middleY, 0.1, rule)
		p.textMiddle(middleX, middleY+capital(9)/2, fmt.Sprint(n+1), 9, bold, black)
		if n == 0 {
			p.draw(p.fit(fmt.Sprintf("%.1f × %.1f mm", size.Width, size.Height), size.Width-3, 4, 7, plain), x+1.5, y+1, black)
		}
		if n == l.PerPage()-1 {
			p.draw(p.fit("print at 100 %, not fitted to the page", size.Width-3, 4, 7, plain), x+1.5, y+size.Height-4.5, black)
		}
	}
	return p.finish(w)
}

// capital returns the height of figures and capitals at a type size, in millimetres. Source:
// the typeface's capital height, 714 of 1000 units.
func capital(size float64) float64 { return 0.714 * size * point }
