package sheet

import (
	"fmt"
	"io"
)

// TagLine is one lot to prove and tag in flower.
type TagLine struct {
	Code, Variety, Colour, Height string
	Count                         int
}

// Tags writes the list for autumn: every lot while it flowers, before frost takes the
// colour, is it true to its name, is it healthy, which plants are kept.
func Tags(w io.Writer, head Head, lines []TagLine) (Told, error) {
	l := newList("Tags before frost", head)
	if len(lines) == 0 {
		l.words("No lot is to be tagged.", bodySize, black)
		return l.finish(w)
	}
	l.words("Tag the plant itself, on the stem near the ground: tops are cut before lifting. A sick plant is tagged and lifted last, with its own knife.", smallSize, grey)
	t := l.newTable(
		column{head: "code", width: 17, bold: true}, column{head: "", width: 8, sort: colour}, column{head: "variety", bold: true},
		column{head: "should be", width: 37}, column{head: "plants", width: 14, sort: number},
		column{head: "true to name", width: 15, sort: tick}, column{head: "keep, how many", width: 16, sort: entry},
		column{head: "sick, how many", width: 16, sort: entry}, column{head: "what was seen", width: 24, sort: blank},
	)
	for _, line := range lines {
		looks := ColourWords(line.Colour)
		if looks != "" && line.Height != "" {
			looks += ", "
		}
		t.row(line.Code, line.Colour, line.Variety, looks+line.Height, fmt.Sprint(line.Count), "", "", "", "")
	}
	return l.finish(w)
}
