package exchange

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"eyeup/quantity"
	"eyeup/stock"
)

// stockColumns are the columns of a stock list, in the order in which it is written.
var stockColumns = []string{
	"code", "variety", "kind", "form", "count", "place", "crate", "pack",
	"timing", "colour", "height", "plant", "reserve", "note",
}

// dueColumns are those without which a stock list says too little.
var dueColumns = []string{"variety", "kind", "form", "count", "place"}

// Bounds of plausibility for stock.
const (
	mostCount = 1000000
	tallest   = 20 * quantity.Metre
	mostRows  = 100000
)

var colourCode = regexp.MustCompile(`^#[0-9a-fA-F]{6}$`)

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

// readStock reads the stock list of the folder. A fault that leaves nothing to read is
// returned at once, others are gathered.
func (g *Garden) readStock(fsys fs.FS, name string, faults *Faults) error {
	data, err := readFile(fsys, name, stockFile)
	if err != nil {
		return err
	}
	r := &stockReader{
		file: path.Join(name, stockFile), csv: csv.NewReader(bytes.NewReader(bytes.TrimPrefix(data, []byte("\ufeff")))),
		garden: g, faults: faults, codes: map[string]stock.Holding{}, varieties: map[string]stock.Holding{},
	}
	if !r.header() {
		return nil
	}
	for r.next() {
		h := r.holding()
		r.agree(h)
		g.Stock = append(g.Stock, h)
		if len(g.Stock) > mostRows {
			r.refuse(spot{h.Line, 0}, "there are more than %d rows; a book holds that many lots, a folder doesn't", mostRows)
			break
		}
	}
	return nil
}

func (r *stockReader) refuse(at spot, format string, args ...any) {
	*r.faults = append(*r.faults, Fault{r.file, at.line, at.column, fmt.Sprintf(format, args...)})
}

// next reads a row; it stops at the end, and at what is no table any more.
func (r *stockReader) next() bool {
	var err error
	r.row, err = r.csv.Read()
	var wrong *csv.ParseError
	switch {
	case err == nil:
		return true
	case errors.Is(err, io.EOF):
		return false
	case errors.As(err, &wrong) && errors.Is(wrong.Err, csv.ErrFieldCount):
		r.refuse(spot{wrong.Line, 0}, "the row has %d fields, the header %d; put what holds a comma in double quotes", len(r.row), len(r.columns))
	case errors.As(err, &wrong):
		r.refuse(spot{wrong.Line, wrong.Column}, "%v; a field with quotes or commas stands in double quotes, quotes within doubled", wrong.Err)
	default:
		r.refuse(spot{}, "%v", err)
	}
	return false
}

