package stockbook

import (
	"fmt"
	"io"
	"strings"

	"eyeup/civil"
	"eyeup/internal/report"
	"eyeup/quantity"
	"eyeup/stock"
)

// LotsAnswer lists the stock: a row for each lot, spot and form.
type LotsAnswer []LotRow

// LotRow is how many of one lot stand at one spot.
type LotRow struct {
	Code    string     `json:"code"`
	Lot     string     `json:"lot"`
	Variety string     `json:"variety" jsonschema:"description=several names joined by or if it is not certain"`
	Kind    string     `json:"kind"`
	Form    stock.Form `json:"form"`
	Count   int        `json:"count"`
	Place   string     `json:"place"`
	Crate   string     `json:"crate,omitempty"`
	Bed     string     `json:"bed,omitempty"`
	Row     string     `json:"row,omitempty"`
	Pack    string     `json:"pack,omitempty"`
	Since   civil.Date `json:"since" jsonschema:"description=the first day any of it stood there"`
	Sick    string     `json:"sick,omitempty"`
	Mark    string     `json:"mark,omitempty" jsonschema:"description=keep or go"`
}

// Lots lists the stock lot by lot, in the order in which the lots were entered.
func (s *Book) Lots() *LotsAnswer {
	all := LotsAnswer{}
	s.Read(func(b *stock.Book) {
		for _, l := range b.Lots() {
			all = append(all, rowsOf(l)...)
		}
	})
	return &all
}

func rowsOf(l stock.Lot) []LotRow {
	var rows []LotRow
	for _, st := range l.Standing {
		rows = append(rows, LotRow{
			Code: string(l.Code), Lot: l.ID.String(), Variety: l.Name(), Kind: l.Kind, Form: st.Spot.Form, Count: st.Count,
			Place: st.Spot.Place, Crate: st.Spot.Crate, Bed: st.Spot.Bed, Row: st.Spot.Row, Pack: st.Pack, Since: st.Since,
			Sick: l.Sick, Mark: l.Mark,
		})
	}
	return rows
}

// Print writes a line for each row, then the total.
func (a LotsAnswer) Print(w io.Writer, _ quantity.System) {
	if len(a) == 0 {
		fmt.Fprintln(w, "This book has no stock yet; add the first lot with: eyeup book add")
		return
	}
	total := 0
	for _, r := range a {
		report.NewPage(w).Wrap(fmt.Sprintf("%-6s %5d %-9s %-26s ", r.Code, r.Count, r.Form, report.Clipped(r.Variety, 26)), r.where())
		total += r.Count
	}
	fmt.Fprintf(w, "%d in %d rows\n", total, len(a))
}

// where writes the spot, the packing, and whether the lot is sick or marked.
func (r LotRow) where() string {
	s := r.Place
	for _, p := range [][2]string{{" crate ", r.Crate}, {" bed ", r.Bed}, {" row ", r.Row}, {" in ", r.Pack}, {"; sick: ", r.Sick}, {"; ", r.Mark}} {
		if p[1] != "" {
			s += p[0] + p[1]
		}
	}
	return s
}

// LotAnswer is one lot: what is left of it and its history.
type LotAnswer struct {
	Code     string     `json:"code"`
	Lot      string     `json:"lot"`
	Variety  string     `json:"variety"`
	Kind     string     `json:"kind"`
	How      string     `json:"how" jsonschema:"description=how it came to be: taken in, divided …"`
	Born     civil.Date `json:"born"`
	Parents  []string   `json:"parents" jsonschema:"description=codes of the lots it came from"`
	Left     int        `json:"left"`
	Standing []LotRow   `json:"standing"`
	Life     []LifeLine `json:"life"`
}

// LifeLine is one thing that happened to a lot.
type LifeLine struct {
	On    civil.Date `json:"on"`
	Kind  string     `json:"kind"`
	Says  string     `json:"says"`
	Entry string     `json:"entry"`
}

