package stockbook

import (
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"io"

	"eyeup/civil"
	"eyeup/internal/exchange"
	"eyeup/internal/report"
	"eyeup/quantity"
	"eyeup/stock"
)

// StockListAnswer is what a stock list holds, what its columns were taken for, and
// whether it was written into a book.
type StockListAnswer struct {
	File    string            `json:"file"`
	Columns []StockListColumn `json:"columns"`
	Rows    int               `json:"rows"`
	Count   int               `json:"count" jsonschema:"description=individuals of all rows"`
	First   []LotRow          `json:"first" jsonschema:"description=the first rows as they were read"`
	Notices []string          `json:"notices"`
	Written int               `json:"written" jsonschema:"description=entries written into the book; 0 where it was only looked through"`
	Book    string            `json:"book,omitempty"`

	holdings []stock.Holding
}

// StockListColumn is a column and what it was taken for.
type StockListColumn struct {
	Header string `json:"header"`
	For    string `json:"taken_for,omitempty" jsonschema:"description=nothing where it was passed over"`
	Meant  string `json:"meant,omitempty" jsonschema:"description=what it may have been meant for"`
}

// firstRows is how many rows a preview shows.
const firstRows = 5

// ReadStock looks through a stock list, CSV or XLSX. always says what the columns that
// are missing hold; s, which may be nil, is the book whose places stock may stand in.
func ReadStock(name string, data []byte, always map[string]string, s *Book) (*StockListAnswer, error) {
	var places []string
	if s != nil {
		s.Read(func(b *stock.Book) {
			for _, p := range b.Described("place") {
				places = append(places, p.Name)
			}
		})
	}
	list, err := exchange.ReadStockList(name, data, always, places)
	if err != nil {
		return nil, err
	}
	a := &StockListAnswer{File: name, Rows: len(list.Rows), Columns: []StockListColumn{}, First: []LotRow{}, Notices: []string{}, holdings: list.Rows}
	meant := list.Meant()
	for _, c := range list.Columns {
		a.Columns = append(a.Columns, StockListColumn{c.Header, c.For, meant[c.Header]})
	}
	for i, h := range list.Rows {
		a.Count += h.Count
		if i < firstRows {
			a.First = append(a.First, LotRow{Code: h.Code, Variety: h.Variety.Name, Kind: h.Variety.Kind, Form: h.Form, Count: h.Count, Place: h.Place, Crate: h.Crate, Bed: h.Bed, Row: h.Row, Pack: h.Pack})
		}
	}
	return a, nil
}

// Write writes the list into a book in one go, each row taken in as a lot on a day: all
// of it or nothing. The same list written again on the same day counts once.
func (a *StockListAnswer) Write(s *Book, on civil.Date) error {
	var entries []stock.Entry
	for n, one := range StockSaid(a.holdings) {
		body, err := json.Marshal(one.Body)
		if err != nil {
			return err
		}
		e, err := s.NewEntry(one.Kind, body)
		if err != nil {
			return err
		}
		e.On = on
		sum := sha256.Sum256(fmt.Appendf(nil, "%d %s %s %s", n, one.Kind, on, e.Body))
		copy(e.ID[:], sum[:])
		e.ID[6], e.ID[8] = 0x80|e.ID[6]&0x0f, 0x80|e.ID[8]&0x3f // RFC 9562: version 8, of one's own making
		entries = append(entries, e)
	}
	added, err := s.Append(entries...)
	if err != nil {
		return err
	}
	a.Book, a.Written = s.Kept(), len(added)
	for _, one := range added {
		a.Notices = append(a.Notices, one.Notices...)
	}
	return nil
}

// Print writes what was taken for what, the first rows, and what was done.
func (a *StockListAnswer) Print(w io.Writer, _ quantity.System) {
	fmt.Fprintf(w, "%s: %d rows, %d in all\n", a.File, a.Rows, a.Count)
	for _, c := range a.Columns {
		switch {
		case c.For == c.Header:
			fmt.Fprintf(w, "  %s\n", c.Header)
		case c.For != "":
			fmt.Fprintf(w, "  %s: taken for %s\n", c.Header, c.For)
		case c.Meant != "":
			fmt.Fprintf(w, "  %s: passed over; is %s meant? call it so\n", c.Header, c.Meant)
		default:
			fmt.Fprintf(w, "  %s: passed over\n", c.Header)
		}
	}
	for _, r := range a.First {
		report.NewPage(w).Wrap(fmt.Sprintf("%-6s %5d %-9s %-26s ", r.Code, r.Count, r.Form, report.Clipped(r.Variety, 26)), r.where())
	}
	if a.Rows > len(a.First) {
		fmt.Fprintf(w, "and %d rows more\n", a.Rows-len(a.First))
	}
	for _, n := range a.Notices {
		report.NewPage(w).Wrap("note: ", n)
	}
	if a.Book == "" {
		fmt.Fprintln(w, "Nothing was written; to write it into a book: --book FILE")
		return
	}
	fmt.Fprintf(w, "Written into %s: %d entries.\n", a.Book, a.Written)
}
