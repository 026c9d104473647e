package desk

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"eyeup/civil"
	"eyeup/internal/paper"
	"eyeup/internal/plans"
	"eyeup/internal/report"
	"eyeup/quantity"
	"eyeup/stock"
)

// PaperQuestion asks for something to take away from the pages: a list, labels, crate
// cards, the calendar or tables.
type PaperQuestion struct {
	Name   string   // one of PaperNames
	Plan   string   // by which plan; empty: the one that is followed, or the usual one
	Layout string   // of labels and cards, by its measures; empty: see UsualLayout
	From   int      // the first free label of the first page, from 1
	Lots   []string // labels of these lots; none: of all

	// Labels of other choices: of the pots filled on a day, or by these entries; of the
	// lots renamed since a day; of the pots that the plan sets in the week of a day.
	Potted  civil.Date
	Entries []stock.ID
	Renamed civil.Date
	Session civil.Date

	Weeks int    // of jobs
	Paper string // a4 or letter; empty: by the units
	Units quantity.System
}

// What the lists reckon with where nobody says otherwise: a row of the patch, and a bag of
// mix.
const (
	usualRow = 5 * quantity.Metre
	usualBag = 2 * quantity.CubicFoot
)

// PaperNames names what there is to take away.
func PaperNames() []string { return append(paper.ListNames(), "labels", "cards", "calendar", "tables") }

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
func (d *Desk) Paper(q PaperQuestion, today civil.Date, w io.Writer) (*report.WrittenAnswer, error) {
	if !slices.Contains(PaperNames(), q.Name) {
		return nil, fmt.Errorf("there is no paper %q; there are: %s", q.Name, strings.Join(PaperNames(), ", "))
	}
	g, followed := d.following()
	switch q.Name {
	case "labels", "cards":
		ask, err := paper.AskLabels(cmp.Or(q.Layout, UsualLayout(q.Name, q.Units)), "", max(q.From, 1))
		if err != nil {
			return nil, err
		}
		ask.Lots = q.Lots
		if q.Name == "cards" {
			return paper.Cards(g.Garden, ask, today, w)
		}
		return d.labels(q, ask, today, w)
	case "calendar":
		return plans.CalendarOf(g, followed, q.Plan, today, today.UTC(), w)
	case "tables":
		return plans.TablesBook(g, followed, q.Plan, today, w)
	}
	ask, err := d.askList(q, today)
	if err != nil {
		return nil, err
	}
	ask.Followed = followed
	return paper.List(g, ask, today, w)
}

// Listing makes a list as a table, for a page: by the plan that is followed, or the usual.
func (d *Desk) Listing(q PaperQuestion, today civil.Date) (*paper.ListTable, error) {
	ask, err := d.askList(q, today)
	if err != nil {
		return nil, err
	}
	g, followed := d.following()
	ask.Followed = followed
	return paper.Listing(g, ask, today)
}

func (d *Desk) askList(q PaperQuestion, today civil.Date) (ask paper.ListQuestion, err error) {
	ask = paper.ListQuestion{List: q.Name, Plan: q.Plan, Weeks: max(q.Weeks, 1), Row: usualRow, Bag: usualBag, Units: q.Units}
	ask.SetPaper(q.Paper)
	if q.Name == "giving" {
		ask.Outlook, err = d.book.Outlook(today, today)
	}
	if q.Name == "week" {
		ask.Rounds = d.RoundsDue(today)
	}
	return ask, err
}

// labels writes labels of what was chosen.
func (d *Desk) labels(q PaperQuestion, ask paper.LabelsQuestion, today civil.Date, w io.Writer) (*report.WrittenAnswer, error) {
	switch {
	case len(q.Entries) > 0:
		return paper.PottedLabels(d.book, func(entry stock.ID, _ civil.Date) bool { return slices.Contains(q.Entries, entry) }, civil.Date{}, ask, today, w)
	case !q.Potted.IsZero():
		return paper.PottedOn(d.book, q.Potted, ask, today, w)
	case !q.Session.IsZero():
		g, followed := d.following()
		return paper.SessionLabels(g, followed, q.Plan, q.Session, ask, today, w)
	case !q.Renamed.IsZero():
		var err error
		if ask.Lots, err = paper.Renamed(d.book, q.Renamed); err != nil {
			return nil, err
		}
	}
	return paper.Labels(d.Garden().Garden, ask, today, w)
}

// Pottings lists the days since a day on which pots or trays were filled, the last first.
func (d *Desk) Pottings(since civil.Date) ([]paper.Potting, error) {
	return paper.Pottings(d.book, since)
}

// Renamings lists the lots renamed since a day, the last renamed first.
func (d *Desk) Renamings(since civil.Date) []paper.Renaming { return paper.Renamings(d.book, since) }

// Calendar writes the jobs of the plan that is followed, or of the usual one, as a calendar.
// now is when it is written.
func (d *Desk) Calendar(today civil.Date, now time.Time, w io.Writer) error {
	g, followed := d.following()
	_, err := plans.CalendarOf(g, followed, "", today, now, w)
	return err
}