// Lot returns a lot by its code or id.
func (s *Book) Lot(ref string) (a *LotAnswer, err error) {
	s.Read(func(b *stock.Book) {
		var l stock.Lot
		if l, err = b.Find(ref); err != nil {
			return
		}
		a = &LotAnswer{Code: string(l.Code), Lot: l.ID.String(), Variety: l.Name(), Kind: l.Kind, How: l.How, Born: l.Born,
			Left: l.Count(), Parents: []string{}, Standing: append([]LotRow{}, rowsOf(l)...), Life: []LifeLine{}}
		for _, p := range l.Parents {
			if parent, err := b.Find(p.String()); err == nil {
				a.Parents = append(a.Parents, string(parent.Code))
			}
		}
		life, _ := b.Life(ref) // never fails: Find found it
		for _, m := range life {
			a.Life = append(a.Life, LifeLine{m.On, m.Kind, m.Says, m.Entry.String()})
		}
	})
	return a, err
}

// Print writes the lot for a grower.
func (a *LotAnswer) Print(w io.Writer, units quantity.System) {
	p := report.NewPage(w)
	head := fmt.Sprintf("%s, %s, %s on %s", a.Variety, a.Kind, a.How, a.Born)
	if len(a.Parents) > 0 {
		head += " from " + strings.Join(a.Parents, ", ")
	}
	p.Wrap(a.Code+"  ", head)
	if len(a.Standing) == 0 {
		fmt.Fprintln(w, "Nothing is left of it.")
	}
	for _, r := range a.Standing {
		p.Wrap(fmt.Sprintf("%5d %-9s ", r.Count, r.Form), r.where())
	}
	p.Line("")
	for _, l := range a.Life {
		p.Wrap(fmt.Sprintf("%s  %-14s ", l.On, l.Kind), l.Says)
	}
}

// KinAnswer lists the lots related to a lot.
type KinAnswer []KinRow

// KinRow is a related lot, which may have caught the same disease.
type KinRow struct {
	Code     string    `json:"code"`
	Lot      string    `json:"lot"`
	Variety  string    `json:"variety"`
	Kind     string    `json:"kind"`
	Way      stock.Way `json:"way" jsonschema:"enum=down,enum=up,enum=side"`
	Why      []string  `json:"why"`
	Left     int       `json:"left"`
	Standing []LotRow  `json:"standing"`
}

// Kin lists the lots related to a lot: those that came from it (down), those it came from (up), and those
// that were in contact with it (side).
func (s *Book) Kin(ref string) (a *KinAnswer, err error) {
	all := KinAnswer{}
	s.Read(func(b *stock.Book) {
		var kin []stock.Kin
		if kin, err = b.Kin(ref); err != nil {
			return
		}
		for _, k := range kin {
			all = append(all, KinRow{string(k.Lot.Code), k.Lot.ID.String(), k.Lot.Name(), k.Lot.Kind, k.Way, k.Why, k.Lot.Count(),
				append([]LotRow{}, rowsOf(k.Lot)...)})
		}
	})
	return &all, err
}

// Print writes the related lots, grouped by how they are related, each with its reasons.
func (a KinAnswer) Print(w io.Writer, _ quantity.System) {
	if len(a) == 0 {
		fmt.Fprintln(w, "No other lot is related to it.")
		return
	}
	for _, way := range []struct {
		way   stock.Way
		title string
	}{{stock.Down, "Came from it"}, {stock.Up, "It came from"}, {stock.Side, "Was in contact with it"}} {
		title := way.title
		for _, k := range a {
			if k.Way != way.way {
				continue
			}
			if title != "" {
				fmt.Fprintln(w, title)
				title = ""
			}
			report.NewPage(w).Wrap("  "+k.Code+"  ", fmt.Sprintf("%s, %d left%s", k.Variety, k.Left, k.spots()))
			for _, why := range k.Why {
				report.NewPage(w).Wrap("         ", why)
			}
		}
	}
	fmt.Fprintln(w)
	report.NewPage(w).Wrap("", "Separate sick stock and destroy it. Clean knives and hands. Do not compost anything sick.")
}

// spots writes how many of the lot stand at each spot.
func (k KinRow) spots() string {
	s := ""
	for _, r := range k.Standing {
		s += fmt.Sprintf("; %d in %s", r.Count, r.where())
	}
	return s
}
