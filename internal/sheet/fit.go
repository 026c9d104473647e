package sheet

import (
	"fmt"
	"strings"
)

// leading is the height of a line, as a multiple of the type size.
const leading = 1.22

// smallest is the least type size, in points, that a label is read at without glasses: an
// assumption, chosen on printed samples.
const smallest = 4.5

// block is text broken into lines at a size.
type block struct {
	lines []string
	size  float64
	bold  bool
}

// height returns how much paper the block takes from top to foot.
func (b block) height() float64 { return float64(len(b.lines)) * b.size * point * leading }

// draw writes the block with its upper left corner at a point.
func (p *paper) draw(b block, x, y float64, colour ink) {
	for i, line := range b.lines {
		p.text(x, y+(float64(i)+0.82)*b.size*point*leading, line, b.size, b.bold, colour)
	}
}

// TooLong says that a text does not go where it should even in the smallest type.
type TooLong struct {
	Text          string
	Width, Height float64 // of the room there is, in millimetres
}

// Error says what to do.
func (t *TooLong) Error() string {
	return fmt.Sprintf("%q does not go into %.0f by %.0f mm in type that can be read; take a larger label, or shorten the name", t.Text, t.Width, t.Height)
}

// fit sets a text as large as it goes into a width and height: first smaller on one line,
// down to three quarters, then on as many lines as it takes, smaller still. A word is
// broken only where that makes the type half as large again. Nothing is ever cut.
func (p *paper) fit(text string, width, height, size float64, bold bool) block {
	b, goes := p.tryFit(text, width, height, size, bold)
	if !goes {
		p.fail(&TooLong{text, width, height})
	}
	return b
}

// tryFit is fit for a text that may be left off where it does not go.
func (p *paper) tryFit(text string, width, height, size float64, bold bool) (b block, goes bool) {
	size = min(size, height/(point*leading))
	if w := p.width(text, size, bold); w > 0 {
		if one := min(size, size*width/w*0.999); one >= max(0.75*size, smallest) {
			return block{[]string{text}, one, bold}, true
		}
	}
	var whole, broken block
	for s := size; s >= smallest && whole.size == 0; s *= 0.97 {
		b := block{p.wrap(text, s, bold, width), s, bold}
		switch {
		case b.height() > height:
		case p.unbroken(text, b):
			whole = b
		case broken.size == 0:
			broken = b
		}
	}
	if broken.size > 1.5*whole.size {
		return broken, true
	}
	return whole, whole.size > 0
}

// unbroken reports whether the lines of a block break between words alone.
func (p *paper) unbroken(text string, b block) bool {
	return strings.Join(b.lines, " ") == strings.Join(strings.Fields(text), " ")
}

// wrap breaks text into lines no wider than width, between words where it can and within
// a word that is wider than a line.
func (p *paper) wrap(text string, size float64, bold bool, width float64) []string {
	p.runs(text, bold) // so that what can't be printed is told with the whole text
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		with := word
		if line != "" {
			with = line + " " + word
		}
		if p.width(with, size, bold) <= width {
			line = with
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		line = word
		for p.width(line, size, bold) > width {
			head := p.head(line, size, bold, width)
			if head == line {
				break // not one letter goes into the width
			}
			lines = append(lines, head)
			line = line[len(head):]
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// head returns as much of a word as goes into a width, one letter at least.
func (p *paper) head(word string, size float64, bold bool, width float64) string {
	end := 0
	for i, r := range word {
		next := i + len(string(r))
		if end > 0 && p.width(word[:next], size, bold) > width {
			break
		}
		end = next
	}
	return word[:end]
}
