package page

import (
	"bytes"
	"net/http"
	"strconv"
	"strings"

	"eyeup/internal/desk"
)

// paperRoutes names the pages of what is printed, and of what comes back from paper.
func (s *server) paperRoutes() map[string]page {
	return map[string]page{
		"GET /paper":                 s.paperPage,
		"GET /paper/{name}":          s.paper,
		"GET /rounds/{place}/sheet":  s.keyPage,
		"POST /rounds/{place}/sheet": s.key,
	}
}

// paperView is what there is to print or take away.
type paperView struct {
	Lists         []paperChoice
	Plan          string
	Labels, Cards string // common sheets, by their measures
}

// paperChoice is one paper and what it is for.
type paperChoice struct{ Name, About string }

// papers are the lists in the order of the year.
var papers = []paperChoice{
	{"week", "the jobs of the week, to hang up"},
	{"round", "the round sheet, with boxes, crate by crate"},
	{"potting", "what is started when, in what, where"},
	{"shopping", "mix, pots, seed and packing, by when"},
	{"season", "the season on one page, with its picture"},
	{"planting", "the planting list, by rows of the patch"},
	{"tags", "what stands on the tags"},
	{"giving", "what is over, to give away or sell"},
	{"calendar", "the jobs as a calendar file"},
	{"tables", "all tables as a workbook"},
}

func (s *server) paperPage(r *request) error {
	v := paperView{Lists: papers, Plan: s.desk.Decided(), Labels: desk.UsualLayout("labels", r.taste.Units), Cards: desk.UsualLayout("cards", r.taste.Units)}
	return s.show(r, http.StatusOK, "paper", view{Title: "Paper", Main: v})
}

// paper sends what is asked for: plan, weeks, paper (a4, letter); for labels and cards
// layout, from, lots (codes, parted by spaces).
func (s *server) paper(r *request) error {
	if err := r.parse(); err != nil {
		return err
	}
	q := desk.PaperQuestion{Name: r.PathValue("name"), Plan: r.FormValue("plan"), Layout: r.FormValue("layout"), Paper: r.FormValue("paper"),
		Lots: strings.Fields(strings.ReplaceAll(strings.ToUpper(r.FormValue("lots")), ",", " ")), Units: r.taste.Units}
	for name, into := range map[string]*int{"from": &q.From, "weeks": &q.Weeks} {
		if typed := r.FormValue(name); typed != "" {
			n, err := strconv.Atoi(typed)
			if err != nil || n < 1 || n > 1000 {
				return refused("%s: %q is no whole number from 1 to 1000", name, typed)
			}
			*into = n
		}
	}
	var b bytes.Buffer
	if _, err := s.desk.Paper(q, s.today(), &b); err != nil {
		return err
	}
	file, kind := q.File()
	h := r.w.Header()
	h.Set("Content-Type", kind)
	h.Set("Content-Disposition", `inline; filename="`+file+`"`)
	_, _ = r.w.Write(b.Bytes()) // whoever asked is gone: nothing to be done
	return nil
}
