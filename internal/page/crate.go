package page

import (
	"net/http"
	"net/url"
	"strconv"
	"strings"

	"eyeup/civil"
	"eyeup/internal/desk"
	"eyeup/internal/sources"
	"eyeup/internal/stockbook"
	"eyeup/stock"
)

// crateView is one crate, to be gone through.
type crateView struct {
	Place string
	crateRow
	Of      int // crates in the store
	Next    int // the crate after it; below nothing: none
	Page    int // of its lots
	Pages   int
	Walked  []walked
	Changed []stock.Change
	Past    []stock.Round
	From    []sources.Basis
	On      string
	Whole   bool
	Bad     []string // why it was refused
}

// walked is one lot of a crate, with what is found of it.
type walked struct {
	desk.Held
	Lot    *stock.Lot
	Key    int    // by which its fields are named
	ID     string // of the entry, made beforehand
	Inputs []input
	Open   bool // something is typed
	Lost   *stockbook.OutlookCrate
	Scales *desk.Weighed
}

// lotsOnPage is how many lots of a crate are gone through at once.
const lotsOnPage = 20

// walkFields are the fields of each lot. Those checked and not named are firm.
var walkFields = []field{
	{Name: "seen", Label: "checked", Type: tally, Start: "all"},
	{Name: "wrinkled", Label: "of them wrinkled", Type: tally, Start: "0"},
	{Name: "soft", Label: "soft", Type: tally, Start: "0"},
	{Name: "lost", Label: "lost", Type: tally, Start: "0", Help: "thrown out, or beyond saving"},
	{Name: "weight", Label: "weight of all that were checked", Type: measure, Help: "such as 4.2 kg or 9 lb"},
}

// crate shows one crate of a store (place, n), each lot with its round to write: page, of
// 20 lots each. tap (NAME+N) adds to a tally, so that the large buttons work without
// scripts.
func (s *server) crate(r *request) error {
	v, err := s.crateOf(r)
	if err != nil {
		return err
	}
	return s.showCrate(r, http.StatusOK, v)
}

func (s *server) showCrate(r *request, status int, v *crateView) error {
	return s.show(r, status, "crate", view{Title: upper(v.Place) + ", " + v.Name(), Here: "rounds", Main: v, From: v.From})
}

// crateOf finds the crate and fills in what was typed already.
func (s *server) crateOf(r *request) (*crateView, error) {
	if err := r.parse(); err != nil {
		return nil, err
	}
	shelf := s.desk.Shelf()
	p, _ := shelf.Place(r.PathValue("place"))
	rows := crateRows(p)
	n, err := strconv.Atoi(r.PathValue("n"))
	if err != nil || n < 0 || n >= len(rows) {
		return nil, notThere(r.PathValue("place"))
	}
	if asked := [2]string{r.FormValue("crate"), r.FormValue("bed")}; r.Form.Has("crate") && asked != [2]string{rows[n].Crate, rows[n].Bed} {
		return nil, refused("the crates of %s have changed since you opened this one. Go back to the rounds and open it again", p.Name)
	}
	v := &crateView{Place: p.Name, crateRow: rows[n], Of: len(rows), Next: n + 1, On: r.FormValue("on"), Whole: !r.Form.Has("crate") || r.Form.Has("whole")}
	if v.Next == len(rows) {
		v.Next = -1
	}
	if v.On == "" {
		v.On = s.today().String()
	}
	v.Page, v.Pages = pageNumber(r, len(v.Holdings), lotsOnPage)
	return v, s.walk(r, v, shelf)
}

// walk fills in the lots of the page, and what is known of the crate.
func (s *server) walk(r *request, v *crateView, shelf *desk.Shelf) error {
	outlook, err := s.desk.Outlook(s.today())
	if err != nil {
		outlook = nil // without it the page shows less
	}
	scales := s.desk.Scales()
	v.weigh(desk.ByCrate(outlook, v.Place, v.Crate), scales)
	from := (v.Page - 1) * lotsOnPage
	held := v.Holdings[from:min(len(v.Holdings), from+lotsOnPage)]
	for i, h := range held {
		w := walked{Held: h, Lot: &shelf.Lots[h.Lot], Key: i, Scales: scales.Weighed(h)}
		for j := range v.Dry {
			if v.Dry[j].Code == string(w.Lot.Code) && v.Dry[j].Form == h.Spot.Form {
				w.Lost = &v.Dry[j]
			}
		}
		if err := s.walkInputs(r, &w); err != nil {
			return err
		}
		v.Walked = append(v.Walked, w)
	}
	v.Changed = s.desk.ChangedSince(v.Place, v.CrateOnShelf, v.Now.Last)
	v.From = sources.OfCrate(s.desk, v.Place, held)
	v.Past = pastRounds(shelf, v)
	return nil
}

