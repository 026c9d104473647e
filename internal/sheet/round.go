package sheet

import (
	"fmt"
)

// RoundCrate is one crate of a store, as in the book.
type RoundCrate struct {
	Place, Crate string
	Lots         []RoundLot
}

// RoundLot is one lot in a crate.
type RoundLot struct {
	Code, Variety, Colour, Form, Pack string
	Count                             int
}

// Round is the sheet for checking a store by hand, crate by crate, with boxes for the counts.
func Round(head Head, crates []RoundCrate) *Listing {
	li := &Listing{Head: head, Title: "Round", Empty: "Nothing is in a store.", Fill: "Gone on ______________   by ______________   cellar at ________   humidity ________",
		Before: "Handle every one. Remove soft ones at once, away from the others. Write numbers, also if there are more or fewer than in the book.", Columns: []Column{
			Column{Head: "crate", Width: 11}, Column{Head: "code", Width: 17, Bold: true}, Column{Head: "", Width: 8, Sort: Colour}, Column{Head: "variety", Bold: true},
			Column{Head: "packed in", Width: 22}, Column{Head: "book has", Width: 19},
			Column{Head: "firm", Width: 14, Sort: Entry}, Column{Head: "wrinkled", Width: 14, Sort: Entry},
			Column{Head: "soft", Width: 14, Sort: Entry}, Column{Head: "lost", Width: 14, Sort: Entry}, Column{Head: "done", Width: 14, Sort: Blank},
		}}
	place := ""
	for _, c := range crates {
		if c.Place != place {
			place = c.Place
			li.Groups = append(li.Groups, Group{Name: place})
		}
		for i, lot := range c.Lots {
			crate := c.Crate
			if i > 0 {
				crate = ""
			}
			li.add(crate, lot.Code, lot.Colour, lot.Variety, lot.Pack, fmt.Sprintf("%d %s", lot.Count, lot.Form), "", "", "", "", "")
		}
	}
	return li
}
