package sheet

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"github.com/go-text/typesetting/language"
	"golang.org/x/text/unicode/norm"
)

// Unprintable is the error for a text with a letter that can't be printed correctly.
type Unprintable struct {
	Text string
	Sign rune
}

// Error names the letter, and says what to do.
func (u *Unprintable) Error() string {
	return fmt.Sprintf("%q can't be printed: no typeface here has %q (%U); write the name in another script, or leave it out", u.Text, u.Sign, u.Sign)
}

// laid orders, joins and positions a text's letters for drawing. left lists pictograms that
// were left out.
func (s *setter) laid(text string, bold bool) (runs []run, left []rune, err error) {
	kept, left := readable(text)
	faces, bad := facesOf(kept, bold)
	if bad != 0 {
		return nil, left, &Unprintable{text, bad}
	}
	for _, part := range fromLeft(kept) {
		set := make([]run, 0, 1)
		for from, to := part.from, 0; from < part.to; from = to {
			to = sameType(kept, faces, from, part.to)
			r, bad := s.shaped(kept, from, to, faces[from], part.fromRight)
			if bad != 0 {
				return nil, left, &Unprintable{text, bad}
			}
			set = append(set, r)
		}
		if part.fromRight {
			slices.Reverse(set)
		}
		runs = append(runs, set...)
	}
	return runs, left, nil
}

// facesOf finds each letter's typeface; bad is a letter that none has.
func facesOf(text []rune, bold bool) (faces []*face, bad rune) {
	faces = make([]*face, len(text))
	var before *face
	for i, r := range text {
		if faces[i] = faceFor(r, bold, before); faces[i] == nil {
			return nil, r
		}
		before = faces[i]
	}
	return faces, 0
}

// sameType returns the end of the letters of one typeface and script that start at from.
func sameType(text []rune, faces []*face, from, limit int) int {
	script := language.Common
	for i := from; i < limit; i++ {
		own := language.LookupScript(text[i])
		if faces[i] != faces[from] || own.Strong() && script.Strong() && own != script {
			return i
		}
		if own.Strong() {
			script = own
		}
	}
	return limit
}

// scriptOf returns the script of letters that have only one.
func scriptOf(text []rune) language.Script {
	for _, r := range text {
		if script := language.LookupScript(r); script.Strong() {
			return script
		}
	}
	return language.Common
}

// stays reports whether a character goes with the previous letter: a mark, a space, or a
// joiner.
func stays(r rune) bool { return unicode.In(r, unicode.M, unicode.Zs) || isJoiner(r) }

// isJoiner reports the zero-width joiner and non-joiner.
func isJoiner(r rune) bool { return r == '\u200c' || r == '\u200d' }

// loose decomposes Arabic presentation forms into plain letters.
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

// readable drops characters that are not letters: direction marks, joiners with nothing to
// join, pictograms and their modifiers. Spaces are collapsed and trimmed. What a reader would
// miss is listed.
func readable(text string) (kept, left []rune) {
	for _, r := range loose(norm.NFC.String(text)) {
		last := ' '
		if len(kept) > 0 {
			last = kept[len(kept)-1]
		}
		switch {
		case isJoiner(r):
			if unicode.In(last, unicode.L, unicode.M) {
				kept = append(kept, r)
			}
		case unicode.In(r, unicode.Cf, unicode.Variation_Selector):
		case unicode.IsSpace(r) || unicode.IsControl(r):
			if last != ' ' {
				kept = append(kept, ' ')
			}
		case unicode.In(r, unicode.So, unicode.Sk) && faceFor(r, false, nil) == nil:
			left = append(left, r)
		default:
			kept = append(kept, r)
		}
	}
	if n := len(kept); n > 0 && kept[n-1] == ' ' {
		kept = kept[:n-1]
	}
	return kept, left
}
