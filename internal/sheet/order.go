package sheet

import (
	"slices"

	"golang.org/x/text/unicode/bidi"
)

// stretch is a part of a line with one direction of reading.
type stretch struct {
	from, to  int // its letters
	fromRight bool
}

// fromLeft splits a line by direction of reading, and orders the parts from left to right by
// the Unicode Bidirectional Algorithm (UAX #9) for a line without explicit embedding. Its
// rules are named beside each step. They are implemented here because the library that knows
// the classes of letters orders brackets wrongly.
func fromLeft(text []rune) []stretch {
	if !slices.ContainsFunc(text, isRightToLeft) {
		return []stretch{{0, len(text), false}}
	}
	o := &order{text: text, classes: make([]bidi.Class, len(text)), base: firstStrong(text)}
	for i, r := range text {
		o.classes[i] = classOf(r)
	}
	o.weak()
	o.brackets()
	o.neutral()
	return o.stretches()
}

// order is a line whose letters are being ordered.
type order struct {
	text    []rune
	classes []bidi.Class // L, R, EN and AN in the end
	base    bidi.Class   // L or R
}

func classOf(r rune) bidi.Class {
	p, _ := bidi.LookupRune(r)
	return p.Class()
}

func isRightToLeft(r rune) bool {
	c := classOf(r)
	return c == bidi.R || c == bidi.AL
}

// firstStrong returns R if the first letter with a direction reads from the right, else L (P2,
// P3).
func firstStrong(text []rune) bidi.Class {
	for _, r := range text {
		switch classOf(r) {
		case bidi.L:
			return bidi.L
		case bidi.R, bidi.AL:
			return bidi.R
		}
	}
	return bidi.L
}

// at returns the class at a position, or that of the line beyond its ends.
func (o *order) at(i int) bidi.Class {
	if i < 0 || i >= len(o.classes) {
		return o.base
	}
	return o.classes[i]
}

// weak resolves marks and numbers and their neighbours (W1 to W7).
func (o *order) weak() {
	c := o.classes
	strong, letters := o.base, o.base // the last strong class, with and without Arabic as its own
	for i := range c {
		switch c[i] {
		case bidi.NSM: // W1
			c[i] = o.at(i - 1)
		case bidi.EN: // W2
			if strong == bidi.AL {
				c[i] = bidi.AN
			}
		}
		if c[i] == bidi.L || c[i] == bidi.R || c[i] == bidi.AL {
			strong = c[i]
		}
	}
	for i := range c { // W3
		if c[i] == bidi.AL {
			c[i] = bidi.R
		}
	}
	for i := range c { // W4
		if before, after := o.at(i-1), o.at(i+1); i > 0 && i+1 < len(c) && before == after &&
			(c[i] == bidi.CS && (before == bidi.EN || before == bidi.AN) || c[i] == bidi.ES && before == bidi.EN) {
			c[i] = before
		}
	}
	o.terminators()
	for i := range c { // W6, W7
		switch c[i] {
		case bidi.ES, bidi.CS, bidi.ET:
			c[i] = bidi.ON
		case bidi.L, bidi.R:
			letters = c[i]
		case bidi.EN:
			if letters == bidi.L {
				c[i] = bidi.L
			}
		}
	}
}

// terminators joins characters such as the percent sign to an adjacent number (W5).
func (o *order) terminators() {
	c := o.classes
	for i := 0; i < len(c); i++ {
		if c[i] != bidi.ET {
			continue
		}
		end := i
		for end < len(c) && c[end] == bidi.ET {
			end++
		}
		if i > 0 && c[i-1] == bidi.EN || end < len(c) && c[end] == bidi.EN {
			for k := i; k < end; k++ {
				c[k] = bidi.EN
			}
		}
		i = end
	}
}

// direction is the direction of a class for neutrals: numbers count as right to left.
func direction(c bidi.Class) bidi.Class {
	switch c {
	case bidi.L:
		return bidi.L
	case bidi.R, bidi.EN, bidi.AN:
		return bidi.R
	}
	return bidi.ON
}

// brackets resolves pairs of brackets by their contents (N0).
func (o *order) brackets() {
	for _, pair := range o.pairs() {
		inside, opposite := bidi.ON, false
		for i := pair[0] + 1; i < pair[1]; i++ {
			if d := direction(o.classes[i]); d == o.base {
				inside = d
				break
			} else if d != bidi.ON {
				opposite = true
			}
		}
		if inside == bidi.ON && opposite {
			inside = o.base
			for i := pair[0] - 1; i >= 0; i-- {
				if d := direction(o.classes[i]); d != bidi.ON {
					inside = d
					break
				}
			}
		}
		if inside != bidi.ON {
			o.classes[pair[0]], o.classes[pair[1]] = inside, inside
		}
	}
}

// pairs finds matching brackets (BD16), sorted by where they open.
func (o *order) pairs() [][2]int {
	var found [][2]int
	var open []int
	for i, r := range o.text {
		p, _ := bidi.LookupRune(r)
		if o.classes[i] != bidi.ON || !p.IsBracket() {
			continue
		}
		if p.IsOpeningBracket() {
			open = append(open, i)
			continue
		}
		for k, at := range slices.Backward(open) {
			if bidi.ReverseString(string(o.text[at])) == string(r) {
				found = append(found, [2]int{at, i})
				open = open[:k]
				break
			}
		}
	}
	slices.SortFunc(found, func(a, b [2]int) int { return a[0] - b[0] })
	return found
}

// neutral gives spaces and punctuation the direction of their surroundings (N1, N2).
func (o *order) neutral() {
	c := o.classes
	for i := 0; i < len(c); i++ {
		if direction(c[i]) != bidi.ON {
			continue
		}
		end := i
		for end < len(c) && direction(c[end]) == bidi.ON {
			end++
		}
		side := direction(o.at(i - 1))
		if side != direction(o.at(end)) {
			side = o.base
		}
		for k := i; k < end; k++ {
			c[k] = side
		}
		i = end - 1
	}
}

// stretches splits the line by levels (I1, I2) and orders the parts from left to right (L2).
func (o *order) stretches() []stretch {
	var all []stretch
	var levels []int
	for i, c := range o.classes {
		level := 0
		switch {
		case c == bidi.EN || c == bidi.AN || c == bidi.L && o.base == bidi.R:
			level = 2
		case c == bidi.R:
			level = 1
		}
		if n := len(all); n > 0 && levels[n-1] == level {
			all[n-1].to++
			continue
		}
		all, levels = append(all, stretch{i, i + 1, level == 1}), append(levels, level)
	}
	for level := 2; level >= 1; level-- {
		for i := 0; i < len(all); i++ {
			end := i
			for end < len(all) && levels[end] >= level {
				end++
			}
			slices.Reverse(all[i:end])
			slices.Reverse(levels[i:end])
			i = max(end, i)
		}
	}
	return all
}
