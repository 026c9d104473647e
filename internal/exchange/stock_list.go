package exchange

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"
	"sync"

	"eyeup/quantity"
	"eyeup/stock"
)

// StockList is a stock list as a grower has it, in whatever columns.
type StockList struct {
	Columns []ListColumn
	Rows    []stock.Holding
}

// ListColumn says what a column of a list was taken for.
type ListColumn struct {
	Header string
	For    string // a column of a stock list; empty where it was passed over
}

// otherWords are headers that growers use for the columns of a stock list.
var otherWords = map[string]string{
	"lot": "code", "label": "code", "name": "variety", "cultivar": "variety", "sort": "variety",
	"species": "kind", "crop": "kind", "type": "kind", "number": "count", "qty": "count", "quantity": "count",
	"how many": "count", "pieces": "count", "location": "place", "where": "place", "store": "place",
	"bed no": "bed", "bed number": "bed", "row no": "row", "row number": "row", "box": "crate", "bin": "crate", "packing": "pack", "packed in": "pack", "medium": "pack",
	"season": "timing", "color": "colour", "to plant": "plant", "wanted": "plant", "spare": "reserve",
	"notes": "note", "remark": "note", "remarks": "note", "comment": "note", "comments": "note",
}

// oneList holds that one list is read at a time: the bounds of memory are those of one.
var oneList sync.Mutex

// ReadStockList reads a stock list from a CSV file (columns divided by commas, semicolons or
// tabs) or an XLSX file (its first sheet). Headers are taken for the columns of a stock
// list by their names or what growers also call them; always says what the columns that
// are missing hold. Places are those that stock may stand in; with none, any will do.
// All faults are told together, as of a garden's folder.
func ReadStockList(name string, data []byte, always map[string]string, places []string) (*StockList, error) {
	oneList.Lock()
	defer oneList.Unlock()
	rows, err := cells(name, data)
	if err != nil {
		return nil, err
	}
	if len(rows) == 0 {
		return nil, Fault{File: name, What: "the table is empty; its first line names the columns, such as " + strings.Join(stockColumns, ",")}
	}
	if len(rows[0]) > mostColumns {
		return nil, tooLarge(name, 1, fmt.Sprintf("the table has %d columns", len(rows[0])), mostColumns)
	}
	t := &StockList{}
	taken := map[string]int{}
	for i, header := range rows[0] {
		c := ListColumn{Header: strings.TrimSpace(header), For: columnFor(header)}
		if _, twice := taken[c.For]; twice {
			c.For = ""
		}
		if c.For != "" {
			taken[c.For] = i
		}
		t.Columns = append(t.Columns, c)
	}
	if err := lacking(name, taken, always); err != nil {
		return nil, err
	}
	t.Rows, err = holdings(name, rows, taken, always, places)
	return t, err
}

// lacking tells the columns that a stock list can't do without and that nothing stands for.
func lacking(name string, taken map[string]int, always map[string]string) error {
	var faults Faults
	for _, column := range dueColumns {
		if _, there := taken[column]; !there && always[column] == "" {
			faults = append(faults, Fault{File: name, Line: 1, What: fmt.Sprintf("no column was taken for the %s; call one %s, or say it for all rows", column, column)})
		}
	}
	if len(faults) > 0 {
		return faults
	}
	return nil
}

// columnFor says which column of a stock list a header means; empty for none.
func columnFor(header string) string {
	word := strings.Join(strings.Fields(strings.ToLower(header)), " ")
	if slices.Contains(stockColumns, word) {
		return word
	}
	return otherWords[word]
}

// holdings lays the rows out in the columns of a stock list, and reads them as one.
func holdings(name string, rows [][]string, taken map[string]int, always map[string]string, places []string) ([]stock.Holding, error) {
	for column := range always {
		if !slices.Contains(stockColumns, column) {
			return nil, fmt.Errorf("%q is no column of a stock list; %s", column, notKnown("column", column, stockColumns))
		}
	}
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	for i, row := range rows {
		laid := make([]string, len(stockColumns))
		for c, column := range stockColumns {
			at, there := taken[column]
			switch {
			case i == 0:
				laid[c] = column // an empty column says nothing
			case there && at < len(row) && strings.TrimSpace(row[at]) != "":
				laid[c] = row[at]
			default:
				laid[c] = always[column]
			}
		}
		if err := w.Write(laid); err != nil {
			return nil, err
		}
	}
	w.Flush()
	return readLaid(name, out.Bytes(), places)
}

