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
	LeftOut []string `json:"left_out" jsonschema_description:"signs for which there is no type, and are not on paper"`
	Notices []string `json:"notices"`
}

// Print says what was written, and what is not as it was asked.
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
		p.Wrap("Left out: ", strings.Join(a.LeftOut, ", ")+", for which there is no type. The rest of each name is there.")
	}
	for _, n := range a.Notices {
		p.Wrap("", n)
	}
}

// singular is the word for one of what is counted.
func singular(of string) string {
	if one, is := strings.CutSuffix(of, "ies"); is {
		return one + "y"
	}
	return strings.TrimSuffix(of, "s")
}

// Counted says a number of things.
func Counted(n int, one string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %ss", n, one)
}
