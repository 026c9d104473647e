package page

import (
	"bytes"
	"html/template"
	"net/http"
	"strconv"
	"strings"

	"eyeup/civil"
	"eyeup/internal/desk"
	"eyeup/internal/paper"
	"eyeup/stock"
)

// paperRoutes names the pages of what is printed, and the page to type in a printed sheet.
func (s *server) paperRoutes() map[string]page {
	return map[string]page{
		"GET /paper":                 s.paperPage,
		"GET /lists/{name}":          s.needsStock(s.list),
		"GET /paper/{name}":          s.paper,
		"GET /rounds/{place}/sheet":  s.sheetPage,
		"POST /rounds/{place}/sheet": s.writeSheet,
		"GET /calendar/{key}":        s.calendar,
		"POST /share/calendar":       s.shareCalendar,
	}
}

// paperView is what there is to print or export.
type paperView struct {
	Lists         []paperChoice
	Plan          string
	Labels, Cards string // common sheets, by their sizes
	Pottings      []paper.Potting
	Renamings     []paper.Renaming
	Renamed       civil.Date   // since when these were renamed
	Subscribe     template.URL // to the calendar; empty where it is not shared
}

// How long pottings and renamings are offered for labels, in days, and how many of them.
const (
	pottedLately  = 60
	renamedLately = 90
	mostPottings  = 6
	mostRenamings = 60
)

// paperChoice is one list or file, what it is for, and the page that shows the same; empty
// for none.
type paperChoice struct{ Name, About, Page string }

// papers are the lists in the order of the year.
var papers = []paperChoice{
	{"week", "the jobs of the week, to hang up", "/"},
	{"round", "the round sheet, with boxes to fill in, crate by crate", "/rounds"},
	{"potting", "what you start when, in which pots, and where", "/lists/potting"},
	{"shopping", "mix, pots, seed and packing, and by when", "/lists/shopping"},
	{"season", "the season on one page, with its picture", "/season"},
	{"planting", "the planting list, by rows of the patch", "/patch"},
	{"tags", "what to write on the stake tags", "/lists/tags"},
	{"giving", "spare plants, to give away or sell", "/lists/giving"},
	{"calendar", "the jobs as a calendar file", ""},
	{"tables", "all tables as a spreadsheet", ""},
}

func (s *server) paperPage(r *request) error {
	v := paperView{Lists: papers, Plan: s.desk.Decided(), Labels: desk.UsualLayout("labels", r.display.Units), Cards: desk.UsualLayout("cards", r.display.Units)}
	var err error
	if v.Pottings, err = s.desk.Pottings(s.today().AddDays(-pottedLately)); err != nil {
		return err
	}
	v.Pottings = v.Pottings[:min(len(v.Pottings), mostPottings)]
	v.Subscribe = s.subscribe(r.Host)
	v.Renamed = s.today().AddDays(-renamedLately)
	v.Renamings = s.desk.Renamings(v.Renamed)
	v.Renamings = v.Renamings[:min(len(v.Renamings), mostRenamings)]
	return s.show(r, http.StatusOK, "paper", view{Title: "Print and export", Main: v})
}

// paper sends what is asked for: plan, weeks, paper (a4, letter); for labels and cards
// layout, from; for labels lots (codes with spaces between), or entry (ids with dots between)
// or potted (a day) for the pots filled, session (a day) for those the plan fills in its
// week, renamed (a day) for the lots renamed since.
func (s *server) paper(r *request) error {
	if err := r.parse(); err != nil {
		return err
	}
	q := desk.PaperQuestion{Name: r.PathValue("name"), Plan: r.FormValue("plan"), Layout: r.FormValue("layout"), Paper: r.FormValue("paper"),
		Lots: strings.Fields(strings.ReplaceAll(strings.ToUpper(r.FormValue("lots")), ",", " ")), Units: r.display.Units}
	for name, into := range map[string]*int{"from": &q.From, "weeks": &q.Weeks} {
		if typed := r.FormValue(name); typed != "" {
			n, err := strconv.Atoi(typed)
			if err != nil || n < 1 || n > 1000 {
				return refused("%s: %q is not a whole number from 1 to 1000", name, typed)
			}
			*into = n
		}
	}
	if err := chosenLabels(r, &q); err != nil {
		return err
	}
	var b bytes.Buffer
	if _, err := s.desk.Paper(q, s.today(), &b); err != nil {
		return err
	}
	file, kind := q.File()
	h := r.w.Header()
	h.Set("Content-Type", kind)
	h.Set("Content-Disposition", `inline; filename="`+file+`"`)
	_, _ = r.w.Write(b.Bytes()) // an error means that the reader has gone: nothing to do
	return nil
}

// chosenLabels reads which labels to make.
func chosenLabels(r *request, q *desk.PaperQuestion) error {
	for name, into := range map[string]*civil.Date{"potted": &q.Potted, "session": &q.Session, "renamed": &q.Renamed} {
		if typed := r.FormValue(name); typed != "" {
			day, err := civil.Parse(typed)
			if err != nil {
				return refused("%s: %v", name, err)
			}
			*into = day
		}
	}
	if typed := r.FormValue("entry"); typed != "" {
		for one := range strings.SplitSeq(typed, ".") {
			id, err := stock.ParseID(one)
			if err != nil {
				return refused("%v", err)
			}
			q.Entries = append(q.Entries, id)
		}
	}
	return nil
}