// readLaid reads rows in the columns of a stock list.
func readLaid(name string, laid []byte, places []string) ([]stock.Holding, error) {
	var faults Faults
	r := &stockReader{
		file: name, csv: csv.NewReader(bytes.NewReader(laid)), garden: &Garden{},
		faults: &faults, codes: map[string]stock.Holding{}, varieties: map[string]stock.Holding{},
	}
	for _, p := range places {
		r.garden.Places = append(r.garden.Places, Place{Name: p})
	}
	if !r.header() {
		return nil, faults
	}
	var all []stock.Holding
	for r.next() {
		if len(places) == 0 {
			r.garden.Places = []Place{{Name: strings.TrimSpace(r.row[r.columns["place"]])}}
		}
		h := r.holding()
		r.agree(h)
		all = append(all, h)
	}
	for i := range faults {
		faults[i].Column = 0 // of the table as laid out, which nobody has seen
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return all, nil
}

// cells reads the cells of a table, each row as long as it is.
func cells(name string, data []byte) ([][]string, error) {
	if bytes.HasPrefix(data, []byte("PK\x03\x04")) {
		return workbookCells(name, data)
	}
	if bytes.IndexByte(data, 0) >= 0 {
		return nil, Fault{File: name, What: "it is neither CSV nor XLSX; save the table as one of the two"}
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	if err := boundTable(name, data, divider(data)); err != nil {
		return nil, err
	}
	r := csv.NewReader(bytes.NewReader(data))
	r.Comma = divider(data)
	r.FieldsPerRecord = -1
	var rows [][]string
	for {
		row, err := r.Read()
		var wrong *csv.ParseError
		switch {
		case errors.Is(err, io.EOF):
			return rows, nil
		case errors.As(err, &wrong):
			return nil, Fault{File: name, Line: wrong.Line, Column: wrong.Column, What: fmt.Sprintf("%v; a field with dividers or quotes stands in double quotes, quotes within doubled", wrong.Err)}
		case err != nil:
			return nil, Fault{File: name, What: err.Error()}
		}
		if rows = append(rows, row); len(rows) > mostRows {
			return nil, Fault{File: name, What: fmt.Sprintf("there are more than %d rows; bring them in by parts", mostRows)}
		}
	}
}

// boundTable refuses a table of CSV that has too many cells, before one is read.
func boundTable(name string, data []byte, divider rune) error {
	if len(data) > mostPacked {
		return tooLarge(name, 0, fmt.Sprintf("the table has %d bytes", len(data)), mostPacked)
	}
	if n := bytes.Count(data, []byte(string(divider))) + bytes.Count(data, []byte("\n")); n > mostCells {
		return tooLarge(name, 0, fmt.Sprintf("the table has %d cells", n), mostCells)
	}
	return nil
}

// divider is the sign that divides the columns: the one that the first line has most of.
func divider(data []byte) rune {
	first, _, _ := bytes.Cut(data, []byte("\n"))
	best, most := ',', bytes.Count(first, []byte(","))
	for _, d := range []rune{';', '\t'} {
		if n := bytes.Count(first, []byte(string(d))); n > most {
			best, most = d, n
		}
	}
	return best
}

// Meant says, of each column that was passed over, what it may have been meant for.
func (t *StockList) Meant() map[string]string {
	all := map[string]string{}
	known := append(slices.Clone(stockColumns), slices.Sorted(maps.Keys(otherWords))...)
	for _, c := range t.Columns {
		if c.For == "" && c.Header != "" {
			if near, like := quantity.Nearest(c.Header, known); like {
				all[c.Header] = near
			}
		}
	}
	return all
}
