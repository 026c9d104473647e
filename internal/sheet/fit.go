package sheet

import (
	"fmt"
	"strings"
)

// Space above and below a line's baseline, in multiples of the type size; more if its letters
// are taller or deeper than those of common Latin type, which may touch the edge of their
// line. leading is the sum.
const (
	above   = 1.0
	below   = 0.22
	leading = above + below
	tall    = 1.08  // the dots and rings on Latin capitals
	deep    = 0.245 // the tails of Latin letters
	gap     = 0.04  // extra space for such letters
)

// smallest is the smallest type size, in points, readable without glasses. Assumption, chosen
// on printed samples.
const smallest = 4.5

// block is text broken into lines at a type size.
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

// reach returns the space that a line needs above and below its baseline, in type sizes.
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

// height returns the height of the block, in millimetres.
func (b block) height() float64 { return float64(len(b.lines)) * b.leading() * b.size * point }

// draw writes the block with its upper left corner at a point.
func (p *paper) draw(b block, x, y float64, colour ink) {
	for i, line := range b.lines {
		p.text(x, y+(float64(i)*b.leading()+b.up)*b.size*point, line, b.size, b.bold, colour)
	}
}

// TooLong is the error for a text that does not fit even in the smallest type.
type TooLong struct {
	Text          string
	Width, Height float64 // of the room there is, in millimetres
}

// Error says what to do.
func (t *TooLong) Error() string {
	return fmt.Sprintf("%q does not fit into %.0f by %.0f mm in readable type; use a larger label, or shorten the name", t.Text, t.Width, t.Height)
}

// fit sets a text as large as possible within a width and height: first smaller on one line,
// down to three quarters, then on several lines, smaller still. A word is broken only if that
// makes the type half as large again. Nothing is ever cut off.
func (p *paper) fit(text string, width, height, size float64, bold bool) block {
	b, goes := p.tryFit(text, width, height, size, bold)
	if !goes {
		p.fail(&TooLong{text, width, height})
	}
	return b
}

// tryFit is fit for a text that may be omitted if it does not fit.
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

// unbroken reports whether the lines of a block break between words only.
func (p *paper) unbroken(text string, b block) bool {
	kept, _ := readable(text)
	return strings.Join(b.lines, " ") == string(kept)
}

// wrapped returns the block of a text broken into lines of at most the given width.
func (p *paper) wrapped(text string, size float64, bold bool, width float64) block {
	return p.block(p.wrap(text, size, bold, width), size, bold)
}

// wrap breaks text into lines of at most the given width, between words if possible, and
// within a word that is wider than a line.
func (p *paper) wrap(text string, size float64, bold bool, width float64) []string {
	p.runs(text, bold) // so that the error for an unprintable letter quotes the whole text
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
				break // not even one letter fits the width
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

// head returns the longest start of a word that fits a width, at least one letter. Letters
// that are written as one stay together.
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

// bound reports, for each letter of a word and for its end, whether it can't be separated from
// the previous one: both are written as one, or the previous one is a vowel before its
// consonant, as in Thai and Lao.
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
