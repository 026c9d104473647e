package paper

import (
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"maps"
	"slices"

	"eyeup/civil"
	"eyeup/internal/report"
	"eyeup/internal/sheet"
	"eyeup/internal/stockbook"
	"eyeup/stock"
)

// Potting is a day on which the book says that pots or trays were filled.
type Potting struct {
	On    civil.Date
	Pots  int
	Trays int // of seedlings or cuttings, one lot in each
	Sorts []string
}

// filled is the pots, or the tray, that one entry filled.
type filled struct {
	entry stock.ID
	kind  string
	lot   stock.Lot
	on    civil.Date
	said  pottedBody
}

// pottedBody is the body of an entry that fills pots or trays.
type pottedBody struct {
	Count int `json:"count"`
	To    struct {
		Place string     `json:"place"`
		Form  stock.Form `json:"form"`
	} `json:"to"`
}

// inTray reports whether the plants share a tray: seedlings or cuttings.
func (f filled) inTray() bool { return f.said.To.Form == stock.Tray || f.kind == "cuttings taken" }

// labels returns how many labels are needed: one for each pot or tray.
func (f filled) labels() int {
	if f.inTray() {
		return 1
	}
	return f.said.Count
}

// pottingKinds are the kinds of entries that fill pots or trays. The value is whether the entry makes a
// new lot.
var pottingKinds = map[string]bool{"started": false, "potted up": false, "sown": true, "cuttings taken": true}

// IsPotting reports whether entries of a kind fill pots or trays.
func IsPotting(kind string) bool {
	_, is := pottingKinds[kind]
	return is
}

// Pottings lists the days, from since on, on which pots or trays were filled. The latest comes first.
func Pottings(book *stockbook.Book, since civil.Date) ([]Potting, error) {
	all, err := fillings(book, since)
	if err != nil {
		return nil, err
	}
	var days []Potting
	for _, f := range all {
		if n := len(days); n == 0 || days[n-1].On != f.on {
			days = append(days, Potting{On: f.on})
		}
		day := &days[len(days)-1]
		if name := f.lot.Name(); !slices.Contains(day.Sorts, name) {
			day.Sorts = append(day.Sorts, name)
		}
		if f.inTray() {
			day.Trays++
		} else {
			day.Pots += f.said.Count
		}
	}
	return days, nil
}

// fillings finds the entries that filled pots or trays from a day on, the latest first.
func fillings(book *stockbook.Book, since civil.Date) ([]filled, error) {
	var found []filled
	var fault error
	book.Read(func(b *stock.Book) {
		for _, lot := range b.Lots() {
			if !slices.ContainsFunc(slices.Collect(maps.Keys(pottingKinds)), func(kind string) bool {
				last := lot.Last(kind)
				return !last.IsZero() && !last.Before(since)
			}) {
				continue
			}
			life, err := b.Life(lot.ID.String())
			if err != nil {
				fault = cmp.Or(fault, err)
			}
			found = append(found, fillingsOf(lot, life, since)...)
		}
	})
	if fault != nil {
		return nil, fault
	}
	for i := range found {
		if err := readFilling(book, &found[i]); err != nil {
			return nil, err
		}
	}
	slices.SortStableFunc(found, func(a, b filled) int {
		return cmp.Or(int(b.on.Sub(a.on)), cmp.Compare(a.lot.Name(), b.lot.Name()))
	})
	return found, nil
}

// fillingsOf picks the fillings from the life of one lot. Where an entry makes a new lot, only the new
// lot counts: it is the one in the pots.
func fillingsOf(lot stock.Lot, life []stock.Mention, since civil.Date) []filled {
	var found []filled
	for _, m := range life {
		makes, fills := pottingKinds[m.Kind]
		again := len(found) > 0 && found[len(found)-1].entry == m.Entry // an entry is mentioned for both from and to
		if fills && !again && !m.On.Before(since) && (!makes || lot.How == m.Kind && lot.Born == m.On) {
			found = append(found, filled{entry: m.Entry, kind: m.Kind, lot: lot, on: m.On})
		}
	}
	return found
}

// readFilling reads the entry of a filling with its last correction.
func readFilling(s *stockbook.Book, f *filled) error {
	head := f.entry
	s.Read(func(b *stock.Book) {
		if last, _, held := b.Head(f.entry); held {
			head = last
		}
	})
	e, err := s.Entry(head)
	if err != nil {
		return err
	}
	body := e.Body
	if e.Kind == stockbook.PutRight {
		right, err := stockbook.ReadPutRight(e)
		if err != nil {
			return err
		}
		body = []byte(right.Body)
	}
	if err := json.Unmarshal(body, &f.said); err != nil {
		return fmt.Errorf("the entry %s can't be read: %w", head, err)
	}
	return nil
}

// PottedOn writes labels for the pots and trays that were filled on a day. It fails where book is nil, and
// where nothing was filled that day.
func PottedOn(book *stockbook.Book, day civil.Date, q LabelsQuestion, today civil.Date, w io.Writer) (*report.WrittenAnswer, error) {
	if book == nil {
		return nil, errors.New("a folder does not record what was potted and when; name a book, or give --session for the pots of the plan")
	}
	return PottedLabels(book, func(_ stock.ID, on civil.Date) bool { return on == day }, day, q, today, w)
}

// PottedLabels writes a label for each pot and tray that the chosen entries filled. Entries before since
// are not looked at. It fails where there are none.
func PottedLabels(book *stockbook.Book, chosen func(entry stock.ID, on civil.Date) bool, since civil.Date, q LabelsQuestion, today civil.Date, w io.Writer) (*report.WrittenAnswer, error) {
	all, err := fillings(book, since)
	if err != nil {
		return nil, err
	}
	var labels []sheet.Label
	for _, f := range all {
		if !chosen(f.entry, f.on) {
			continue
		}
		for n := range f.labels() {
			labels = append(labels, f.label(n+1))
		}
	}
	if len(labels) == 0 {
		return nil, fmt.Errorf("no pot or tray was filled then; first write into the book what was started, sown or potted up, then print its labels")
	}
	told, err := sheet.Labels(w, q.job(labels, today))
	if err != nil {
		return nil, err
	}
	return written("labels of pots", len(labels), "labels", told), nil
}

func (f filled) label(n int) sheet.Label {
	l := sheet.Label{Code: string(f.lot.Code), Variety: f.lot.Name(), Kind: f.lot.Kind, Form: string(f.said.To.Form), Colour: f.lot.Variety.Colour, Place: f.said.To.Place, Date: f.on}
	switch {
	case f.inTray():
		l.Note = fmt.Sprintf("%d in it", f.said.Count)
	case f.said.Count > 1:
		l.Note = fmt.Sprintf("%d of %d", n, f.said.Count)
	}
	return l
}
