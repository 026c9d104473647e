package sheet

import "io"

// ShoppingLine is one thing to get, with its figures already in words.
type ShoppingLine struct {
	What  string
	Need  string // such as 26.5 ft³ (18.7 to 32.7)
	Get   string // whole bags or pieces
	Price string // of one; empty is not known
	Cost  string
	By    string
}

// Shopping writes the shopping list. total is the sum in words, with what it leaves out.
func Shopping(w io.Writer, head Head, lines []ShoppingLine, total string) (Told, error) {
	l := newList("Shopping list", head)
	if len(lines) == 0 {
		l.words("Nothing is to be got for this plan.", bodySize, black)
		return l.finish(w)
	}
	t := l.newTable(
		column{head: "got", width: 9, sort: tick}, column{head: "what", bold: true}, column{head: "needed", width: 34},
		column{head: "in hand", width: 16, sort: entry}, column{head: "get, were none in hand", width: 32},
		column{head: "each", width: 16, sort: number}, column{head: "in all", width: 18, sort: number}, column{head: "by", width: 14},
	)
	for _, line := range lines {
		t.row("", line.What, line.Need, "", line.Get, line.Price, line.Cost, line.By)
	}
	l.top = nil
	l.y += 3
	l.words(total, bodySize, black)
	return l.finish(w)
}
