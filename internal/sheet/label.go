package sheet

import (
	"fmt"
	"io"
	"strings"

	"eyeup/civil"
)

// Label is the text of a lot's label. Variety and Code are required; empty fields are left
// out.
type Label struct {
	Code    string // the lot's
	Variety string
	Kind    string
	Form    string
	Colour  string // #rrggbb
	Place   string // where it stands, with its crate
	Date    civil.Date
	Note    string // such as 3 of 12
}

// LabelJob is one print of labels.
type LabelJob struct {
	Layout  Layout
	Labels  []Label
	From    int    // the first free label of the first page, from 1; 0 is the first
	Address string // see Address; empty: the square code contains only the lot's code
	Outline bool   // draw the edge of each label, to cut along
	Today   civil.Date
}

// Labels writes labels as PDF. It fails without labels, if the first free label is not on the
// page, and if a name can't be printed or does not fit.
func Labels(w io.Writer, job LabelJob) (Told, error) {
	if len(job.Labels) == 0 {
		return Told{}, fmt.Errorf("there are no labels to print; name lots that stand in the garden")
	}
	at := max(job.From, 1) - 1
	if at >= job.Layout.PerPage() || job.From < 0 {
		return Told{}, fmt.Errorf("there is no label %d on a page of %d; begin from 1 to %d", job.From, job.Layout.PerPage(), job.Layout.PerPage())
	}
	p := newPaper("labels", job.Layout.Page, job.Today)
	size := job.Layout.Label()
	for i, label := range job.Labels {
		n := at + i
		if i == 0 || n%job.Layout.PerPage() == 0 {
			p.page()
		}
		x, y := job.Layout.corner(n % job.Layout.PerPage())
		p.label(label, job.Address, x, y, size)
		if job.Outline {
			p.frame(x, y, size.Width, size.Height, 0.1, rule)
		}
		if p.err != nil {
			return Told{}, fmt.Errorf("the label of %s: %w", label.Code, p.err)
		}
	}
	return p.finish(w)
}

// page begins a new page of the file's size.
func (p *paper) page() { p.pdf.AddPageFormat("P", pageSize(p.size)) }

// label draws one label, horizontal or vertical. A vertical one is written along its length
// and read from the right. Its square code is not turned, so that its modules align with a
// printer's dots.
func (p *paper) label(l Label, address string, x, y float64, size Size) {
	if l.Code == "" || l.Variety == "" {
		p.fail(fmt.Errorf("a label needs a code and a name"))
		return
	}
	text := address + l.Code
	if size.Height <= size.Width {
		at := p.written(l, text, x, y, size)
		p.drawSquare(text, at.x, at.y, at.side)
		return
	}
	p.pdf.TransformBegin()
	p.pdf.TransformRotate(90, x, y)
	p.pdf.TransformTranslate(-size.Height, 0)
	at := p.written(l, text, x, y, Size{size.Height, size.Width})
	p.pdf.TransformEnd()
	p.drawSquare(text, x+at.y-y, y+size.Height-(at.x-x)-at.side, at.side)
}

// room is the space for a square code with its quiet zone: upper left corner and side.
type room struct{ x, y, side float64 }

// written writes a horizontal label and returns the space for its square code.
func (p *paper) written(l Label, square string, x, y float64, size Size) room {
	if size.Height < 22 || size.Width > 3.2*size.Height {
		return p.strip(l, square, x, y, size)
	}
	return p.plate(l, square, x, y, size)
}

// plate writes a label with the name across its top and the square code on the right.
func (p *paper) plate(l Label, square string, x, y float64, size Size) room {
	pad := min(2.5, size.Height*0.07)
	side := min(size.Height*0.6, size.Width*0.36, 32)
	inner := size.Width - 2*pad
	quiet := quietOf(square, side)
	tall := side - quiet - pad // beside the square code
	top := size.Height - 2*pad - tall
	name := p.fit(l.Variety, inner, top, min(36, top*0.56/point), bold)
	p.draw(name, x+pad, y+pad, black)

	at := room{x + size.Width - side, y + size.Height - side, side}
	left := size.Width - side - pad
	y += pad + name.height()
	tall = size.Height - 2*pad - name.height() // what the name leaves
	code := p.fit(l.Code, left, tall*0.42, min(36, tall*0.34/point), bold)
	p.details(l, x+pad, y, left, tall-code.height())
	p.draw(code, x+pad, y+tall-code.height(), black)
	return at
}

