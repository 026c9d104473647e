package sheet

import (
	"io"

	"eyeup/civil"
)

// Listing is a list as a table, for paper and for a page.
type Listing struct {
	Head
	Title   string
	Fill    string // a line that is filled in by hand
	Before  string // how the list is to be taken
	Columns []Column
	Groups  []Group
	After   string
	Empty   string // said instead of a table where there are no rows
}

// Group is a part of a list's rows, such as those of one week. Its name may be empty.
type Group struct {
	Name, Aside string
	Week        civil.Date // that the group is of; none where it is of no week
	Rows        [][]string // a cell for each column
}

// Write writes the list as PDF.
func (li *Listing) Write(w io.Writer) (Told, error) { return li.drawn().finish(w) }

// drawn draws the list, and leaves room to go on below it.
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

// add adds a row to the last group, or to a first one without a name.
func (li *Listing) add(cells ...string) {
	if len(li.Groups) == 0 {
		li.Groups = append(li.Groups, Group{})
	}
	last := &li.Groups[len(li.Groups)-1]
	last.Rows = append(last.Rows, cells)
}

// addWeek begins the group of a week.
func (li *Listing) addWeek(monday civil.Date, aside string) {
	li.Groups = append(li.Groups, Group{Name: weekOf(monday), Aside: aside, Week: monday})
}
