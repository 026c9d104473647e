package sheet

// ShoppingLine is one thing to buy, with its figures as text.
type ShoppingLine struct {
	What  string
	Need  string // such as 26.5 ft³ (18.7 to 32.7)
	Get   string // whole bags or pieces
	Price string // of one; empty: unknown
	Cost  string
	By    string
}

// Shopping is the shopping list. total is the sum as text, with what it omits.
func Shopping(head Head, lines []ShoppingLine, total string) *Listing {
	li := &Listing{Head: head, Title: "Shopping list", Empty: "Nothing needs to be bought for this plan.", After: total, Columns: []Column{
		Column{Head: "got", Width: 9, Sort: Tick}, Column{Head: "what", Bold: true}, Column{Head: "needed", Width: 34},
		Column{Head: "in hand", Width: 16, Sort: Entry}, Column{Head: "get, were none in hand", Width: 32},
		Column{Head: "each", Width: 16, Sort: Number}, Column{Head: "in all", Width: 18, Sort: Number}, Column{Head: "by", Width: 14},
	}}
	for _, line := range lines {
		li.add("", line.What, line.Need, "", line.Get, line.Price, line.Cost, line.By)
	}
	return li
}
