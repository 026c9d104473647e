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

// sheetView is the round sheet of a store, to be filled in from paper.
type sheetView struct {
	Place string
	Lots  int // in the store
	Page  int // of the sheet
	Pages int
	Rows  []sheetRow
	On    string
	Whole bool
	Rest  bool     // in empty rows, all were firm
	Bad   []string // why it was refused
}

// sheetRow is one lot of the sheet, with what is typed of it.
type sheetRow struct {
	desk.Held
	Lot   *stock.Lot
	Key   int    // by which its fields are named
	ID    string // of the entry, made beforehand
	First bool   // the first lot of its crate
	Said  []typedFigure
}

// typedFigure is one figure of a row, as it was typed.
type typedFigure struct{ Name, Head, Label, Value string }

// sheetFields are the columns of the sheet.
var sheetFields = []string{"firm", "wrinkled", "soft", "lost"}

// rowsOnSheet is how many lots a page of the sheet has.
const rowsOnSheet = 100

// sheetPage shows the round sheet of a store (place), in the order in which it is printed:
// page, of 100 lots each.
func (s *server) sheetPage(r *request) error {
	v, err := s.sheetOf(r)
	if err != nil {
		return err
	}
	return s.showSheet(r, http.StatusOK, v)
}

func (s *server) showSheet(r *request, status int, v *sheetView) error {
	return s.show(r, status, "sheet", view{Title: upper(v.Place) + ", round sheet", Here: "rounds", Main: v})
}

// sheetOf makes the sheet and fills in what was typed already.
func (s *server) sheetOf(r *request) (*sheetView, error) {
	if err := r.parse(); err != nil {
		return nil, err
	}
	shelf := s.desk.Shelf()
	p, there := shelf.Place(r.PathValue("place"))
	crates := crateRows(p)
	if !there || len(crates) == 0 {
		return nil, notFound("nothing stands in " + strconv.Quote(r.PathValue("place")) + " that needs a round")
	}
	v := &sheetView{Place: p.Name, On: r.FormValue("on"), Whole: !r.Form.Has("on") || r.Form.Has("whole"), Rest: r.Form.Has("rest")}
	if v.On == "" {
		v.On = s.today().String()
	}
	for _, c := range crates {
		slices.SortStableFunc(c.Holdings, func(a, b desk.Held) int { // as the sheet is printed
			x, y := &shelf.Lots[a.Lot], &shelf.Lots[b.Lot]
			return cmp.Or(cmp.Compare(x.Name(), y.Name()), cmp.Compare(x.Code, y.Code))
		})
		for i, h := range c.Holdings {
			v.Rows = append(v.Rows, sheetRow{Held: h, Lot: &shelf.Lots[h.Lot], First: i == 0})
		}
	}
	v.Lots = len(v.Rows)
	v.Page, v.Pages = pageNumber(r, v.Lots, rowsOnSheet)
	v.Rows = v.Rows[(v.Page-1)*rowsOnSheet : min(v.Lots, v.Page*rowsOnSheet)]
	for i := range v.Rows {
		v.Rows[i].Key = i
		if err := s.fillSheetRow(r, &v.Rows[i]); err != nil {
			return nil, err
		}
	}
	return v, nil
}

// fillSheetRow fills in what was typed of a lot.
func (s *server) fillSheetRow(r *request, row *sheetRow) error {
	key := "." + strconv.Itoa(row.Key)
	if row.ID = r.FormValue("id" + key); row.ID == "" {
		id, err := entryID("", s)
		if err != nil {
			return err
		}
		row.ID = id.String()
	}
	for _, name := range sheetFields {
		row.Said = append(row.Said, typedFigure{name + key, name, name + ", " + row.Lot.Name() + " " + string(row.Lot.Code), strings.TrimSpace(r.FormValue(name + key))})
	}
	return nil
}

// At names the spot of the row, for the form to send back.
func (row sheetRow) At() string {
	s := row.Spot
	return strings.Join([]string{string(row.Lot.Code), s.Crate, s.Bed, s.Row, string(s.Form)}, "\n")
}

// writeSheet writes the rounds of a sheet, all or none: for the K-th lot of the page at.K (lot and
// spot, as the page has them), id.K, firm.K, wrinkled.K, soft.K, lost.K; whole, rest, on,
// page. A lot of which nothing is typed was not gone through, or was all firm with rest.
func (s *server) writeSheet(r *request) error {
	v, err := s.sheetOf(r)
	if err != nil {
		return err
	}
	on, err := dayTyped(v.On, s)
	var entries []stock.Entry
	if err == nil {
		entries, err = s.sheetRounds(r, v, on)
	}
	if err == nil {
		err = s.appendAll(entries)
	}
	if err != nil {
		v.Bad = strings.Split(err.Error(), "\n")
		return s.showSheet(r, http.StatusUnprocessableEntity, v)
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

// sheetRounds makes the entries of what was typed.
func (s *server) sheetRounds(r *request, v *sheetView, on civil.Date) ([]stock.Entry, error) {
	var entries []stock.Entry
	var faults []error
	for _, row := range v.Rows {
		if at := strings.ReplaceAll(r.FormValue("at."+strconv.Itoa(row.Key)), "\r", ""); at != row.At() {
			return nil, refused("the stock in %s has changed since you opened the sheet. Open it again and type it in again", v.Place)
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
		return nil, refused("nothing was typed. Type the numbers of the lots you checked")
	}
	return entries, nil
}

// body is the body of a lot's round; nil where nothing is said of it. Where firm is left
// empty, it is the rest of what the book has.
func (row sheetRow) body(whole, rest bool) ([]byte, error) {
	isEmpty := func(k typedFigure) bool { return k.Value == "" }
	if !rest && !slices.ContainsFunc(row.Said, func(k typedFigure) bool { return !isEmpty(k) }) {
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
			return nil, fmt.Errorf("%s: %q is not a whole number; write 0 or more", k.Label, k.Value)
		}
		if said[sheetFields[i]] = n; i > 0 {
			others += n
		}
	}
	if isEmpty(row.Said[0]) {
		if others > row.Count {
			return nil, fmt.Errorf("%s %s: %d are wrinkled, soft or lost, but the book has only %d. Fill in how many were firm too", row.Lot.Name(), row.Lot.Code, others, row.Count)
		}
		said["firm"] = row.Count - others
	}
	return json.Marshal(said)
}
