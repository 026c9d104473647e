package exchange_test

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"eyeup/internal/exchange"
)

// The same list by commas, semicolons and tabs, with a byte order mark, and as XLSX,
// comes out the same; headers are those growers use.
func TestStockListsInEveryDress(t *testing.T) {
	rows := [][]string{
		{"Cultivar", "Qty", "Where", "Box", "Color", "Nonsense"},
		{"Pale Heron", "14", "cellar", "1", "#f4efe4", "x"},
		{"Quoted, \"Name\"", "3", "cellar", "", "", ""},
	}
	dressed := map[string][]byte{"list.xlsx": sheet(t, rows)}
	for name, d := range map[string]string{"commas.csv": ",", "semicolons.csv": ";", "tabs.csv": "\t"} {
		var lines []string
		for _, r := range rows {
			cells := make([]string, len(r))
			for i, c := range r {
				cells[i] = `"` + strings.ReplaceAll(c, `"`, `""`) + `"`
			}
			lines = append(lines, strings.Join(cells, d))
		}
		dressed[name] = []byte("\ufeff" + strings.Join(lines, "\r\n"))
	}
	always := map[string]string{"kind": "dahlia", "form": "clump"}
	for name, data := range dressed {
		list, err := exchange.ReadStockList(name, data, always, []string{"cellar"})
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if len(list.Rows) != 2 || list.Rows[0].Count != 14 || list.Rows[0].Crate != "1" || list.Rows[1].Variety.Name != `Quoted, "Name"` {
			t.Errorf("%s: %+v", name, list.Rows)
		}
		if list.Columns[0].For != "variety" || list.Columns[5].For != "" {
			t.Errorf("%s: %+v", name, list.Columns)
		}
	}
}

func sheet(t testing.TB, rows [][]string) []byte {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	for i, r := range rows {
		cell, err := excelize.CoordinatesToCellName(1, i+1)
		if err == nil {
			err = f.SetSheetRow(f.GetSheetName(0), cell, &r)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	var out bytes.Buffer
	if err := f.Write(&out); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// Every fault is told with its line, all at once; what is no table is told as such.
func TestStockListsAreRefused(t *testing.T) {
	always := map[string]string{"kind": "dahlia", "form": "clump"}
	for data, want := range map[string]string{
		"":                                                           "the table is empty",
		"variety,place\nA,cellar\n":                                  "list:1: there is no column for the count",
		"variety,count,place\nA,many,cellar\n":                       "list:2: count",
		"variety,count,place\nA,1,cellar\n,2,x":                      "list:3: the variety is missing",
		"variety,count,place\nA,1,attic\n":                           `"attic"`,
		"variety,count,place\n\"A,1,cellar\n":                        "list:",
		"PK\x03\x04not a workbook":                                   "can't be read as an XLSX file",
		"var\x00iety":                                                "neither CSV nor XLSX",
		"variety,count,place,code\nA,1,cellar,MRMMS\n":               "is MRMM5 meant?",
		"variety,count,place,height\nA,1,cellar,130\n":               "height",
		"variety,count,place,timing\nA,1,cellar,soon\n":              "timing",
		"variety,count,place\n" + strings.Repeat("A,x,cellar\n", 30): "and 20 more",
	} {
		if _, err := exchange.ReadStockList("list", []byte(data), always, []string{"cellar"}); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%.40q: %v, want %q", data, err, want)
		}
	}
	if _, err := exchange.ReadStockList("list", []byte("variety,count,place\nA,1,cellar\n"), map[string]string{"colr": "x"}, nil); err == nil {
		t.Error("a column that is none was filled")
	}
}

// FuzzReadStockList: whatever comes, it is read or refused, never a panic.
func FuzzReadStockList(f *testing.F) {
	f.Add([]byte("variety,kind,form,count,place\nPale Heron,dahlia,clump,14,cellar\n"))
	f.Add([]byte("\ufeffName;Qty\nA;1\n"))
	f.Add([]byte("a\tb\n\"\"\"\n"))
	f.Add(sheet(f, [][]string{{"variety", "count"}, {"A", "1"}}))
	f.Fuzz(func(t *testing.T, data []byte) {
		list, err := exchange.ReadStockList("list", data, map[string]string{"kind": "dahlia", "form": "clump", "place": "cellar"}, nil)
		var faults exchange.Faults
		var fault exchange.Fault
		switch {
		case err == nil && list == nil:
			t.Error("neither a list nor a refusal")
		case err != nil && !errors.As(err, &faults) && !errors.As(err, &fault):
			t.Errorf("a refusal that names no file: %v", err)
		}
	})
}
