package report

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// PageWidth is how many columns a printed answer has.
const PageWidth = 80

// Page is where an answer is printed.
type Page struct{ W io.Writer }

// NewPage returns a page that is written to w.
func NewPage(w io.Writer) *Page { return &Page{w} }

// Line writes one line, without blanks at its end.
func (p *Page) Line(s string) { fmt.Fprintln(p.W, strings.TrimRight(s, " ")) }

// Wrap writes words after a lead, broken into lines of the page's width; lines after the
// first are set in under the first.
func (p *Page) Wrap(lead, words string) {
	indent := strings.Repeat(" ", utf8.RuneCountInString(lead))
	line := lead
	empty := true
	for word := range strings.FieldsSeq(words) {
		long := utf8.RuneCountInString(line) + 1 + utf8.RuneCountInString(word)
		if !empty && long > PageWidth {
			p.Line(line)
			line, empty = indent, true
		}
		if !empty {
			line += " "
		}
		line += word
		empty = false
	}
	p.Line(line)
}
