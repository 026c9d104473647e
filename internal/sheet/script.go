package sheet

import (
	"fmt"
	"strings"
	"unicode"

	"golang.org/x/image/font/sfnt"
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
	kept, left := readable(loose(norm.NFC.String(text)))
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

// loose takes Arabic letters that were typed ready joined apart again.
func loose(text string) string {
	if !strings.ContainsFunc(text, isJoinedForm) {
		return text
	}
	var b strings.Builder
	for _, r := range text {
		if isJoinedForm(r) {
			b.WriteString(norm.NFKC.String(string(r)))
			continue
		}
		b.WriteRune(r)
	}
	return b.String()
}

func isJoinedForm(r rune) bool { return r >= 0xFB50 && r <= 0xFDFF || r >= 0xFE70 && r <= 0xFEFC }

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
