package sheet

import (
	"fmt"

	"eyeup/civil"
)

// PottingSession is what is started in one week.
type PottingSession struct {
	Week  civil.Date // its Monday
	Aside string     // such as the mix needed
	Lines []PottingLine
}

// PottingLine is one lot at the potting bench, in the order of carrying up crates.
type PottingLine struct {
	Crate, Code, Variety, Colour string
	From                         string // such as 14 clumps
	Count                        int    // number raised
	Container                    string // container for each
	To                           string // where they go
}

// Potting is the potting list, session by session.
func Potting(head Head, sessions []PottingSession) *Listing {
	li := &Listing{Head: head, Title: "Potting list", Empty: "Nothing more is to be started this season.", Columns: []Column{
		Column{Head: "done", Width: 9, Sort: Tick}, Column{Head: "crate", Width: 11}, Column{Head: "code", Width: 18, Bold: true},
		Column{Head: "", Width: 8, Sort: Colour}, Column{Head: "variety", Bold: true}, Column{Head: "from", Width: 24},
		Column{Head: "raise", Width: 14, Sort: Number}, Column{Head: "in", Width: 34}, Column{Head: "where to", Width: 23},
	}}
	for _, s := range sessions {
		li.addWeek(s.Week, s.Aside)
		for _, line := range s.Lines {
			li.add("", line.Crate, line.Code, line.Colour, line.Variety, line.From, fmt.Sprint(line.Count), line.Container, line.To)
		}
	}
	return li
}

// weekOf names a week by its Monday.
func weekOf(monday civil.Date) string {
	return fmt.Sprintf("Week of %s %d", monday.Short(), monday.Year())
}
