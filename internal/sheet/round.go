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
	l.y += 1
	l.words("Handle every one. Soft ones go out at once, away from the others. Write numbers; what is found more or less than the book has is written too.", smallSize, grey)
	t := l.newTable(
		column{head: "crate", width: 11}, column{head: "code", width: 17, bold: true}, column{head: "", width: 8, sort: colour}, column{head: "variety", bold: true},
		column{head: "packed in", width: 22}, column{head: "book has", width: 19},
		column{head: "firm", width: 14, sort: entry}, column{head: "wrinkled", width: 14, sort: entry},
		column{head: "soft", width: 14, sort: entry}, column{head: "lost", width: 14, sort: entry}, column{head: "done", width: 14, sort: blank},
	)
	place := ""
	for _, c := range crates {
		if c.Place != place {
			place = c.Place
			t.group(place, "")
		}
		for i, lot := range c.Lots {
			crate := c.Crate
			if i > 0 {
				crate = ""
			}
			t.row(crate, lot.Code, lot.Colour, lot.Variety, lot.Pack, fmt.Sprintf("%d %s", lot.Count, lot.Form), "", "", "", "", "")
		}
	}
	return l.finish(w)
}
