package sheet

// GivingLine is one variety with a surplus.
type GivingLine struct {
	Variety, Kind, Colour string
	Have, Patch, Reserve  string
	Over                  string // with its odds
	Note                  string
}

// Giving is the list of the surplus to give away or sell. basis says how it is computed.
func Giving(head Head, lines []GivingLine, basis string) *Listing {
	li := &Listing{Head: head, Title: "To give away or sell", Empty: "Nothing is over.",
		Before: basis, Columns: []Column{
			Column{Head: "", Width: 8, Sort: Colour}, Column{Head: "variety", Bold: true}, Column{Head: "kind", Width: 18},
			Column{Head: "in hand", Width: 20}, Column{Head: "patch", Width: 13, Sort: Number}, Column{Head: "reserve", Width: 16, Sort: Number},
			Column{Head: "over", Width: 27, Bold: true}, Column{Head: "note", Width: 27}, Column{Head: "for whom", Width: 20, Sort: Blank},
		}}
	for _, line := range lines {
		li.add(line.Colour, line.Variety, line.Kind, line.Have, line.Patch, line.Reserve, line.Over, line.Note, "")
	}
	return li
}
