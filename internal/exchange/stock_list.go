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

// StockList is a stock list read from a grower's own table.
type StockList struct {
	Columns []ListColumn
	Rows    []stock.Holding
}

// ListColumn is how a column of a table was understood.
type ListColumn struct {
	Header string
	For    string // a column of a stock list; empty if it was ignored
}

// otherWords maps headers that growers use to the columns of a stock list.
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

// ReadStockList reads a stock list from a CSV file (separated by commas, semicolons or tabs)
// or the first sheet of an XLSX file. Columns are found by their names or by other names that
// growers use; always gives the values of columns that are missing. places lists the allowed
// places; empty allows any. All errors are returned together, as Faults.
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

// lacking reports the required columns that the table lacks.
func lacking(name string, taken map[string]int, always map[string]string) error {
	var faults Faults
	for _, column := range dueColumns {
		if _, there := taken[column]; !there && always[column] == "" {
			faults = append(faults, Fault{File: name, Line: 1, What: fmt.Sprintf("there is no column for the %s; name one %s, or give one value for all rows", column, column)})
		}
	}
	if len(faults) > 0 {
		return faults
	}
	return nil
}

// columnFor returns the column of a stock list that a header means; empty for none.
func columnFor(header string) string {
	word := strings.Join(strings.Fields(strings.ToLower(header)), " ")
	if slices.Contains(stockColumns, word) {
		return word
	}
	return otherWords[word]
}

// holdings arranges the rows in the columns of a stock list, and reads them.
func holdings(name string, rows [][]string, taken map[string]int, always map[string]string, places []string) ([]stock.Holding, error) {
	for column := range always {
		if !slices.Contains(stockColumns, column) {
			return nil, fmt.Errorf("%q is not a column of a stock list; %s", column, notKnown("column", column, stockColumns))
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
				laid[c] = column // an empty column is ignored
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
		faults[i].Column = 0 // columns of the rearranged table mean nothing to the grower
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return all, nil
}

// cells reads the cells of a table; rows may differ in length.
func cells(name string, data []byte) ([][]string, error) {
	if bytes.HasPrefix(data, []byte("PK\x03\x04")) {
		return workbookCells(name, data)
	}
	if bytes.IndexByte(data, 0) >= 0 {
		return nil, Fault{File: name, What: "it is neither CSV nor XLSX; save the table as one of these"}
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
			return nil, Fault{File: name, Line: wrong.Line, Column: wrong.Column, What: fmt.Sprintf("%v; put fields with separators or quotes in double quotes, and double the quotes inside", wrong.Err)}
		case err != nil:
			return nil, Fault{File: name, What: err.Error()}
		}
		if rows = append(rows, row); len(rows) > mostRows {
			return nil, Fault{File: name, What: fmt.Sprintf("there are more than %d rows; import them in parts", mostRows)}
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

// divider returns the separator of the columns: the one most frequent in the first line.
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
