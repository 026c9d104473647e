package exchange

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"os"
	"reflect"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/thedatashed/xlsxreader"
	"pgregory.net/rapid"

	"eyeup/civil"
	"eyeup/stock"
)

func aTable() Table {
	return Table{Name: "lots", Says: "What there is.",
		Fields: []Field{{"name", Text, "", "its name"}, {"count", Whole, "plants", ""}, {"area", Number, "m2", ""}, {"day", Day, "", ""}, {"keep", YesNo, "", ""}},
		Rows: [][]any{
			{"Tallow, \"Bell\"\nof Ünterwell", 14, 1.74, civil.MustOn(2027, time.April, 12), true},
			{"=1+1", -3, -0.5, civil.Date{}, false},
			{"'=1", nil, math.NaN(), nil, nil},
			{"+49", 0, 1e-7, civil.MustOn(1900, time.March, 1), true},
		}}
}

// TestCSV reads the table back by Go's reader of RFC 4180, and asks that no cell of text
// begins like a formula.
func TestCSV(t *testing.T) {
	var b bytes.Buffer
	if err := WriteCSV(&b, aTable()); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	want := [][]string{
		{"name", "count", "area", "day", "keep"},
		{"Tallow, \"Bell\"\nof Ünterwell", "14", "1.74", "2027-04-12", "true"},
		{"'=1+1", "-3", "-0.5", "", "false"}, {"''=1", "", "", "", ""}, {"'+49", "0", "0.0000001", "1900-03-01", "true"},
	}
	if !reflect.DeepEqual(rows, want) {
		t.Errorf("read %q", rows)
	}
}