// header reads the first row, and reports whether there is anything to go on with.
func (r *stockReader) header() bool {
	if !r.next() {
		if len(*r.faults) == 0 {
			r.refuse(spot{}, "the file is empty; its first line is %s", strings.Join(stockColumns, ","))
		}
		return false
	}
	good := true
	r.columns = map[string]int{}
	for i, column := range r.row {
		column = strings.TrimSpace(column)
		at := r.spot(i)
		if _, twice := r.columns[column]; twice {
			r.refuse(at, "the column %q stands twice; leave one out", column)
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

func (r *stockReader) spot(field int) spot {
	line, column := r.csv.FieldPos(field)
	return spot{line, column}
}

// at returns where a column of the row stands.
func (r *stockReader) at(column string) spot {
	i, there := r.columns[column]
	if !there {
		return r.spot(0)
	}
	return r.spot(i)
}

// field returns a column of the row without the spaces round it; empty where there is none.
func (r *stockReader) field(column string) string {
	i, there := r.columns[column]
	if !there {
		return ""
	}
	return strings.TrimSpace(r.row[i])
}

func (r *stockReader) holding() stock.Holding {
	h := stock.Holding{
		Variety: stock.Variety{Name: r.text("variety"), Kind: r.text("kind")},
		Place:   r.text("place"), Crate: r.field("crate"), Pack: r.field("pack"), Note: r.field("note"),
		Line: r.at("variety").line,
	}
	h.Code = r.code()
	h.Form = stock.Form(r.choice("form", stock.Clump, stock.Division, stock.Corm, stock.Seed, stock.Cutting, stock.Tray, stock.Pot, stock.Plant))
	h.Variety.Timing = stock.Timing(r.timing())
	h.Variety.Colour = r.colour()
	h.Variety.Height = r.height()
	h.Count = r.count("count", 1)
	h.Plant = r.count("plant", 0)
	h.Reserve = r.count("reserve", 0)
	if _, known := r.garden.Place(h.Place); h.Place != "" && !known {
		names := make([]string, len(r.garden.Places))
		for i, p := range r.garden.Places {
			names[i] = p.Name
		}
		r.refuse(r.at("place"), "%s", notKnown("place", h.Place, names)+"; "+gardenFile+" names the places")
	}
	return h
}

// text returns a field that must not be empty.
func (r *stockReader) text(column string) string {
	s := r.field(column)
	if s == "" {
		r.refuse(r.at(column), "the %s is missing", column)
	}
	return s
}

func (r *stockReader) code() string {
	typed := r.field("code")
	if typed == "" {
		return ""
	}
	code, err := stock.ParseCode(typed)
	if err != nil {
		r.refuse(r.at("code"), "%v", err)
		return ""
	}
	return string(code)
}

func (r *stockReader) choice(column string, known ...stock.Form) string {
	word := r.text(column)
	words := make([]string, len(known))
	for i, k := range known {
		words[i] = string(k)
	}
	if word != "" && !slices.Contains(words, word) {
		r.refuse(r.at(column), "%s", notKnown(column, word, words))
	}
	return word
}

func (r *stockReader) timing() string {
	word := r.field("timing")
	known := []string{string(stock.Early), string(stock.Mid), string(stock.Late)}
	if word != "" && !slices.Contains(known, word) {
		r.refuse(r.at("timing"), "%s", notKnown("timing", word, known)+"; leave it empty where it is not known")
	}
	return word
}

func (r *stockReader) colour() string {
	code := r.field("colour")
	if code != "" && !colourCode.MatchString(code) {
		r.refuse(r.at("colour"), "%q is not a colour; write it as # and six of 0-9 and a-f, such as #b3261e, or leave it empty", code)
	}
	return strings.ToLower(code)
}

func (r *stockReader) height() quantity.Length {
	typed := r.field("height")
	if typed == "" {
		return 0
	}
	l, err := quantity.ParseLength(typed)
	switch {
	case err != nil:
		r.refuse(r.at("height"), "height: %v", err)
	case l <= 0 || l > tallest:
		r.refuse(r.at("height"), "a plant %s high can't be meant; check the number and its unit", r.garden.System.Length(l))
	}
	return l
}

// count returns a whole number from least up. An empty field is 0 where that is allowed.
func (r *stockReader) count(column string, least int) int {
	typed := r.field(column)
	if typed == "" && least == 0 {
		return 0
	}
	n, err := strconv.Atoi(typed)
	if err != nil || n < least || n > mostCount {
		r.refuse(r.at(column), "%s: a whole number from %d to %d is due here, not %q", column, least, mostCount, typed)
		return 0
	}
	return n
}

// agree refuses a row that says otherwise than an earlier one of the same lot or variety.
func (r *stockReader) agree(h stock.Holding) {
	if h.Code != "" {
		first, again := r.codes[h.Code]
		if again && (first.Variety.Name != h.Variety.Name || first.Variety.Kind != h.Variety.Kind) {
			r.refuse(r.at("code"), "the code %s is that of %s in line %d; every lot has its own", h.Code, first.Variety.Name, first.Line)
		}
		if !again {
			r.codes[h.Code] = h
		}
	}
	key := h.Variety.Kind + "\x00" + h.Variety.Name
	first, again := r.varieties[key]
	if !again {
		r.varieties[key] = h
		return
	}
	r.same("timing", string(h.Variety.Timing), string(first.Variety.Timing), first.Line)
	r.same("colour", h.Variety.Colour, first.Variety.Colour, first.Line)
	r.same("height", r.garden.System.Length(h.Variety.Height), r.garden.System.Length(first.Variety.Height), first.Line)
}

func (r *stockReader) same(column, here, there string, line int) {
	if r.field(column) != "" && here != there {
		r.refuse(r.at(column), "the %s is %s, but line %d says otherwise of the same variety; they must agree", column, here, line)
	}
}
