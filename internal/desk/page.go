package desk

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// pageWidth is how many columns a printed answer has.
const pageWidth = 80

// page is where an answer is printed.
type page struct{ w io.Writer }

// line writes one line, without blanks at its end.
func (p *page) line(s string) { fmt.Fprintln(p.w, strings.TrimRight(s, " ")) }

// wrap writes words after a lead, broken into lines of the page's width; lines after the
// first are set in under the first.
func (p *page) wrap(lead, words string) {
	indent := strings.Repeat(" ", utf8.RuneCountInString(lead))
	line := lead
	empty := true
	for word := range strings.FieldsSeq(words) {
		long := utf8.RuneCountInString(line) + 1 + utf8.RuneCountInString(word)
		if !empty && long > pageWidth {
			p.line(line)
			line, empty = indent, true
		}
		if !empty {
			line += " "
		}
		line += word
		empty = false
	}
	p.line(line)
}
