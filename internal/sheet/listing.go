package sheet

import (
	"io"

	"eyeup/civil"
)

// Listing is a list as a table, for PDF and for a web page.
type Listing struct {
	Head
	Title   string
	Fill    string // a line to fill in by hand
	Before  string // how to use the list
	Columns []Column
	Groups  []Group
	After   string
	Empty   string // text instead of a table without rows
}

// Group is a part of a list's rows, such as those of one week. Its name may be empty.
type Group struct {
	Name, Aside string
	Week        civil.Date // the Monday of its week; zero if it has none
	Rows        [][]string // a cell for each column
}

// Write writes the list as PDF.
func (li *Listing) Write(w io.Writer) (Told, error) { return li.drawn().finish(w) }

// drawn draws the list; more can be drawn below it.
func (li *Listing) drawn() *list {
	l := newList(li.Title, li.Head)
	if li.Fill != "" && len(li.Groups) > 0 {
		l.words(li.Fill, bodySize, black)
		l.y++
	}
	if li.Before != "" {
		l.words(li.Before, smallSize, grey)
	}
	if len(li.Groups) == 0 {
		l.words(li.Empty, bodySize, black)
		return l
	}
	t := l.newTable(li.Columns...)
	for _, g := range li.Groups {
		if g.Name != "" {
			t.group(g.Name, g.Aside)
		}
		for _, row := range g.Rows {
			t.row(row...)
		}
	}
	l.top = nil
	if li.After != "" {
		l.y += 3
		l.words(li.After, bodySize, black)
	}
	return l
}

// add adds a row to the last group, or to a new group without a name.
func (li *Listing) add(cells ...string) {
	if len(li.Groups) == 0 {
		li.Groups = append(li.Groups, Group{})
	}
	last := &li.Groups[len(li.Groups)-1]
	last.Rows = append(last.Rows, cells)
}

// addWeek starts the group of a week.
func (li *Listing) addWeek(monday civil.Date, aside string) {
	li.Groups = append(li.Groups, Group{Name: weekOf(monday), Aside: aside, Week: monday})
}
