package page

import (
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"eyeup/civil"
	"eyeup/internal/desk"
	"eyeup/stock"
)

// keyedView is the round sheet of a store, to be keyed in from paper.
type keyedView struct {
	Place string
	Lots  int // in the store
	Page  int // of the sheet
	Pages int
	Rows  []keyedRow
	On    string
	Whole bool
	Rest  bool     // lots of which nothing is typed were all firm
	Bad   []string // why it was refused
}

// keyedRow is one lot of the sheet, with what is typed of it.
type keyedRow struct {
	desk.Held
	Lot   *stock.Lot
	Key   int    // by which its fields are named
	ID    string // of the entry, made beforehand
	First bool   // the first lot of its crate
	Said  []keyed
}

// keyed is one figure of a row, as it was typed.
type keyed struct{ Name, Head, Label, Value string }

// keyedFields are the columns of the sheet.
var keyedFields = []string{"firm", "wrinkled", "soft", "lost"}

// rowsKeyed is how many lots are keyed in at once.
const rowsKeyed = 100

// keyPage shows the round sheet of a store (place), in the order in which it is printed:
// page, of 100 lots each.
func (s *server) keyPage(r *request) error {
	v, err := s.keyedOf(r)
	if err != nil {
		return err
	}
	return s.showKeyed(r, http.StatusOK, v)
}

func (s *server) showKeyed(r *request, status int, v *keyedView) error {
	return s.show(r, status, "keyed", view{Title: upper(v.Place) + ", round sheet", Here: "rounds", Main: v})
}

// keyedOf makes the sheet and fills in what was typed already.
func (s *server) keyedOf(r *request) (*keyedView, error) {
	if err := r.parse(); err != nil {
		return nil, err
	}
	shelf := s.desk.Shelf()
	p, there := shelf.Place(r.PathValue("place"))
	crates := crateRows(p)
	if !there || len(crates) == 0 {
		return nil, notFound("nothing stands in " + strconv.Quote(r.PathValue("place")) + " that a round is gone of")
	}
	v := &keyedView{Place: p.Name, On: r.FormValue("on"), Whole: !r.Form.Has("on") || r.Form.Has("whole"), Rest: r.Form.Has("rest")}
	if v.On == "" {
		v.On = s.today().String()
	}
	for _, c := range crates {
		slices.SortStableFunc(c.Holdings, func(a, b desk.Held) int { // as the sheet is printed
			x, y := &shelf.Lots[a.Lot], &shelf.Lots[b.Lot]
			return cmp.Or(cmp.Compare(x.Name(), y.Name()), cmp.Compare(x.Code, y.Code))
		})
		for i, h := range c.Holdings {
			v.Rows = append(v.Rows, keyedRow{Held: h, Lot: &shelf.Lots[h.Lot], First: i == 0})
		}
	}
	v.Lots = len(v.Rows)
	v.Page, v.Pages = pageNumber(r, v.Lots, rowsKeyed)
	v.Rows = v.Rows[(v.Page-1)*rowsKeyed : min(v.Lots, v.Page*rowsKeyed)]
	for i := range v.Rows {
		v.Rows[i].Key = i
		if err := s.fillKeyed(r, &v.Rows[i]); err != nil {
			return nil, err
		}
	}
	return v, nil
}

// fillKeyed fills in what was typed of a lot.
func (s *server) fillKeyed(r *request, row *keyedRow) error {
	key := "." + strconv.Itoa(row.Key)
	if row.ID = r.FormValue("id" + key); row.ID == "" {
		id, err := entryID("", s)
		if err != nil {
			return err
		}
		row.ID = id.String()
	}
	for _, name := range keyedFields {
		row.Said = append(row.Said, keyed{name + key, name, name + ", " + row.Lot.Name() + " " + string(row.Lot.Code), strings.TrimSpace(r.FormValue(name + key))})
	}
	return nil
}

// At names the spot of the row, for the form to send back.
func (row keyedRow) At() string {
	s := row.Spot
	return strings.Join([]string{string(row.Lot.Code), s.Crate, s.Bed, s.Row, string(s.Form)}, "\n")
}

// key writes the rounds of a sheet, all or none: for the K-th lot of the page at.K (lot and
// spot, as the page has them), id.K, firm.K, wrinkled.K, soft.K, lost.K; whole, rest, on,
// page. A lot of which nothing is typed was not gone through, or was all firm with rest.
func (s *server) key(r *request) error {
	v, err := s.keyedOf(r)
	if err != nil {
		return err
	}
	on, err := dayTyped(v.On, s)
	var entries []stock.Entry
	if err == nil {
		entries, err = s.keyedRounds(r, v, on)
	}
	if err == nil {
		err = s.appendAll(entries)
	}
	if err != nil {
		v.Bad = strings.Split(err.Error(), "\n")
		return s.showKeyed(r, http.StatusUnprocessableEntity, v)
	}
	var ids []string
	for _, e := range entries {
		ids = append(ids, e.ID.String())
	}
	to := "/rounds"
	if v.Page < v.Pages {
		to = "/rounds/" + url.PathEscape(v.Place) + "/sheet?page=" + strconv.Itoa(v.Page+1)
	}
	r.goTo(withQuery(to, "wrote", strings.Join(ids, ".")))
	return nil
}

// keyedRounds makes the entries of what was typed.
func (s *server) keyedRounds(r *request, v *keyedView, on civil.Date) ([]stock.Entry, error) {
	var entries []stock.Entry
	var faults []error
	for _, row := range v.Rows {
		if at := strings.ReplaceAll(r.FormValue("at."+strconv.Itoa(row.Key)), "\r", ""); at != row.At() {
			return nil, refused("what lies in %s has changed meanwhile; open the sheet anew and key it in again", v.Place)
		}
		body, err := row.body(v.Whole, v.Rest)
		if err != nil {
			faults = append(faults, err)
		}
		if body == nil {
			continue
		}
		e, err := s.entry(r, row.ID, "round", on, body)
		if err != nil {
			return nil, err
		}
		entries = append(entries, e)
	}
	if len(faults) > 0 {
		return nil, errors.Join(faults...)
	}
	if len(entries) == 0 {
		return nil, refused("nothing was typed; key in the figures of the lots that were gone through")
	}
	return entries, nil
}

// body is the body of a lot's round; nil where nothing is said of it. Where firm is left
// empty, it is the rest of what the book has.
func (row keyedRow) body(whole, rest bool) ([]byte, error) {
	isEmpty := func(k keyed) bool { return k.Value == "" }
	if !rest && !slices.ContainsFunc(row.Said, func(k keyed) bool { return !isEmpty(k) }) {
		return nil, nil
	}
	said := map[string]any{"lot": row.Lot.ID.String(), "whole": whole}
	for name, value := range spotFields(row.Spot) {
		said[name] = value
	}
	others := 0
	for i, k := range row.Said {
		if isEmpty(k) {
			continue
		}
		n, err := strconv.Atoi(k.Value)
		if err != nil || n < 0 {
			return nil, fmt.Errorf("%s: %q is no whole number from 0", k.Label, k.Value)
		}
		if said[keyedFields[i]] = n; i > 0 {
			others += n
		}
	}
	if isEmpty(row.Said[0]) {
		if others > row.Count {
			return nil, fmt.Errorf("%s %s: %d are wrinkled, soft or lost, and the book has %d; write how many were firm too", row.Lot.Name(), row.Lot.Code, others, row.Count)
		}
		said["firm"] = row.Count - others
	}
	return json.Marshal(said)
}