// TestDefused gives every text back, and no defused text begins as a formula does.
func TestDefused(t *testing.T) {
	for text, want := range map[string]string{"=1": "'=1", "+1": "'+1", "-1": "'-1", "@a": "'@a", "\ta": "'\ta", "\ra": "'\ra", "'=1": "''=1", "'a": "'a", "a=1": "a=1", "": ""} {
		if got := Defused(text); got != want {
			t.Errorf("%q is written %q, want %q", text, got, want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(rapid.String(), rapid.StringMatching(`'{0,3}[=+@\t\r-]?[a-z0-9()]{0,5}`)).Draw(t, "text")
		safe := Defused(text)
		if Armed(safe) != text {
			t.Fatalf("%q came back as %q", text, Armed(safe))
		}
		if safe != "" && strings.ContainsRune("=+-@\t\r", rune(safe[0])) {
			t.Fatalf("%q would be reckoned out", safe)
		}
	})
}

// TestXLSX reads the workbook by another library: cells, days and numbers as they were, and
// formulas as the text they are.
func TestXLSX(t *testing.T) {
	var b bytes.Buffer
	if err := WriteXLSX(&b, []Table{aTable()}); err != nil {
		t.Fatal(err)
	}
	book, err := xlsxreader.NewReader(b.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(book.Sheets, []string{"lots", "contents"}) {
		t.Errorf("sheets %v", book.Sheets)
	}
	var got [][]string
	for row := range book.ReadRows("lots") {
		if row.Error != nil {
			t.Fatal(row.Error)
		}
		line := make([]string, 5)
		for _, c := range row.Cells {
			line[c.ColumnIndex()] = c.Value
			if c.Type == xlsxreader.TypeNumerical && c.ColumnIndex() == 0 {
				t.Errorf("%q was taken for a number", c.Value)
			}
		}
		got = append(got, line)
	}
	want := [][]string{
		{"name", "count", "area", "day", "keep"},
		{"Tallow, \"Bell\"\nof Ünterwell", "14", "1.74", "2027-04-12", "1"},
		{"=1+1", "-3", "-0.5", "", "0"}, {"''=1", "", "", "", ""}, {"+49", "0", "0.0000001", "1900-03-01", "1"},
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("read %q\nwant %q", got, want)
	}
}

// TestPackage holds datapackage.json to the standard's own schema, and its fields to the
// heads of the tables. Source of the schema: npm datapackage 1.1.10 (MIT), profile
// tabular-data-package of Frictionless Data 1.0.
func TestPackage(t *testing.T) {
	files := fstest.MapFS{}
	if err := WritePackage(Package{Garden: "Tamsel Hollow", Written: civil.MustOn(2027, time.January, 15), Tables: []Table{aTable(), StockTable(nil)}}, intoMap(files)); err != nil {
		t.Fatal(err)
	}
	profile, err := os.ReadFile("testdata/tabular-data-package.json")
	if err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(profile))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	if err := c.AddResource("profile.json", doc); err != nil {
		t.Fatal(err)
	}
	schema, err := c.Compile("profile.json")
	if err != nil {
		t.Fatal(err)
	}
	described, err := jsonschema.UnmarshalJSON(bytes.NewReader(files["datapackage.json"].Data))
	if err != nil {
		t.Fatal(err)
	}
	if err := schema.Validate(described); err != nil {
		t.Error(err)
	}
	for _, r := range described.(map[string]any)["resources"].([]any) {
		r := r.(map[string]any)
		head, err := csv.NewReader(bytes.NewReader(files[r["path"].(string)].Data)).Read()
		if err != nil {
			t.Fatal(err)
		}
		for i, f := range r["schema"].(map[string]any)["fields"].([]any) {
			if f.(map[string]any)["name"] != head[i] {
				t.Errorf("%s: field %v, column %s", r["path"], f, head[i])
			}
		}
	}
}

// intoMap lets files be written into a map.
func intoMap(files fstest.MapFS) func(string) (io.WriteCloser, error) {
	return func(name string) (io.WriteCloser, error) {
		return &mapFile{files: files, name: name}, nil
	}
}

type mapFile struct {
	bytes.Buffer
	files fstest.MapFS
	name  string
}

func (f *mapFile) Close() error {
	f.files[f.name] = &fstest.MapFile{Data: f.Bytes()}
	return nil
}

// TestStockComesBack writes stock as CSV and as a workbook and reads it as a stock list:
// nothing is lost, whatever names begin with.
func TestStockComesBack(t *testing.T) {
	var want []stock.Holding
	for i, name := range []string{"Tallow Bell", "=1+1", "'=HYPERLINK(\"x\")", "-dash", "@at", "Ünterwell, \"Old\"; ½", "白い鷺", "'quoted'"} {
		want = append(want, stock.Holding{Code: "", Variety: stock.Variety{Name: name, Kind: "dahlia", Timing: stock.Late, Colour: "#f3ead3", Height: 1.2},
			Form: stock.Clump, Count: i + 1, Place: "cellar", Crate: "04", Pack: "bare", Plant: i, Reserve: 1, Note: "=note"})
	}
	planted := stock.Holding{Variety: stock.Variety{Name: "Far Furrow", Kind: "dahlia"}, Form: stock.Plant, Count: 3, Place: "patch", Bed: "007", Row: "=2"}
	want = append(want, planted)
	table := StockTable(want)
	for name, write := range map[string]func(io.Writer) error{
		"stock.csv": func(w io.Writer) error { return WriteCSV(w, table) }, "stock.xlsx": func(w io.Writer) error { return WriteXLSX(w, []Table{table}) },
	} {
		var b bytes.Buffer
		if err := write(&b); err != nil {
			t.Fatal(err)
		}
		list, err := ReadStockList(name, b.Bytes(), nil, nil)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		for i, got := range list.Rows {
			if got.Line = 0; got != want[i] {
				t.Errorf("%s: read %+v\nwrote %+v", name, got, want[i])
			}
		}
		if len(list.Rows) != len(want) {
			t.Errorf("%s: %d rows came back", name, len(list.Rows))
		}
	}
	if len(table.Fields) != len(stockColumns) {
		t.Fatalf("%d fields, %d columns", len(table.Fields), len(stockColumns))
	}
	for i, f := range table.Fields {
		if f.Name != stockColumns[i] {
			t.Errorf("field %s stands where a stock list has %s", f.Name, stockColumns[i])
		}
	}
}

func TestTablesRefused(t *testing.T) {
	for want, table := range map[string]Table{
		"for 1 fields":                     {Name: "t", Fields: []Field{{"a", Text, "", ""}}, Rows: [][]any{{"x", "y"}}},
		"x does not have the type integer": {Name: "t", Fields: []Field{{"a", Whole, "", ""}}, Rows: [][]any{{"x"}}},
		"1.5 does not have the type date":  {Name: "t", Fields: []Field{{"a", Day, "", ""}}, Rows: [][]any{{1.5}}},
	} {
		for _, err := range []error{WriteCSV(io.Discard, table), WriteXLSX(io.Discard, []Table{table})} {
			if err == nil || !strings.Contains(err.Error(), want) {
				t.Errorf("want %q, got: %v", want, err)
			}
		}
	}
	long := Table{Name: "t", Fields: []Field{{"a", Text, "", ""}}, Rows: [][]any{{strings.Repeat("x", cellSigns+1)}}}
	if err := WriteXLSX(io.Discard, []Table{long}); err == nil || WriteCSV(io.Discard, long) != nil {
		t.Error("a text longer than a cell goes into CSV alone")
	}
	if WriteXLSX(io.Discard, nil) == nil {
		t.Error("a workbook without tables was written")
	}
}

// manyRows is a table of 50,000 rows.
func manyRows() Table {
	t := aTable()
	t.Rows = nil
	for i := range 50000 {
		t.Rows = append(t.Rows, []any{fmt.Sprintf("Name %d", i), i, float64(i) / 7, civil.MustOn(2027, time.April, 12), i%2 == 0})
	}
	return t
}

// TestManyRows writes 50,000 rows both ways and counts them again.
func TestManyRows(t *testing.T) {
	table := manyRows()
	var text, book bytes.Buffer
	if err := WriteCSV(&text, table); err != nil {
		t.Fatal(err)
	}
	if err := WriteXLSX(&book, []Table{table}); err != nil {
		t.Fatal(err)
	}
	if n := bytes.Count(text.Bytes(), []byte("\r\n")); n != 50001 {
		t.Errorf("%d lines of CSV", n)
	}
	read, err := xlsxreader.NewReader(book.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for range read.ReadRows("lots") {
		n++
	}
	if n != 50001 {
		t.Errorf("%d rows of the workbook", n)
	}
}

func BenchmarkXLSX(b *testing.B) {
	table := manyRows()
	for b.Loop() {
		if err := WriteXLSX(io.Discard, []Table{table}); err != nil {
			b.Fatal(err)
		}
	}
}

// TestWorkbookIsTheSame writes several tables several times: parts of a workbook that are
// kept without an order would come in another one.
func TestWorkbookIsTheSame(t *testing.T) {
	var tables []Table
	for _, name := range []string{"stock", "plans", "jobs", "starts", "costs"} {
		table := aTable()
		table.Name = name
		tables = append(tables, table)
	}
	var first bytes.Buffer
	for n := range 5 {
		var again bytes.Buffer
		if err := WriteXLSX(&again, tables); err != nil {
			t.Fatal(err)
		}
		if n == 0 {
			first = again
		} else if !bytes.Equal(first.Bytes(), again.Bytes()) {
			t.Fatal("the same tables became another file")
		}
	}
}
