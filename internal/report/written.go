package report

import (
	"fmt"
	"io"
	"strings"

	"eyeup/quantity"
)

// WrittenAnswer says what was written into a file.
type WrittenAnswer struct {
	What    string   `json:"what" jsonschema_description:"labels, cards, a list, the calendar, tables or a folder"`
	File    string   `json:"file"`
	Count   int      `json:"count" jsonschema_description:"labels, lines, entries or rows"`
	Of      string   `json:"of" jsonschema_description:"what is counted"`
	Pages   int      `json:"pages,omitempty"`
	LeftOut []string `json:"left_out" jsonschema_description:"characters that the fonts lack, so they are not printed"`
	Notices []string `json:"notices"`
}

// Print says what was written, what was left out, and what to look at.
func (a *WrittenAnswer) Print(w io.Writer, _ quantity.System) {
	p := NewPage(w)
	line := fmt.Sprintf("%s: %d %s", a.What, a.Count, a.Of)
	if a.Count == 1 {
		line = fmt.Sprintf("%s: 1 %s", a.What, singular(a.Of))
	}
	if a.Pages > 0 {
		line += fmt.Sprintf(", %s", Counted(a.Pages, "page"))
	}
	p.Line(line + "; in " + a.File)
	if len(a.LeftOut) > 0 {
		p.Wrap("Left out: ", strings.Join(a.LeftOut, ", ")+", which the fonts lack. The rest of each name is printed.")
	}
	for _, n := range a.Notices {
		p.Wrap("", n)
	}
}

// singular returns the singular of a regular English plural.
func singular(of string) string {
	if one, is := strings.CutSuffix(of, "ies"); is {
		return one + "y"
	}
	return strings.TrimSuffix(of, "s")
}

// Counted writes a number of things, such as 1 page or 3 pages. one is a noun with a regular plural.
func Counted(n int, one string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %ss", n, one)
}
