package desk

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"

	"eyeup/civil"
	"eyeup/quantity"
)

// PaperQuestion asks for something to take away from the pages: a list, labels, crate
// cards, the calendar or tables.
type PaperQuestion struct {
	Name   string   // one of PaperNames
	Plan   string   // by which plan; empty: the one that is followed, or the usual one
	Layout string   // of labels and cards, by its measures; empty: see UsualLayout
	From   int      // the first free label of the first page, from 1
	Lots   []string // labels of these lots; none: of all
	Weeks  int      // of jobs
	Paper  string   // a4 or letter; empty: by the units
	Units  quantity.System
}

// What the lists reckon with where nobody says otherwise: a row of the patch, and a bag of
// mix.
const (
	usualRow = 5 * quantity.Metre
	usualBag = 2 * quantity.CubicFoot
)

// PaperNames names what there is to take away.
func PaperNames() []string { return append(ListNames(), "labels", "cards", "calendar", "tables") }

// File returns under which name and as what kind of file an answer is sent.
func (q PaperQuestion) File() (name, kind string) {
	switch q.Name {
	case "calendar":
		return "calendar.ics", "text/calendar; charset=utf-8"
	case "tables":
		return "tables.xlsx", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
	}
	return q.Name + ".pdf", "application/pdf"
}

// UsualLayout is a common sheet of labels, or of crate cards, by its measures.
func UsualLayout(name string, units quantity.System) string {
	switch {
	case name == "cards" && units == quantity.US:
		return "letter:1x3"
	case name == "cards":
		return "a4:1x3"
	case units == quantity.US:
		return "letter:3x10"
	}
	return "a4:3x8"
}

// Paper writes what is asked for.
func (d *Desk) Paper(q PaperQuestion, today civil.Date, w io.Writer) (*WrittenAnswer, error) {
	if !slices.Contains(PaperNames(), q.Name) {
		return nil, fmt.Errorf("there is no paper %q; there are: %s", q.Name, strings.Join(PaperNames(), ", "))
	}
	g := d.Garden()
	q.Plan = cmp.Or(q.Plan, d.Decided())
	switch q.Name {
	case "labels", "cards":
		ask, err := AskLabels(cmp.Or(q.Layout, UsualLayout(q.Name, q.Units)), "", max(q.From, 1))
		if err != nil {
			return nil, err
		}
		ask.Lots = q.Lots
		if q.Name == "cards" {
			return Cards(g.Garden, ask, today, w)
		}
		return Labels(g.Garden, ask, today, w)
	case "calendar":
		return CalendarOf(g, q.Plan, today, w)
	case "tables":
		return TablesBook(g, q.Plan, today, w)
	}
	ask := ListQuestion{List: q.Name, Plan: q.Plan, Weeks: max(q.Weeks, 1), Row: usualRow, Bag: usualBag, Units: q.Units}
	ask.SetPaper(q.Paper)
	if q.Name == "giving" {
		outlook, err := d.book.Outlook(today, today)
		if err != nil {
			return nil, err
		}
		ask.Outlook = outlook
	}
	return List(g, ask, today, w)
}
