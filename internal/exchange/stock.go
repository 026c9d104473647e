package exchange

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"slices"
	"strings"
	"unicode/utf8"

	"eyeup/quantity"
	"eyeup/stock"
)

// stockColumns are the columns of a stock list, in the order in which it is written.
var stockColumns = []string{
	"code", "variety", "kind", "form", "count", "place", "crate", "bed", "row", "pack",
	"timing", "colour", "height", "plant", "reserve", "note",
}

// dueColumns are the required columns.
var dueColumns = []string{"variety", "kind", "form", "count", "place"}

// The plausible range of each number in a stock list.
const (
	mostCount = 1000000
	tallest   = 20 * quantity.Metre
	mostRows  = 100000

	mostWrong = 1000 // faults, after which a list is read no further
)

// stockReader reads a stock list row by row.
type stockReader struct {
	file    string
	csv     *csv.Reader
	columns map[string]int // where each column stands
	row     []string
	garden  *Garden
	faults  *Faults

	codes     map[string]stock.Holding // the first row of each code
	varieties map[string]stock.Holding // the first row of each variety
}

// readStock reads the folder's stock list. An error that leaves nothing to read is returned at
// once, others are collected.
func (g *Garden) readStock(fsys fs.FS, name string, faults *Faults) error {
	data, err := readFile(fsys, name, stockFile)
	if err != nil {
		return err
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	r := &stockReader{
		file: path.Join(name, stockFile), csv: csv.NewReader(bytes.NewReader(data)),
		garden: g, faults: faults, codes: map[string]stock.Holding{}, varieties: map[string]stock.Holding{},
	}
	if err := boundTable(r.file, data, ','); err != nil {
		return err
	}
	if !r.isText(data) || !r.header() {
		return nil
	}
	for r.next() {
		h := r.holding()
		r.agree(h)
		g.Stock = append(g.Stock, h)
		if len(g.Stock) > mostRows {
			r.refuse(spot{h.Line, 0}, "there are more than %d rows; keep a garden that large in a book, not a folder", mostRows)
			break
		}
	}
	return nil
}

func (r *stockReader) refuse(at spot, format string, args ...any) {
	*r.faults = append(*r.faults, Fault{File: r.file, Line: at.line, Column: at.column, What: fmt.Sprintf(format, args...)})
}

// isText reports whether the file is UTF-8, and reports the first line that is not.
func (r *stockReader) isText(data []byte) bool {
	if utf8.Valid(data) {
		return true
	}
	for i, line := range bytes.Split(data, []byte("\n")) {
		if !utf8.Valid(line) {
			r.refuse(spot{i + 1, 0}, "the line is not in UTF-8; save the table again as CSV in UTF-8")
			break
		}
	}
	return false
}

// next reads a row; it stops at the end, at what is no table any more, and where most is wrong.
func (r *stockReader) next() bool {
	if len(*r.faults) >= mostWrong {
		return false
	}
	var err error
	r.row, err = r.csv.Read()
	var wrong *csv.ParseError
	switch {
	case err == nil:
		return true
	case errors.Is(err, io.EOF):
		return false
	case errors.As(err, &wrong) && errors.Is(wrong.Err, csv.ErrFieldCount):
		r.refuse(spot{wrong.Line, 0}, "the row has %d fields, the header %d; put fields with commas in double quotes", len(r.row), len(r.columns))
	case errors.As(err, &wrong):
		r.refuse(spot{wrong.Line, wrong.Column}, "%v; put fields with quotes or commas in double quotes, and double the quotes inside", wrong.Err)
	default:
		r.refuse(spot{}, "%v", err)
	}
	return false
}

// header reads the first row, and reports whether reading can go on.
func (r *stockReader) header() bool {
	if !r.next() {
		if len(*r.faults) == 0 {
			r.refuse(spot{}, "the file is empty; its first line is %s", strings.Join(stockColumns, ","))
		}
		return false
	}
	if len(r.row) == 1 && strings.ContainsAny(r.row[0], ";\t") {
		r.refuse(spot{1, 0}, "the columns are not separated by commas; save the table again as CSV with commas")
		return false
	}
	good := true
	r.columns = map[string]int{}
	for i, column := range r.row {
		column = strings.TrimSpace(column)
		at := r.spot(i)
		if _, twice := r.columns[column]; twice {
			r.refuse(at, "the column %q appears twice; remove one", column)
			good = false
		}
		if !slices.Contains(stockColumns, column) {
			r.refuse(at, "%s", notKnown("column", column, stockColumns))
			good = false
		}
		r.columns[column] = i
	}
	for _, column := range dueColumns {
		if _, there := r.columns[column]; !there {
			r.refuse(spot{1, 0}, "the column %q is missing; the first line names the columns, such as %s", column, strings.Join(stockColumns, ","))
			good = false
		}
	}
	return good
}
