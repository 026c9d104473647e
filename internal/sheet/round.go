package sheet

import (
	"fmt"
	"io"
)

// RoundCrate is one crate of a store, as the book has it.
type RoundCrate struct {
	Place, Crate string
	Lots         []RoundLot
}

// RoundLot is one lot in a crate.
type RoundLot struct {
	Code, Variety, Colour, Form, Pack string
	Count                             int
}

// Round writes the sheet for going through a store by hand, crate by crate, with boxes for
// what is found.
func Round(w io.Writer, head Head, crates []RoundCrate) (Told, error) {
	l := newList("Round", head)
	if len(crates) == 0 {
		l.words("Nothing lies in a store.", bodySize, black)
		return l.finish(w)
	}
	l.words("Gone on ______________   by ______________   cellar at ________   humidity ________", bodySize, black)
	l.words("Handle every one. Soft ones go out at once, away from the others. Write numbers; what is found more or less than the book has is written too.", smallSize, grey)
	t := l.newTable(
		column{head: "code", width: 18, bold: true}, column{head: "", width: 8, sort: colour}, column{head: "variety", bold: true},
		column{head: "packed in", width: 23}, column{head: "book has", width: 16, sort: number},
		column{head: "firm", width: 15.5, sort: entry}, column{head: "wrinkled", width: 15.5, sort: entry},
		column{head: "soft", width: 15.5, sort: entry}, column{head: "lost", width: 15.5, sort: entry}, column{head: "done to them", width: 27, sort: blank},
	)
	for _, c := range crates {
		name := c.Place
		if c.Crate != "" {
			name += ", crate " + c.Crate
		}
		t.group(name, "")
		for _, lot := range c.Lots {
			t.row(lot.Code, lot.Colour, lot.Variety, lot.Pack, fmt.Sprintf("%d %s", lot.Count, lot.Form), "", "", "", "", "")
		}
	}
	return l.finish(w)
}
