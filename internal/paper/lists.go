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
	Plan  string // by name; empty is the one that is followed, or the usual one
	Paper sheet.Size
	Weeks int             // of jobs, from this week on
	Row   quantity.Length // how long a row of the patch is
	Bag   quantity.Volume // printed on a bag of mix
	Bale  bool            // the bag is a compressed bale
	Units quantity.System

	// Outlook is what to count on, for the giving list of a book; nil: stock is counted as
	// it stands.
	Outlook *stockbook.OutlookAnswer

	// Followed is the plan that the book says is followed; nil where none is, and for a folder.
	Followed *plans.Followed

	// Rounds are those of a book's stores, for the jobs of this week: they go by the last one gone.
	// Nil: by the plan.
	Rounds []week.RoundDue
}

// SetPaper takes the paper that is named, a4 or letter, or what suits the units.
func (q *ListQuestion) SetPaper(name string) {
	q.Paper = sheet.A4
	if name == "letter" || name == "" && q.Units == quantity.US {
		q.Paper = sheet.Letter
	}
}

// ListTable is a list as a table, and ListGroup a part of its rows.
type (
	ListTable = sheet.Listing
	ListGroup = sheet.Group
)

// listed is a list, with how it is told that it was written.
type listed struct {
	*sheet.Listing
	what  string
	count int
	of    string
}

// lists is how each list is made, and drawn those that are more than a table.
var (
	lists = map[string]func(*lister) (*listed, error){
		"potting": (*lister).potting, "round": (*lister).round, "shopping": (*lister).shopping,
		"giving": (*lister).giving, "tags": (*lister).tags, "week": (*lister).week,
	}
	drawings = map[string]func(*lister, io.Writer) (*report.WrittenAnswer, error){"planting": (*lister).planting, "season": (*lister).season}
)

// ListNames names the lists there are.
func ListNames() []string {
	return slices.Sorted(slices.Values(slices.AppendSeq(slices.Collect(maps.Keys(lists)), maps.Keys(drawings))))
}

// NeedsPlan reports whether a list tells of a plan, and so needs the weather.
func NeedsPlan(list string) bool { return list != "round" && list != "giving" }

// lister writes one list of a garden.
type lister struct {
	ListQuestion
	garden *garden.Garden
	today  civil.Date
	worked *plans.SeasonAnswer
	plan   *season.Plan
}

// List writes a list as PDF.
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

// Listing makes a list as a table, for a page. It fails for those that are drawn.
func Listing(g *garden.Garden, q ListQuestion, today civil.Date) (*ListTable, error) {
	list, is := lists[q.List]
	if !is {
		return nil, fmt.Errorf("there is no list %q on a page", q.List)
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

// head makes what stands over the list.
func (l *lister) head(cautions ...string) sheet.Head {
	h := sheet.Head{Garden: l.garden.Name, Today: l.today, Paper: l.Paper, Cautions: cautions}
	if l.plan == nil {
		return h
	}
	h.Notes = append(h.Notes, fmt.Sprintf("By the plan “%s”, as it stands today: dates move with the weather, by those that are middling over %d years.", l.plan.Name, l.plan.Years))
	if l.worked.Weather.MadeUp {
		h.Notes = append(h.Notes, "The weather is made up from monthly normals; no station measured it.")
	}
	return h
}

// The cautions of lists that have none elsewhere.
const (
	knifeCaution = "Knives: cut away from yourself; clean the blade between lots, as sap carries disease from one to the next. Wear gloves: sap can irritate the skin, and the plants can make pets ill."
	sprayCaution = "Dips and sprays: their label is the law; follow it to the letter, and keep them locked away."
)

// when says a date with its spread, as a grower says it.
func when(w civil.When) string {
	switch {
	case w.Middle.IsZero():
		return "not in most years"
	case w.Early == w.Middle && w.Middle == w.Late:
		return report.ShortDate(w.Middle)
	}
	return fmt.Sprintf("%s (%s to %s)", report.ShortDate(w.Middle), report.ShortDate(w.Early), report.ShortDate(w.Late))
}
