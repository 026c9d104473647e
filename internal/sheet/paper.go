package sheet

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf16"

	"codeberg.org/go-pdf/fpdf"

	"eyeup/civil"
)

// ink is a colour as red, green and blue, 0 to 255.
type ink [3]int

// The inks of every page, except flowers' colours.
var (
	black = ink{20, 20, 18}
	grey  = ink{110, 106, 96}
	rule  = ink{170, 165, 152}
	wash  = ink{241, 238, 230}
)

// face weights.
const (
	plain = false
	bold  = true
)

// millimetres in a point of type.
const point = 25.4 / 72

// paper is a PDF being drawn. Lengths are millimetres from the upper left corner, type
// sizes points. The first error stops all further drawing.
type paper struct {
	pdf    *fpdf.Fpdf
	setter *setter
	loaded map[*face]bool
	cache  map[cacheKey][]run
	left   map[rune]bool // pictograms that were left out
	small  bool          // something was left off labels for want of room
	size   Size
	err    error
}

type cacheKey struct {
	text string
	bold bool
}

// Size is that of a page in millimetres.
type Size struct{ Width, Height float64 }

// The sizes of common paper. Sources: ISO 216; ANSI/ASME Y14.1 (8½ by 11 inches).
var (
	A4     = Size{210, 297}
	Letter = Size{215.9, 279.4}
)

// newPaper starts a file with pages of a size. today is the date in the file.
func newPaper(title string, size Size, today civil.Date) *paper {
	pdf := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: size.Width, Ht: size.Height}})
	pdf.SetAutoPageBreak(false, 0)
	pdf.SetMargins(0, 0, 0)
	pdf.SetCatalogSort(true)
	pdf.SetCreationDate(today.UTC())
	pdf.SetModificationDate(today.UTC())
	pdf.SetTitle(title, true)
	pdf.SetProducer("eyeup", true)
	return &paper{pdf: pdf, setter: newSetter(), loaded: map[*face]bool{}, cache: map[cacheKey][]run{}, left: map[rune]bool{}, size: size}
}

func (p *paper) fail(err error) { p.err = cmp.Or(p.err, err) }

// runs lays a text out once, for every time that it is drawn.
func (p *paper) runs(text string, bold bool) []run {
	key := cacheKey{text, bold}
	if runs, done := p.cache[key]; done {
		return runs
	}
	runs, left, err := p.setter.laid(text, bold)
	if err != nil {
		p.fail(err)
	}
	for _, r := range left {
		p.left[r] = true
	}
	for _, r := range runs {
		if !p.loaded[r.face] {
			p.loaded[r.face] = true
			p.pdf.AddUTF8FontFromBytes(r.face.id, "", r.face.opened().bytes)
		}
	}
	p.cache[key] = runs
	return runs
}

// width returns how wide a line is.
func (p *paper) width(text string, size float64, bold bool) float64 {
	w := 0.0
	for _, r := range p.runs(text, bold) {
		w += r.ems * size * point
	}
	return w
}

// text writes a line with its left end and baseline at a point.
func (p *paper) text(x, y float64, text string, size float64, bold bool, colour ink) {
	p.pdf.SetTextColor(colour[0], colour[1], colour[2])
	for _, r := range p.runs(text, bold) {
		p.pdf.SetFont(r.face.id, "", size)
		for _, part := range r.parts {
			p.part(x, y, part, size*point)
		}
		x += r.ems * size * point
	}
}

// part draws a part of a run. Where the names of its glyphs don't give its text, it adds the
// text, so that it can be searched and copied. Source: ISO 32000-1, 14.9.4.
func (p *paper) part(x, y float64, part part, em float64) {
	if part.said != "" {
		p.pdf.RawWriteStr("/Span <</ActualText <FEFF" + hexOf(part.said) + ">>> BDC")
	}
	for _, at := range part.set {
		p.pdf.Text(x+at.x*em, y-at.y*em, at.codes)
	}
	if part.said != "" {
		p.pdf.RawWriteStr("EMC")
	}
}

// hexOf writes a text as UTF-16, in hexadecimal figures.
func hexOf(text string) string {
	var b strings.Builder
	for _, unit := range utf16.Encode([]rune(text)) {
		fmt.Fprintf(&b, "%04X", unit)
	}
	return b.String()
}

// textEnd writes a line that ends at x; textMiddle writes one centred at x.
func (p *paper) textEnd(x, y float64, text string, size float64, bold bool, colour ink) {
	p.text(x-p.width(text, size, bold), y, text, size, bold, colour)
}

func (p *paper) textMiddle(x, y float64, text string, size float64, bold bool, colour ink) {
	p.text(x-p.width(text, size, bold)/2, y, text, size, bold, colour)
}

// fill, frame, line and box draw shapes: a filled rectangle, an outlined one, a line, and
// a square to tick by hand.
func (p *paper) fill(x, y, w, h float64, colour ink) {
	p.pdf.SetFillColor(colour[0], colour[1], colour[2])
	p.pdf.Rect(x, y, w, h, "F")
}

func (p *paper) frame(x, y, w, h, thick float64, colour ink) {
	p.pdf.SetDrawColor(colour[0], colour[1], colour[2])
	p.pdf.SetLineWidth(thick)
	p.pdf.Rect(x, y, w, h, "D")
}

func (p *paper) line(x0, y0, x1, y1, thick float64, colour ink) {
	p.pdf.SetDrawColor(colour[0], colour[1], colour[2])
	p.pdf.SetLineWidth(thick)
	p.pdf.Line(x0, y0, x1, y1)
}

func (p *paper) box(x, y, side float64) { p.frame(x, y, side, side, 0.25, black) }

// swatch draws a flower's colour with an outline, so that white shows on white. An invalid
// colour draws nothing.
func (p *paper) swatch(x, y, w, h float64, hex string) {
	if colour, ok := inkOf(hex); ok {
		p.fill(x, y, w, h, colour)
		p.frame(x, y, w, h, 0.2, grey)
	}
}

// inkOf reads #rrggbb.
func inkOf(hex string) (ink, bool) {
	var c ink
	if len(hex) != 7 {
		return c, false
	}
	_, err := fmt.Sscanf(hex, "#%02x%02x%02x", &c[0], &c[1], &c[2])
	return c, err == nil
}

// finish writes the file and reports what was left out.
func (p *paper) finish(w io.Writer) (Told, error) {
	if p.err != nil {
		return Told{}, p.err
	}
	told := Told{Pages: p.pdf.PageCount(), LeftOut: []string{}, Small: p.small}
	for sign := range p.left {
		told.LeftOut = append(told.LeftOut, fmt.Sprintf("%c (%U)", sign, sign))
	}
	slices.Sort(told.LeftOut)
	if err := p.pdf.Output(w); err != nil {
		return Told{}, fmt.Errorf("the pages can't be written: %w", err)
	}
	return told, nil
}

// Told reports what was left out of a print.
type Told struct {
	Pages   int
	LeftOut []string // pictograms that no typeface has
	Small   bool     // labels were too small for all of colour, kind, place and date
}

func pageSize(s Size) fpdf.SizeType { return fpdf.SizeType{Wd: s.Width, Ht: s.Height} }
