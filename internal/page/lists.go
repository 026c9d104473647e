package page

import (
	"net/http"
	"net/url"
	"slices"

	"eyeup/internal/desk"
	"eyeup/internal/paper"
)

// listView is a list as a page.
type listView struct {
	*paper.ListTable
	Name string
	Plan string // asked for; empty: the one that is followed
	Mix  bool   // its weeks are potting sessions, for which there are labels
}

// Kept are the columns that are not filled in by hand, by their number.
func (v listView) Kept() []int {
	var kept []int
	for i, c := range v.Columns {
		if !c.Sort.ByHand() {
			kept = append(kept, i)
		}
	}
	return kept
}

// Paper is the address of the same list on paper.
func (v listView) Paper() string {
	if v.Plan == "" {
		return "/paper/" + v.Name
	}
	return "/paper/" + v.Name + "?" + url.Values{"plan": {v.Plan}}.Encode()
}

// Labels is the address of the labels of a week's pots.
func (v listView) Labels(g paper.ListGroup) string {
	q := url.Values{"session": {g.Week.String()}}
	if v.Plan != "" {
		q.Set("plan", v.Plan)
	}
	return "/paper/labels?" + q.Encode()
}

// listPages are the lists that have a page here; the others have one of their own.
var listPages = []string{"potting", "shopping", "tags", "giving"}

// list shows a list as a page (name): plan.
func (s *server) list(r *request) error {
	v := listView{Name: r.PathValue("name"), Plan: r.FormValue("plan")}
	if !slices.Contains(listPages, v.Name) {
		return notFound("there is no list at this address. Choose one under “print and export”")
	}
	var err error
	if v.ListTable, err = s.desk.Listing(desk.PaperQuestion{Name: v.Name, Plan: v.Plan, Units: r.display.Units}, s.today()); err != nil {
		return err
	}
	v.Mix = v.Name == "potting"
	return s.show(r, http.StatusOK, "list", view{Title: v.Title, Main: v})
}