// mostPast is how many earlier rounds of a crate are listed.
const mostPast = 50

// pastRounds lists the rounds gone in a crate, the last one first.
func pastRounds(shelf *desk.Shelf, v *crateView) []stock.Round {
	var past []stock.Round
	for i := len(shelf.Rounds) - 1; i >= 0 && len(past) < mostPast; i-- {
		if g := shelf.Rounds[i]; g.Spot.Place == v.Place && g.Spot.Crate == v.Crate && g.Spot.Bed == v.Bed {
			past = append(past, g)
		}
	}
	return past
}

// walkInputs fills the fields of one lot.
func (s *server) walkInputs(r *request, w *walked) error {
	tapped, by := tap(r.FormValue("tap"))
	key := "." + strconv.Itoa(w.Key)
	if w.ID = r.FormValue("id" + key); w.ID == "" {
		id, err := entryID("", s)
		if err != nil {
			return err
		}
		w.ID = id.String()
	}
	for _, f := range walkFields {
		start := f.Start
		if start == "all" {
			start = strconv.Itoa(w.Count)
		}
		f.Name += key
		in := input{field: f, Value: start, Less: f.Name + "-1", More: f.Name + "+1", Ten: f.Name + "+10"}
		if r.Form.Has(f.Name) {
			in.Value = r.FormValue(f.Name)
		}
		if f.Type == tally && f.Name == tapped {
			in.Value = added(in.Value, by)
		}
		w.Open = w.Open || in.Value != start || f.Name == tapped
		w.Inputs = append(w.Inputs, in)
	}
	return nil
}

// walkCrate writes a round of each lot on the page of a crate, all or none, and goes on to
// the next crate: crate and bed as the page names them; for each lot N lot.N, form.N,
// row.N, id.N, seen.N, wrinkled.N, soft.N, lost.N, weight.N; whole, on; all (firm) where
// every one is.
func (s *server) walkCrate(r *request) error {
	v, err := s.crateOf(r)
	if err != nil {
		return err
	}
	on, err := dayTyped(v.On, s)
	var entries []stock.Entry
	if err == nil {
		entries, err = s.roundsOf(r, v, on)
	}
	if err == nil {
		err = s.appendAll(entries)
	}
	if err != nil {
		v.Bad = strings.Split(err.Error(), "\n")
		return s.showCrate(r, http.StatusUnprocessableEntity, v)
	}
	var ids []string
	for _, e := range entries {
		ids = append(ids, e.ID.String())
	}
	r.goTo(withQuery(s.afterCrate(v), "wrote", strings.Join(ids, ".")))
	return nil
}

// afterCrate is where the walk goes on.
func (s *server) afterCrate(v *crateView) string {
	store := "/rounds/" + url.PathEscape(v.Place) + "/"
	p, _ := s.desk.Shelf().Place(v.Place)
	rows := crateRows(p)
	next := v.N // the crate was emptied, and those after it move up
	if v.N < len(rows) && rows[v.N].Crate == v.Crate && rows[v.N].Bed == v.Bed {
		if v.Page < v.Pages {
			return store + strconv.Itoa(v.N) + "?page=" + strconv.Itoa(v.Page+1)
		}
		next++
	}
	if next >= len(rows) {
		return "/rounds"
	}
	return store + strconv.Itoa(next)
}

// roundsOf makes the entries of what was found.
func (s *server) roundsOf(r *request, v *crateView, on civil.Date) ([]stock.Entry, error) {
	var entries []stock.Entry
	for i := range v.Walked {
		w := v.walkedAs(r, i)
		if w == nil {
			return nil, refused("the stock in this crate has changed since you opened it. Open it again")
		}
		body, err := w.body(r.FormValue("all") == "firm", v.Whole)
		if err != nil {
			return nil, err
		}
		e, err := s.entry(r, w.ID, "round", on, body)
		if err != nil {
			return nil, err
		}
		entries = append(entries, e)
	}
	return entries, nil
}

// walkedAs returns the i-th lot of the page if it is the one that the form was made for.
func (v *crateView) walkedAs(r *request, i int) *walked {
	w, key := &v.Walked[i], "."+strconv.Itoa(i)
	at := stock.Spot{Place: v.Place, Crate: v.Crate, Bed: v.Bed, Row: r.FormValue("row" + key), Form: stock.Form(r.FormValue("form" + key))}
	if r.FormValue("lot"+key) != string(w.Lot.Code) || at != w.Spot {
		return nil
	}
	return w
}
