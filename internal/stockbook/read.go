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

// StockListAnswer is the content of a stock list, how its columns were read, and whether it was written
// into a book.
type StockListAnswer struct {
	File    string            `json:"file"`
	Columns []StockListColumn `json:"columns"`
	Rows    int               `json:"rows"`
	Count   int               `json:"count" jsonschema:"description=sum of the counts of all rows"`
	First   []LotRow          `json:"first" jsonschema:"description=the first rows as they were read"`
	Notices []string          `json:"notices"`
	Written int               `json:"written" jsonschema:"description=entries written into the book; 0 if the list was only read"`
	Book    string            `json:"book,omitempty"`

	holdings []stock.Holding
}

// StockListColumn is a column and how it was read.
type StockListColumn struct {
	Header string `json:"header"`
	For    string `json:"taken_for,omitempty" jsonschema:"description=absent if the column was ignored"`
	Meant  string `json:"meant,omitempty" jsonschema:"description=what it may have been meant for"`
}

// firstRows is how many rows a preview shows.
const firstRows = 5

// ReadStock reads a stock list, CSV or XLSX. always gives the values of columns that the list lacks. s is
// the book whose places the stock may stand in; it may be nil.
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

// Write writes the list into a book, all or none, and takes in each row as a lot on a day. Writing the
// same list again on the same day adds nothing.
func (a *StockListAnswer) Write(s *Book, on civil.Date) error {
	var entries []stock.Entry
	for n, one := range StockDrafts(a.holdings) {
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
		e.ID[6], e.ID[8] = 0x80|e.ID[6]&0x0f, 0x80|e.ID[8]&0x3f // RFC 9562: version 8, whose content the writer defines
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

// Print writes how the columns were read, the first rows, and whether they were written into a book.
func (a *StockListAnswer) Print(w io.Writer, _ quantity.System) {
	fmt.Fprintf(w, "%s: %d rows, %d in all\n", a.File, a.Rows, a.Count)
	for _, c := range a.Columns {
		switch {
		case c.For == c.Header:
			fmt.Fprintf(w, "  %s\n", c.Header)
		case c.For != "":
			fmt.Fprintf(w, "  %s: read as %s\n", c.Header, c.For)
		case c.Meant != "":
			fmt.Fprintf(w, "  %s: ignored; is %s meant? then rename the column\n", c.Header, c.Meant)
		default:
			fmt.Fprintf(w, "  %s: ignored\n", c.Header)
		}
	}
	for _, r := range a.First {
		report.NewPage(w).Wrap(fmt.Sprintf("%-6s %5d %-9s %-26s ", r.Code, r.Count, r.Form, report.Clipped(r.Variety, 26)), r.where())
	}
	if a.Rows > len(a.First) {
		fmt.Fprintf(w, "and %d more rows\n", a.Rows-len(a.First))
	}
	for _, n := range a.Notices {
		report.NewPage(w).Wrap("note: ", n)
	}
	if a.Book == "" {
		fmt.Fprintln(w, "Nothing was written. To write the list into a book, add --book FILE.")
		return
	}
	fmt.Fprintf(w, "Written into %s: %d entries.\n", a.Book, a.Written)
}
