package sheet

import (
	"fmt"
	"strings"
)

// A line takes so much above its foot and below it, as multiples of the type size; more
// where its letters are taller or reach deeper than those of common Latin type, which may
// touch the edge of their line. leading is both.
const (
	above   = 1.0
	below   = 0.22
	leading = above + below
	tall    = 1.08  // the dots and rings on Latin capitals
	deep    = 0.245 // the tails of Latin letters
	gap     = 0.04  // left free where letters reach further
)

// smallest is the least type size, in points, that a label is read at without glasses: an
// assumption, chosen on printed samples.
const smallest = 4.5

// block is text broken into lines at a size.
type block struct {
	lines    []string
	size     float64
	bold     bool
	up, down float64 // what each line takes above and below its foot, in type sizes
}

// block makes a block of lines.
func (p *paper) block(lines []string, size float64, bold bool) block {
	b := block{lines, size, bold, above, below}
	for _, line := range lines {
		up, down := p.reach(line, bold)
		b.up, b.down = max(b.up, up), max(b.down, down)
	}
	return b
}

// reach returns what a line takes above and below its foot, in type sizes.
func (p *paper) reach(line string, bold bool) (up, down float64) {
	up, down = above, below
	for _, r := range p.runs(line, bold) {
		if r.up > tall {
			up = max(up, r.up)
		}
		if r.down > deep {
			down = max(down, r.down+gap)
		}
	}
	return up, down
}

// leading returns the height of a line of the block, in type sizes.
func (b block) leading() float64 { return b.up + b.down }

// height returns how much paper the block takes from top to foot.
func (b block) height() float64 { return float64(len(b.lines)) * b.leading() * b.size * point }

// draw writes the block with its upper left corner at a point.
func (p *paper) draw(b block, x, y float64, colour ink) {
	for i, line := range b.lines {
		p.text(x, y+(float64(i)*b.leading()+b.up)*b.size*point, line, b.size, b.bold, colour)
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
	line := p.block([]string{text}, size, bold)
	size = min(size, height/(point*line.leading()))
	if w := p.width(text, size, bold); w > 0 {
		if line.size = min(size, size*width/w*0.999); line.size >= max(0.75*size, smallest) {
			return line, true
		}
	}
	var whole, broken block
	for s := size; s >= smallest && whole.size == 0; s *= 0.97 {
		b := p.wrapped(text, s, bold, width)
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
	kept, _ := readable(text)
	return strings.Join(b.lines, " ") == string(kept)
}

// wrapped is the block of a text broken into lines no wider than width.
func (p *paper) wrapped(text string, size float64, bold bool, width float64) block {
	return p.block(p.wrap(text, size, bold, width), size, bold)
}

// wrap breaks text into lines no wider than width, between words where it can and within
// a word that is wider than a line.
func (p *paper) wrap(text string, size float64, bold bool, width float64) []string {
	p.runs(text, bold) // so that what can't be printed is told with the whole text
	kept, _ := readable(text)
	var lines []string
	line := ""
	for _, word := range strings.Fields(string(kept)) {
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

// head returns as much of a word as goes into a width, one letter at least. Letters that
// are written as one stay together.
func (p *paper) head(word string, size float64, bold bool, width float64) string {
	letters := []rune(word)
	bound := p.bound(letters, bold)
	end := 0
	for next := 1; next <= len(letters); next++ {
		if bound[next] {
			continue
		}
		if end > 0 && p.width(string(letters[:next]), size, bold) > width {
			break
		}
		end = next
	}
	return string(letters[:end])
}

// bound tells of each letter of a word, and of its end, whether it is bound to the one
// before it: both are written as one, or the one before is a vowel that stands in front of
// its consonant, as in Thai and Lao.
func (p *paper) bound(letters []rune, bold bool) []bool {
	bound := make([]bool, len(letters)+1)
	for _, run := range p.runs(string(letters), bold) {
		for _, part := range run.parts {
			for i := part.from + 1; i < part.to && part.said != ""; i++ {
				bound[i] = true
			}
		}
	}
	for i, r := range letters[:len(letters)-1] {
		if r >= 0x0E40 && r <= 0x0E44 || r >= 0x0EC0 && r <= 0x0EC4 {
			bound[i+1] = true
		}
	}
	return bound
}
