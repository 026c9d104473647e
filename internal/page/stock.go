package page

import (
	"net/http"
	"slices"
	"strconv"
	"strings"

	"eyeup/civil"
	"eyeup/internal/desk"
	"eyeup/internal/sources"
	"eyeup/internal/stockbook"
	"eyeup/season"
	"eyeup/stock"
)

// stockView is the stock, by variety, lot or place, or what a search finds.
type stockView struct {
	Shelf     *desk.Shelf
	By        string // variety, lot or place
	Query     string
	Varieties []desk.VarietyOnShelf
	Lots      []stock.Lot
	Places    []desk.PlaceOnShelf
	Found     int // of what is listed, on all pages together
	Page      int // from 1
	Pages     int
}

// onePage is how many rows a page lists: few enough for an old phone.
const onePage = 100

// stock lists what there is: by (variety, lot, place), q (words to find), page.
func (s *server) stock(r *request) error {
	v := stockView{Shelf: s.desk.Shelf(), By: r.FormValue("by"), Query: strings.TrimSpace(r.FormValue("q"))}
	v.Page, _ = strconv.Atoi(r.FormValue("page"))
	found := v.Shelf.Search(v.Query)
	switch v.By {
	case "lot":
		for _, i := range pageOf(found, &v) {
			v.Lots = append(v.Lots, v.Shelf.Lots[i])
		}
	case "place":
		v.Places = pageOf(v.Shelf.Places, &v)
	default:
		v.By = "variety"
		v.Varieties = pageOf(varietiesOf(v.Shelf, found, v.Query), &v)
	}
	return s.show(r, http.StatusOK, "stock", view{Title: "Stock", Here: "stock", Main: v, From: sources.OfStock(s.desk)})
}

// varietiesOf returns the varieties of the lots found.
func varietiesOf(shelf *desk.Shelf, found []int, query string) []desk.VarietyOnShelf {
	if query == "" {
		return shelf.Varieties
	}
	is := make([]bool, len(shelf.Lots))
	for _, i := range found {
		is[i] = true
	}
	var all []desk.VarietyOnShelf
	for _, v := range shelf.Varieties {
		if slices.ContainsFunc(v.Lots, func(i int) bool { return is[i] }) {
			all = append(all, v)
		}
	}
	return all
}

// pageOf returns the rows of the page asked for.
func pageOf[T any](all []T, v *stockView) []T {
	v.Found = len(all)
	v.Pages = max(1, (len(all)+onePage-1)/onePage)
	v.Page = min(max(v.Page, 1), v.Pages)
	return all[(v.Page-1)*onePage : min(len(all), v.Page*onePage)]
}

// pageNumber returns which page is asked for (page, from 1), and how many there are.
func pageNumber(r *request, all, each int) (page, pages int) {
	page, _ = strconv.Atoi(r.FormValue("page"))
	pages = max(1, (all+each-1)/each)
	return min(max(page, 1), pages), pages
}

// lotView is one lot's page.
type lotView struct {
	stock.Lot
	Life    []mention
	Kin     []kinGroup
	Parents []stock.Lot
	Next    []season.BatchPlan
	Outlook *stockbook.OutlookVariety
	Stored  []stockbook.OutlookCrate
	At      civil.Date // of the outlook
	Actions []action
	Said    *desk.VarietyTyped // how its variety is described; nil if that is not known
}

// mention is what one entry says of a lot.
type mention struct {
	stock.Mention
	Says []string
	By   string // who wrote it, and on what
}

// mentions puts what one entry says together.
func mentions(life []stock.Mention) []mention {
	var all []mention
	for _, m := range life {
		if n := len(all); n > 0 && all[n-1].Entry == m.Entry {
			all[n-1].Says = append(all[n-1].Says, m.Says)
			continue
		}
		all = append(all, mention{Mention: m, Says: []string{m.Says}})
	}
	return all
}

// kinGroup is the kin of one way.
type kinGroup struct {
	Way  string
	Kin  []stock.Kin
	Left int // how many individuals are left alive
}

var ways = []struct {
	way  stock.Way
	says string
}{{stock.Down, "Down: lots that came from it"}, {stock.Up, "Up: lots it came from"}, {stock.Side, "Sideways: lots that touched it"}}

// lot shows a lot's life, kin, and what can be written of it.
func (s *server) lot(r *request) error {
	var v lotView
	var kin []stock.Kin
	var err error
	s.desk.Read(func(b *stock.Book) {
		if v.Lot, err = b.Find(r.PathValue("code")); err != nil {
			return
		}
		ref := v.ID.String()
		var life []stock.Mention
		if life, err = b.Life(ref); err == nil {
			v.Life = mentions(life)
			kin, err = b.Kin(ref)
		}
		for _, p := range v.Lot.Parents {
			if mother, perr := b.Find(p.String()); perr == nil {
				v.Parents = append(v.Parents, mother)
			}
		}
	})
	if err != nil {
		return notFound(err.Error())
	}
	for _, w := range ways {
		g := kinGroup{Way: w.says}
		for _, k := range kin {
			if k.Way == w.way {
				g.Kin = append(g.Kin, k)
				g.Left += k.Lot.Count()
			}
		}
		if len(g.Kin) > 0 {
			v.Kin = append(v.Kin, g)
		}
	}
	slices.Reverse(v.Life)
	names := s.names()
	for i := range v.Life {
		if e, err := s.desk.Entry(v.Life[i].Entry); err == nil {
			v.Life[i].By = byWords(e, names)
		}
	}
	v.Next = s.desk.NextOf(string(v.Code), s.today())
	o, err := s.desk.Outlook(s.today())
	if err != nil {
		o = nil // without it the page shows less
	}
	if o != nil {
		v.Outlook, v.Stored, v.At = desk.OfVariety(o, v.Kind, v.Name()), desk.OfLot(o, string(v.Code)), o.At
	}
	v.Actions = actionsFor(v.Lot)
	if said, err := s.desk.VarietyOf(r.PathValue("code")); err == nil {
		v.Said = &said
	}
	return s.show(r, http.StatusOK, "lot", view{Title: v.Name() + " " + string(v.Code), Here: "stock", Main: v, From: sources.OfLot(s.desk, &v.Lot, o)})
}
