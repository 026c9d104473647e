package sheet

import (
	"sync"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// shapes are the presentation forms of an Arabic letter. A letter that joins only to the
// one before it has two, one that joins both ways four; 0 stands for a form there is not.
type shapes struct{ alone, final, initial, medial rune }

func (s shapes) joinsBefore() bool { return s.final != 0 }
func (s shapes) joinsAfter() bool  { return s.initial != 0 }

// presentation blocks of Unicode hold the forms of each letter side by side, in the order
// alone, final, initial, medial. Source: The Unicode Standard, code charts Arabic
// Presentation Forms-A and -B.
var presentation = [][2]rune{{0xFE80, 0xFEFC}, {0xFB50, 0xFBB1}, {0xFBD3, 0xFBE9}, {0xFBFC, 0xFBFF}}

// arabicForms finds the forms of every letter, and of lam with alef, by what each form
// decomposes into.
var arabicForms = sync.OnceValue(func() map[string]shapes {
	all := map[string]shapes{}
	for _, block := range presentation {
		for r := block[0]; r <= block[1]; r++ {
			of := norm.NFKC.String(string(r))
			if of == string(r) {
				continue
			}
			s := all[of]
			switch {
			case s.alone == 0:
				s.alone = r
			case s.final == 0:
				s.final = r
			case s.initial == 0:
				s.initial = r
			case s.medial == 0:
				s.medial = r
			}
			all[of] = s
		}
	}
	return all
})

const (
	tatweel = '\u0640' // the stroke that lengthens a join
	lam     = '\u0644'
	joiner  = '\u200d'
	parter  = '\u200c'
)

// isArabicLetter reports whether r is a letter that must be joined.
func isArabicLetter(r rune) bool { return unicode.Is(unicode.Arabic, r) && unicode.IsLetter(r) }

// joined puts the right form of each Arabic letter in its place, in the order in which it
// is read. A letter without known forms is returned as bad.
func joined(text []rune) (out []rune, bad rune) {
	forms := arabicForms()
	letter := func(i int) (shapes, bool) {
		if i < 0 || i >= len(text) {
			return shapes{}, false
		}
		if text[i] == tatweel || text[i] == joiner {
			return shapes{tatweel, tatweel, tatweel, tatweel}, true
		}
		s, known := forms[string(text[i])]
		return s, known
	}
	for i := 0; i < len(text); i++ {
		r := text[i]
		if r == joiner || r == parter {
			continue
		}
		s, known := letter(i)
		if !known {
			if isArabicLetter(r) {
				return nil, r
			}
			out = append(out, r)
			continue
		}
		before, hasBefore := letter(i - 1)
		width := 1
		if r == lam && i+1 < len(text) {
			if both, bound := forms[string(text[i:i+2])]; bound {
				s, width = both, 2
			}
		}
		after, hasAfter := letter(i + width)
		out = append(out, s.form(hasBefore && before.joinsAfter(), width == 1 && hasAfter && after.joinsBefore()))
		i += width - 1
	}
	return out, 0
}

// form returns the form of a letter that may be joined on either side.
func (s shapes) form(before, after bool) rune {
	before, after = before && s.joinsBefore(), after && s.joinsAfter()
	switch {
	case before && after:
		return s.medial
	case before:
		return s.final
	case after:
		return s.initial
	}
	return s.alone
}
