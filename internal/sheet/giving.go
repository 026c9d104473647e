package sheet

import "io"

// GivingLine is one variety of which some are over.
type GivingLine struct {
	Variety, Kind, Colour string
	Have, Patch, Reserve  string
	Over                  string // with its odds
	Note                  string
}

// Giving writes the list of what is over to give away or sell. basis says how it is
// reckoned.
func Giving(w io.Writer, head Head, lines []GivingLine, basis string) (Told, error) {
	l := newList("To give away or sell", head)
	l.words(basis, smallSize, grey)
	if len(lines) == 0 {
		l.words("Nothing is over.", bodySize, black)
		return l.finish(w)
	}
	t := l.newTable(
		column{head: "", width: 8, sort: colour}, column{head: "variety", bold: true}, column{head: "kind", width: 18},
		column{head: "in hand", width: 20}, column{head: "patch", width: 13, sort: number}, column{head: "reserve", width: 16, sort: number},
		column{head: "over", width: 21, bold: true}, column{head: "note", width: 28}, column{head: "for whom", width: 20, sort: blank},
	)
	for _, line := range lines {
		t.row(line.Colour, line.Variety, line.Kind, line.Have, line.Patch, line.Reserve, line.Over, line.Note, "")
	}
	return l.finish(w)
}
