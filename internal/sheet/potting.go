package sheet

import (
	"fmt"
	"io"

	"eyeup/civil"
)

// PottingSession is what is set to grow in one week.
type PottingSession struct {
	Week  civil.Date // its Monday
	Aside string     // such as the mix that it takes
	Lines []PottingLine
}

// PottingLine is one lot at the potting bench, in the order in which crates are carried up.
type PottingLine struct {
	Crate, Code, Variety, Colour string
	From                         string // such as 14 clumps
	Count                        int    // that are raised
	Container                    string // what each is raised in
	To                           string // where they go
}

// Potting writes the potting list, session by session.
func Potting(w io.Writer, head Head, sessions []PottingSession) (Told, error) {
	l := newList("Potting list", head)
	if len(sessions) == 0 {
		l.words("Nothing is to be set to grow any more this season.", bodySize, black)
		return l.finish(w)
	}
	t := l.newTable(
		column{head: "done", width: 9, sort: tick}, column{head: "crate", width: 11}, column{head: "code", width: 18, bold: true},
		column{head: "", width: 8, sort: colour}, column{head: "variety", bold: true}, column{head: "from", width: 24},
		column{head: "raise", width: 14, sort: number}, column{head: "in", width: 34}, column{head: "where to", width: 23},
	)
	for _, s := range sessions {
		t.group(weekOf(s.Week), s.Aside)
		for _, line := range s.Lines {
			t.row("", line.Crate, line.Code, line.Colour, line.Variety, line.From, fmt.Sprint(line.Count), line.Container, line.To)
		}
	}
	return l.finish(w)
}

// weekOf says a week by its Monday.
func weekOf(monday civil.Date) string {
	return fmt.Sprintf("Week of %s %d", monday.Short(), monday.Year())
}
