package report

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// PageWidth is the widest a printed line may be, in columns.
const PageWidth = 80

// Page prints an answer line by line.
type Page struct{ W io.Writer }

// NewPage returns a page that writes to w.
func NewPage(w io.Writer) *Page { return &Page{w} }

// Line writes one line without trailing spaces.
func (p *Page) Line(s string) { fmt.Fprintln(p.W, strings.TrimRight(s, " ")) }

// Wrap writes words after a lead and breaks them into lines of at most PageWidth columns. Later
// lines are indented by the width of the lead.
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
