package page

import (
	"crypto/rand"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"strconv"
	"strings"

	"eyeup/civil"
	"eyeup/internal/stockbook"
	"eyeup/stock"
)

// write writes one entry down. It reads the fields of the form, on (the day), id (of the
// entry; sent twice, it counts once) and next (where to go then). A refusal is shown above
// the form, which keeps what was typed.
func (s *server) write(r *request) error {
	v, err := s.formOf(r)
	if err != nil {
		return err
	}
	if len(v.Spots) > 1 {
		return s.showForm(r, http.StatusUnprocessableEntity, v)
	}
	id, err := s.writeForm(r, v)
	if err != nil {
		v.Bad = strings.Split(err.Error(), "\n")
		return s.showForm(r, http.StatusUnprocessableEntity, v)
	}
	r.goTo(withQuery(v.Next, "wrote", id.String()))
	return nil
}

func (s *server) writeForm(r *request, v *formView) (stock.ID, error) {
	on, err := civil.Parse(v.On)
	if err != nil {
		return stock.ID{}, err
	}
	if on.After(s.today()) {
		return stock.ID{}, fmt.Errorf("%s is in the future; give the day on which it happened", on)
	}
	body, err := bodyOf(r.Form, v)
	if err != nil {
		return stock.ID{}, err
	}
	return s.append(r, v.Kind, on, body)
}

// append writes an entry down and keeps its outcome for the next page.
func (s *server) append(r *request, kind string, on civil.Date, body []byte) (stock.ID, error) {
	e, err := s.entry(r, r.FormValue("id"), kind, on, body)
	if err == nil {
		err = s.appendAll([]stock.Entry{e})
	}
	return e.ID, err
}

// entry makes an entry of what was sent: id is the one made beforehand, if any.
func (s *server) entry(r *request, id, kind string, on civil.Date, body []byte) (stock.Entry, error) {
	made, err := entryID(id, s)
	if err != nil {
		return stock.Entry{}, err
	}
	return stockbook.NewEntry(made, kind, on, s.writer(r.Context()), body)
}

// appendAll writes entries down together, all or none, and keeps their outcomes.
func (s *server) appendAll(entries []stock.Entry) error {
	added, err := s.desk.Append(entries...)
	if err != nil {
		return err
	}
	for _, a := range added {
		s.outcomes.keep(a)
	}
	return nil
}

// entryID reads the id made beforehand, or makes one.
func entryID(sent string, s *server) (stock.ID, error) {
	if sent == "" {
		return stock.NewID(s.Now(), rand.Reader)
	}
	return stock.ParseID(sent)
}

// bodyOf makes the body of an entry from a form.
func bodyOf(f url.Values, v *formView) ([]byte, error) {
	body := map[string]any{}
	if v.Lot != nil {
		body[v.lotMember()] = v.Lot.ID.String()
	}
	if v.At != nil {
		for name, said := range map[string]string{"place": v.At.Spot.Place, "crate": v.At.Spot.Crate, "bed": v.At.Spot.Bed, "row": v.At.Spot.Row, "form": string(v.At.Spot.Form)} {
			if said != "" {
				body[name] = said
			}
		}
	}
	for _, one := range v.Fields {
		value, err := one.read(strings.TrimSpace(f.Get(one.Name)), v.Money)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", one.Label, err)
		}
		if value != nil {
			put(body, one.Name, value)
		}
	}
	if body["place"] == nil && v.NoLot {
		return nil, errors.New("place: fill in where they are")
	}
	return json.Marshal(body)
}

// put sets a member; a dot leads into an object.
func put(body map[string]any, name string, value any) {
	outer, inner, deep := strings.Cut(name, ".")
	if !deep {
		body[name] = value
		return
	}
	at, _ := body[outer].(map[string]any)
	if at == nil {
		at = map[string]any{}
		body[outer] = at
	}
	at[inner] = value
}

// read reads what was typed into a field; nil if it is empty.
func (f field) read(typed, currency string) (any, error) {
	if typed == "" && f.Type != yes {
		if f.Due {
			return nil, errors.New("fill this in")
		}
		return nil, nil
	}
	switch f.Type {
	case tally:
		n, err := strconv.Atoi(typed)
		if err != nil || n < 0 {
			return nil, fmt.Errorf("%q is not a whole number; write 0 or more", typed)
		}
		return n, nil
	case yes:
		return typed != "", nil
	case measure:
		figure, unit, err := figureAndUnit(typed)
		return stock.Measure{Figure: figure, Unit: unit}, err
	case price:
		amount, said, _ := strings.Cut(typed, " ")
		if said = strings.TrimSpace(said); said != "" {
			currency = said
		}
		return stock.Price{Amount: amount, Currency: currency}, nil
	}
	return typed, nil
}

// figureAndUnit splits a measure as it was typed.
func figureAndUnit(typed string) (figure, unit string, err error) {
	at := strings.IndexFunc(typed, func(c rune) bool { return !strings.ContainsRune("0123456789.,-+", c) })
	if at <= 0 {
		return "", "", fmt.Errorf("%q has no unit; write it as in 4.2 kg", typed)
	}
	return typed[:at], strings.TrimSpace(typed[at:]), nil
}

// undo undoes entries, or undoes their undoing, all or none: entry (an id, one or several)
// and next (where to go then).
func (s *server) undo(r *request) error {
	if err := r.parse(); err != nil {
		return err
	}
	if len(r.Form["entry"]) == 0 {
		return refused("choose an entry to undo: none was sent")
	}
	var undoing []stock.Entry
	var ids []string
	for _, sent := range r.Form["entry"] {
		by, err := s.undoing(r, sent)
		if err != nil {
			return err
		}
		undoing, ids = append(undoing, by), append(ids, by.ID.String())
	}
	if err := s.appendAll(undoing); err != nil {
		return err
	}
	r.goTo(withQuery(local(r.FormValue("next")), "undid", strings.Join(ids, ".")))
	return nil
}

// undoing returns the entry that undoes another, named by its id.
func (s *server) undoing(r *request, sent string) (by stock.Entry, err error) {
	entry, err := stock.ParseID(sent)
	if err != nil {
		return by, refused("%v", err)
	}
	var head stock.ID // the entry, or the last one that undid it or its undoing
	var stands, held bool
	s.desk.Read(func(b *stock.Book) { head, stands, held = b.Head(entry) })
	switch {
	case !held:
		return by, notFound("the book has no entry " + entry.String())
	case head == entry && !stands && !s.isUndoing(entry):
		return by, refused("that entry is undone already")
	}
	return s.desk.Undoing(entry, s.writer(r.Context()))
}

// isUndoing reports whether an entry undoes another.
func (s *server) isUndoing(id stock.ID) bool {
	e, err := s.desk.Entry(id)
	return err == nil && e.Kind == "put right"
}

// withQuery adds a word to an address.
func withQuery(to, name, value string) string {
	u, err := url.Parse(to)
	if err != nil {
		return "/"
	}
	q := u.Query()
	q.Del("wrote")
	q.Del("undid")
	q.Set(name, value)
	u.RawQuery = q.Encode()
	return u.RequestURI() + fragment(u)
}

func fragment(u *url.URL) string {
	if u.Fragment == "" {
		return ""
	}
	return "#" + u.EscapedFragment()
}