// quietOf returns the width of a square code's quiet zone, which may overlap the label's
// margin.
func quietOf(text string, side float64) float64 {
	code, err := square(text)
	if err != nil {
		return 0
	}
	return side * quiet / float64(code.Size+2*quiet)
}

// details writes colour, kind and form, place and date beside name and code, in as many lines
// as fit.
func (p *paper) details(l Label, x, y, width, height float64) {
	lines := l.lines()
	words := ColourWords(l.Colour)
	count := len(lines)
	if words != "" {
		count++
	}
	if count == 0 {
		return
	}
	each := height / float64(count)
	size := min(11, each/(point*leading))
	each = min(each, 1.2*size*point*leading)
	mark := each * 0.72
	blocks := make([]block, len(lines))
	for i, line := range lines {
		b, goes := p.tryFit(line, width, each, size, plain)
		if !goes || each < 5.5*point*leading {
			p.paragraph(words, lines, l.Colour, x, y, width, height)
			return
		}
		blocks[i] = b
	}
	if words != "" {
		b := p.fit(words, width-mark*1.4-1, each, size, plain)
		p.swatch(x, y+(b.height()-mark)/2, mark*1.4, mark, l.Colour)
		p.draw(b, x+mark*1.4+1, y, black)
		y += each
	}
	for _, b := range blocks {
		p.draw(b, x, y, black)
		y += each
	}
}

// paragraph writes the same as details where there is no room for a line each. What does not
// fit is left out, place and date first, and reported.
func (p *paper) paragraph(words string, lines []string, colour string, x, y, width, height float64) {
	mark := min(height, 6)
	if words != "" && width >= mark {
		p.swatch(x, y+(height-mark)/2, mark, mark, colour)
		x, width = x+mark+1, width-mark-1
	}
	parts := lines
	if words != "" {
		parts = append([]string{words}, lines...)
	}
	for n := len(parts); n > 0; n-- {
		b, goes := p.tryFit(strings.Join(parts[:n], " · "), width, height, 8, plain)
		if goes && (p.unbroken(strings.Join(parts[:n], " · "), b) || n == len(parts)) {
			p.draw(b, x, y+(height-b.height())/2, black)
			return
		}
		p.small = true
	}
}

// lines are the small lines of a label.
func (l Label) lines() []string {
	var all []string
	when := ""
	if !l.Date.IsZero() {
		when = fmt.Sprintf("%s %d", l.Date.Short(), l.Date.Year())
	}
	for _, parts := range [][]string{{l.Kind, l.Form}, {l.Place, when, l.Note}} {
		kept := make([]string, 0, len(parts))
		for _, part := range parts {
			if part != "" {
				kept = append(kept, part)
			}
		}
		if len(kept) > 0 {
			all = append(all, strings.Join(kept, ", "))
		}
	}
	return all
}

// strip writes a narrow label along its length: square code, code, name and details.
func (p *paper) strip(l Label, square string, x, y float64, size Size) room {
	pad := min(1.5, size.Height*0.08)
	side := min(size.Height, 32)
	quiet := quietOf(square, side)
	left := x + side
	if quiet > 1.5 {
		left -= quiet - 1.5
	}
	width := x + size.Width - pad - left
	inner := size.Height - 2*pad
	name := p.fit(l.Variety, width, inner*0.52, min(28, inner*0.48/point), bold)
	p.draw(name, left, y+pad, black)
	below := y + pad + inner*0.54
	foot := inner * 0.46
	code := p.fit(l.Code, width*0.4, foot, foot*0.9/point, bold)
	p.draw(code, left, below+(foot-code.height())/2, black)
	after := p.width(l.Code, code.size, bold) + 2
	p.details(l, left+after, below, width-after, foot)
	return room{x, y + (size.Height-side)/2, side}
}
