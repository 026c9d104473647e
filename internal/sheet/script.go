package sheet

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/text/unicode/bidi"
	"golang.org/x/text/unicode/norm"
)

// run is a piece of text in one typeface, its letters in the order in which they stand
// from left to right.
type run struct {
	face *face
	text string
	ems  float64 // its width as a multiple of the type size
}

// Unprintable is a text with a letter that can't be put on paper rightly.
type Unprintable struct {
	Text string
	Sign rune
}

// Error says which letter, and what to do.
func (u *Unprintable) Error() string {
	return fmt.Sprintf("%q can't be printed: there is no type here for %q (%U); write the name in another script beside it, or leave it out", u.Text, u.Sign, u.Sign)
}

// scripts are those whose letters are set rightly one after the other, or joined by us.
var scripts = []*unicode.RangeTable{
	unicode.Latin, unicode.Greek, unicode.Cyrillic, unicode.Armenian, unicode.Georgian, unicode.Hebrew, unicode.Arabic,
	unicode.Han, unicode.Hiragana, unicode.Katakana, unicode.Hangul, unicode.Bopomofo,
	unicode.Common, unicode.Inherited,
}

// laid orders, joins and parts a text for drawing. left lists pictograms and marks that
// were left out.
func laid(text string, bold bool) (runs []run, left []rune, err error) {
	kept, left := readable(norm.NFC.String(text))
	for _, r := range kept {
		if !unicode.IsOneOf(scripts, r) {
			return nil, left, &Unprintable{text, r}
		}
	}
	kept, bad := joined(kept)
	if bad != 0 {
		return nil, left, &Unprintable{text, bad}
	}
	var buffer sfnt.Buffer
	for _, r := range fromLeft(kept) {
		f := faceFor(r, bold, &buffer)
		if f == nil {
			return nil, left, &Unprintable{text, r}
		}
		if n := len(runs); n == 0 || runs[n-1].face != f {
			runs = append(runs, run{face: f})
		}
		last := &runs[len(runs)-1]
		last.text += string(r)
		last.ems += f.advance(r, &buffer)
	}
	return runs, left, nil
}

// readable drops what is no letter: signs that steer the direction of writing, pictograms
// and their modifiers, and the vowel points of Hebrew and Arabic, which are left out of
// common writing. What a reader would miss is listed.
func readable(text string) (kept, left []rune) {
	var buffer sfnt.Buffer
	for _, r := range text {
		switch {
		case r == joiner || r == parter:
			kept = append(kept, r)
		case unicode.Is(unicode.Cf, r) || unicode.Is(unicode.Variation_Selector, r):
		case unicode.IsSpace(r) || unicode.IsControl(r):
			kept = append(kept, ' ')
		case unicode.Is(unicode.Mn, r) && (unicode.Is(unicode.Hebrew, r) || unicode.Is(unicode.Arabic, r) || isArabicPoint(r)):
			left = append(left, r)
		case unicode.In(r, unicode.So, unicode.Sk) && faceFor(r, false, &buffer) == nil:
			left = append(left, r)
		default:
			kept = append(kept, r)
		}
	}
	return tidy(kept), left
}

// isArabicPoint reports the points that Arabic shares with other scripts.
func isArabicPoint(r rune) bool { return r >= 0x064B && r <= 0x0655 || r == 0x0670 }

// tidy drops spaces at the ends and runs of them, and joiners with nothing to join.
func tidy(text []rune) []rune {
	words := strings.Fields(string(text))
	for i, w := range words {
		if !strings.ContainsFunc(w, isArabicLetter) {
			words[i] = strings.NewReplacer(string(joiner), "", string(parter), "").Replace(w)
		}
	}
	return []rune(strings.Join(strings.Fields(strings.Join(words, " ")), " "))
}

// fromLeft puts letters in the order in which they stand on paper from left to right, by
// the Unicode Bidirectional Algorithm (UAX #9) for a line without explicit embedding.
func fromLeft(text []rune) []rune {
	s := string(text)
	if !strings.ContainsFunc(s, isRightToLeft) {
		return text
	}
	var p bidi.Paragraph
	if _, err := p.SetString(s); err != nil {
		return text
	}
	order, err := p.Order()
	if err != nil {
		return text
	}
	var pieces []string
	for i := range order.NumRuns() {
		r := order.Run(i)
		if r.Direction() == bidi.RightToLeft {
			pieces = append(pieces, bidi.ReverseString(r.String()))
			continue
		}
		pieces = append(pieces, r.String())
	}
	if firstStrong(text) == bidi.R {
		slices.Reverse(pieces)
		return []rune(strings.Join(pieces, ""))
	}
	return []rune(strings.Join(leftFirst(pieces, order), ""))
}

// leftFirst orders the pieces of a line that begins from the left: a stretch of
// right-to-left pieces with the numbers between them is turned round as a whole.
func leftFirst(pieces []string, order bidi.Ordering) []string {
	var out, stretch []string
	flush := func() {
		slices.Reverse(stretch)
		out, stretch = append(out, stretch...), nil
	}
	for i, piece := range pieces {
		if r := order.Run(i); r.Direction() == bidi.RightToLeft {
			stretch = append(stretch, piece)
			continue
		}
		number := leadingNumber(piece)
		if len(stretch) > 0 && number != "" {
			stretch = append(stretch, number)
			piece = piece[len(number):]
		}
		if piece != "" {
			flush()
			out = append(out, piece)
		}
	}
	flush()
	return out
}

// leadingNumber returns the number at the beginning of a piece, with separators within.
func leadingNumber(s string) string {
	end := 0
	for i, r := range s {
		class, _ := bidi.LookupRune(r)
		switch class.Class() {
		case bidi.EN, bidi.AN:
			end = i + len(string(r))
		case bidi.ES, bidi.CS:
		default:
			return s[:end]
		}
	}
	return s[:end]
}

func isRightToLeft(r rune) bool {
	p, _ := bidi.LookupRune(r)
	c := p.Class()
	return c == bidi.R || c == bidi.AL
}

// firstStrong returns R where the first letter with a direction reads from the right, and
// L otherwise.
func firstStrong(text []rune) bidi.Class {
	for _, r := range text {
		p, _ := bidi.LookupRune(r)
		switch p.Class() {
		case bidi.L:
			return bidi.L
		case bidi.R, bidi.AL:
			return bidi.R
		}
	}
	return bidi.L
}
