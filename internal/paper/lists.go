package paper

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"

	"eyeup/civil"
	"eyeup/internal/garden"
	"eyeup/internal/plans"
	"eyeup/internal/report"
	"eyeup/internal/sheet"
	"eyeup/internal/stockbook"
	"eyeup/quantity"
	"eyeup/season"
	"eyeup/week"
)

// ListQuestion asks for a list on paper.
type ListQuestion struct {
	List  string // one of ListNames
	Plan  string // its name; empty means the plan that is followed, or the usual one
	Paper sheet.Size
	Weeks int             // how many weeks of jobs, from this week on
	Row   quantity.Length // length of a row in the patch
	Bag   quantity.Volume // volume printed on a bag of mix
	Bale  bool            // the bag is a compressed bale
	Units quantity.System

	// Outlook is how many good divisions and corms to expect, for the giving list of a book. Where it is
	// nil, the stock of today is counted.
	Outlook *stockbook.OutlookAnswer

	// Followed is the plan that the book says is followed; nil where none is, and for a folder.
	Followed *plans.Followed

	// Rounds says when each of a book's stores was last gone through, for the jobs of this week. Where it
	// is nil, the plan's own rounds are listed.
	Rounds []week.RoundDue
}

// SetPaper sets the paper size: a4, letter, or for an empty name the usual size for the units.
func (q *ListQuestion) SetPaper(name string) {
	q.Paper = sheet.A4
	if name == "letter" || name == "" && q.Units == quantity.US {
		q.Paper = sheet.Letter
	}
}

// ListTable is a list as a table. ListGroup is a group of its rows.
type (
	ListTable = sheet.Listing
	ListGroup = sheet.Group
)

// listed is a list, with what the answer says was written.
type listed struct {
	*sheet.Listing
	what  string // what was written, such as "potting list"
	count int
	of    string // what count counts, such as "plants"
}

// lists makes each list that is a table. drawings draws those that are more than a table.
var (
	lists = map[string]func(*lister) (*listed, error){
		"potting": (*lister).potting, "round": (*lister).round, "shopping": (*lister).shopping,
		"giving": (*lister).giving, "tags": (*lister).tags, "week": (*lister).week,
	}
	drawings = map[string]func(*lister, io.Writer) (*report.WrittenAnswer, error){"planting": (*lister).planting, "season": (*lister).season}
)

// ListNames names the lists there are, in alphabetical order.
func ListNames() []string {
	return slices.Sorted(slices.Values(slices.AppendSeq(slices.Collect(maps.Keys(lists)), maps.Keys(drawings))))
}

// NeedsPlan reports whether a list shows a plan, and so needs the weather.
func NeedsPlan(list string) bool { return list != "round" && list != "giving" }

// lister writes one list of a garden.
type lister struct {
	ListQuestion
	garden *garden.Garden
	today  civil.Date
	worked *plans.SeasonAnswer
	plan   *season.Plan
}

// List writes a list as PDF. It fails for a list or a plan that does not exist.
func List(g *garden.Garden, q ListQuestion, today civil.Date, w io.Writer) (*report.WrittenAnswer, error) {
	l, err := newLister(g, q, today)
	if err != nil {
		return nil, err
	}
	return l.write(w)
}

// write writes the list as PDF.
func (l *lister) write(w io.Writer) (*report.WrittenAnswer, error) {
	if draw, is := drawings[l.List]; is {
		return draw(l, w)
	}
	made, err := lists[l.List](l)
	if err != nil {
		return nil, err
	}
	told, err := made.Write(w)
	if err != nil {
		return nil, err
	}
	return written(made.what, made.count, made.of, told), nil
}

// Listing makes a list as a table, for a page. It fails for lists that are drawn: planting and season.
func Listing(g *garden.Garden, q ListQuestion, today civil.Date) (*ListTable, error) {
	list, is := lists[q.List]
	if !is {
		return nil, fmt.Errorf("the list %q can't be shown on a page", q.List)
	}
	l, err := newLister(g, q, today)
	if err != nil {
		return nil, err
	}
	made, err := list(l)
	if err != nil {
		return nil, err
	}
	return made.Listing, nil
}

func newLister(g *garden.Garden, q ListQuestion, today civil.Date) (*lister, error) {
	if !slices.Contains(ListNames(), q.List) {
		return nil, fmt.Errorf("there is no list %q; there are: %s", q.List, strings.Join(ListNames(), ", "))
	}
	l := &lister{ListQuestion: q, garden: g, today: today}
	var err error
	if NeedsPlan(q.List) {
		l.worked, l.plan, err = plans.Planned(g, q.Followed, q.Plan, today)
	}
	return l, err
}

// head makes the heading of a list: garden, plan and cautions.
func (l *lister) head(cautions ...string) sheet.Head {
	h := sheet.Head{Garden: l.garden.Name, Today: l.today, Paper: l.Paper, Cautions: cautions}
	if l.plan == nil {
		return h
	}
	h.Notes = append(h.Notes, fmt.Sprintf("By the plan “%s”, worked out today. Dates are the middle of %d years of weather; yours will move with the weather.", l.plan.Name, l.plan.Years))
	if l.worked.Weather.MadeUp {
		h.Notes = append(h.Notes, "The weather is made up from monthly normals; no station measured it.")
	}
	return h
}

// Cautions that only the lists print.
const (
	knifeCaution = "Knives: cut away from yourself; clean the blade between lots, as sap carries disease from one to the next. Wear gloves: sap can irritate the skin, and the plants can make pets ill."
	sprayCaution = "Dips and sprays: their label is the law; follow it to the letter, and keep them locked away."
)

// when writes a date with its range, such as "31 May (24 May to 7 Jun)".
func when(w civil.When) string {
	switch {
	case w.Middle.IsZero():
		return "not in most years"
	case w.Early == w.Middle && w.Middle == w.Late:
		return report.ShortDate(w.Middle)
	}
	return fmt.Sprintf("%s (%s to %s)", report.ShortDate(w.Middle), report.ShortDate(w.Early), report.ShortDate(w.Late))
}
