package page

import (
	"crypto/rand"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"eyeup/stock"
)

// formView is the form for one entry.
type formView struct {
	action
	ID     string // of the entry, made when the form is shown; sent twice, it counts once
	Lot    *stock.Lot
	At     *stock.Standing  // the spot meant
	Spots  []stock.Standing // to choose from, where several are meant
	Inputs []input          // fields shown at once
	More   []input          // fields under "more details"
	Open   bool             // some field of More is filled in
	On     string
	Next   string
	Bad    []string // why it was refused
	Names  []string // of the garden's places
	Money  string   // the garden's currency
}

// input is a field with its value.
type input struct {
	field
	Value string
	On    bool
	Less  string // what its buttons send
	More  string
	Ten   string
}

// form shows the form of a kind of entry (kind with dashes): lot (its code), and place,
// crate, bed, row, form where it stands. tap (NAME+N) adds to a tally, so that its large
// buttons work without scripts.
func (s *server) form(r *request) error {
	v, err := s.formOf(r)
	if err != nil {
		return err
	}
	return s.showForm(r, http.StatusOK, v)
}

func (s *server) showForm(r *request, status int, v *formView) error {
	title := upper(v.Says)
	if v.Lot != nil {
		title += ": " + v.Lot.Name()
	}
	return s.show(r, status, "form", view{Title: title, Here: "stock", Main: v})
}

// formOf fills a form with what was asked, or typed already.
func (s *server) formOf(r *request) (*formView, error) {
	if err := r.parse(); err != nil {
		return nil, err
	}
	kind := strings.ReplaceAll(r.PathValue("kind"), "-", " ")
	a, known := actionOf(kind)
	if !known {
		return nil, notFound("there is no kind of entry called " + strconv.Quote(kind))
	}
	g := s.desk.Site()
	v := &formView{action: a, ID: r.FormValue("id"), On: r.FormValue("on"), Next: local(r.FormValue("next")), Money: g.Currency}
	if v.ID == "" || r.FormValue("tap") == "" && r.Method == http.MethodGet {
		id, err := stock.NewID(s.Now(), rand.Reader)
		if err != nil {
			return nil, err
		}
		v.ID = id.String()
	}
	if v.On == "" {
		v.On = s.today().String()
	}
	for _, p := range g.Places {
		v.Names = append(v.Names, p.Name)
	}
	if !a.NoLot {
		if err := s.findLot(r, v); err != nil {
			return nil, err
		}
	}
	s.inputs(r, v)
	return v, nil
}

// findLot finds the lot, and the one spot where it stands that is meant.
func (s *server) findLot(r *request, v *formView) error {
	var lot stock.Lot
	var err error
	s.desk.Read(func(b *stock.Book) { lot, err = b.Find(r.FormValue("lot")) })
	if err != nil {
		return notFound(err.Error())
	}
	v.Lot = &lot
	if v.Next == "/" && r.FormValue("next") == "" {
		v.Next = "/stock/" + url.PathEscape(string(lot.Code))
	}
	if v.Whole {
		return nil
	}
	at := spotAsked(r.Form)
	for _, st := range lot.Standing {
		if matches(at, st.Spot) && (len(v.Forms) == 0 || slices.Contains(v.Forms, st.Spot.Form)) {
			v.Spots = append(v.Spots, st)
		}
	}
	switch len(v.Spots) {
	case 0:
		return refused("this can't be written of %s there: none is in a fitting form. Look on the lot's page where it is", lot.Name())
	case 1:
		v.At = &v.Spots[0]
	}
	return nil
}

// spotAsked reads where they stand.
func spotAsked(f url.Values) stock.Spot {
	return stock.Spot{Place: f.Get("place"), Crate: f.Get("crate"), Bed: f.Get("bed"), Row: f.Get("row"), Form: stock.Form(f.Get("form"))}
}

// matches reports whether a spot asked for, where it says anything, is the other.
func matches(at, spot stock.Spot) bool {
	return (at.Place == "" || at.Place == spot.Place) && (at.Crate == "" || at.Crate == spot.Crate) &&
		(at.Bed == "" || at.Bed == spot.Bed) && (at.Row == "" || at.Row == spot.Row) && (at.Form == "" || at.Form == spot.Form)
}

// inputs fills the fields with what was typed, with the query, or with their first value.
func (s *server) inputs(r *request, v *formView) {
	tapped, by := tap(r.FormValue("tap"))
	again := r.Method == http.MethodPost || r.FormValue("tap") != ""
	for _, f := range v.Fields {
		in := input{field: f, Value: f.Start}
		if r.Form.Has(f.Name) {
			in.Value = r.FormValue(f.Name)
		}
		switch f.Type {
		case tally:
			if in.Value == "all" {
				in.Value = "1"
				if v.At != nil {
					in.Value = strconv.Itoa(v.At.Count)
				}
			}
			if f.Name == tapped {
				in.Value = added(in.Value, by)
			}
			in.Less, in.More, in.Ten = f.Name+"-1", f.Name+"+1", f.Name+"+10"
		case yes:
			in.On = in.Value != "" && (!again || r.Form.Has(f.Name))
		}
		if !f.isMore() {
			v.Inputs = append(v.Inputs, in)
			continue
		}
		v.More = append(v.More, in)
		v.Open = v.Open || in.Value != f.Start
	}
}

// isMore reports whether a field stands under "more details".
func (f field) isMore() bool {
	return !f.Due && (f.Type == text && f.Name != "crate" && f.Name != "to.crate" || f.Type == measure || f.Type == price)
}

// tap reads NAME+N or NAME-N.
func tap(s string) (name string, by int) {
	i := strings.LastIndexAny(s, "+-")
	if i < 0 {
		return "", 0
	}
	by, _ = strconv.Atoi(s[i:])
	return s[:i], by
}

// added adds to a whole number, but not below 0. Text that is no number stays as it is.
func added(value string, by int) string {
	n, err := strconv.Atoi(strings.TrimSpace(value))
	if err != nil && value != "" {
		return value
	}
	return strconv.Itoa(max(0, n+by))
}
