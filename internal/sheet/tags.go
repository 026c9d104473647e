package sheet

import (
	"fmt"
)

// TagLine is one lot to prove and tag in flower.
type TagLine struct {
	Code, Variety, Colour, Height string
	Count                         int
}

// Tags is the list for autumn: every lot while it flowers, before frost takes the
// colour, is it true to its name, is it healthy, which plants are kept.
func Tags(head Head, lines []TagLine) *Listing {
	li := &Listing{Head: head, Title: "Tags before frost", Empty: "No lot is to be tagged.",
		Before: "Tag the plant itself, on the stem near the ground: tops are cut before lifting. A sick plant is tagged and lifted last, with its own knife.", Columns: []Column{
			Column{Head: "code", Width: 17, Bold: true}, Column{Head: "", Width: 8, Sort: Colour}, Column{Head: "variety", Bold: true},
			Column{Head: "should be", Width: 37}, Column{Head: "plants", Width: 14, Sort: Number},
			Column{Head: "true to name", Width: 15, Sort: Tick}, Column{Head: "keep, how many", Width: 16, Sort: Entry},
			Column{Head: "sick, how many", Width: 16, Sort: Entry}, Column{Head: "what was seen", Width: 24, Sort: Blank},
		}}
	for _, line := range lines {
		looks := ColourWords(line.Colour)
		if looks != "" && line.Height != "" {
			looks += ", "
		}
		li.add(line.Code, line.Colour, line.Variety, looks+line.Height, fmt.Sprint(line.Count), "", "", "", "")
	}
	return li
}
