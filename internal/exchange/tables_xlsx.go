package exchange

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"

	"eyeup/civil"
)

// The limits of a sheet by ECMA-376, as spreadsheet programs apply them.
const (
	sheetRows = 1048576
	sheetName = 31 // letters
	cellSigns = 32767
)

// WriteXLSX writes tables as a workbook, one sheet each. Text is stored as text, so that it is
// never evaluated as a formula; numbers are numbers and days are dates. The last sheet,
// contents, gives the meaning and unit of each column. The same tables give the same bytes. A
// table longer than a sheet is an error.
func WriteXLSX(w io.Writer, tables []Table) error {
	if len(tables) == 0 {
		return errors.New("there are no tables to write")
	}
	book := excelize.NewFile().SetZipWriter(newOrderly)
	defer func() { _ = book.Close() }()
	x, err := newWorkbook(book)
	if err != nil {
		return err
	}
	for i, t := range append(slices.Clone(tables), contents(tables)) {
		if err := x.sheet(t, i == 0); err != nil {
			return err
		}
	}
	return book.Write(w)
}

// contents returns the table that describes the others.
func contents(tables []Table) Table {
	c := Table{Name: "contents", Fields: []Field{{Name: "table", Type: Text}, {Name: "column", Type: Text}, {Name: "holds", Type: Text}, {Name: "unit", Type: Text}, {Name: "means", Type: Text}}}
	for _, t := range tables {
		c.Rows = append(c.Rows, []any{t.Name, "", fmt.Sprintf("%d rows", len(t.Rows)), "", t.Says})
		for _, f := range t.Fields {
			c.Rows = append(c.Rows, []any{t.Name, f.Name, string(f.Type), f.Unit, f.Says})
		}
	}
	return c
}

// workbook is a workbook being written.
type workbook struct {
	*excelize.File
	bold, day int
}

func newWorkbook(book *excelize.File) (*workbook, error) {
	x := &workbook{File: book}
	var err error
	if x.bold, err = book.NewStyle(&excelize.Style{Font: &excelize.Font{Bold: true}}); err != nil {
		return nil, err
	}
	format := "yyyy-mm-dd"
	x.day, err = book.NewStyle(&excelize.Style{CustomNumFmt: &format})
	return x, err
}

// sheet writes a table into a sheet of its own.
func (x *workbook) sheet(t Table, first bool) error {
	if err := t.check(); err != nil {
		return err
	}
	if len(t.Rows)+1 > sheetRows || utf8.RuneCountInString(t.Name) > sheetName {
		return fmt.Errorf("table %s does not fit in a sheet of %d rows; export CSV to a folder instead", t.Name, sheetRows)
	}
	if first {
		if err := x.SetSheetName("Sheet1", t.Name); err != nil {
			return err
		}
	} else if _, err := x.NewSheet(t.Name); err != nil {
		return err
	}
	s, err := x.NewStreamWriter(t.Name)
	if err != nil {
		return err
	}
	if err := s.SetPanes(&excelize.Panes{Freeze: true, YSplit: 1, TopLeftCell: "A2", ActivePane: "bottomLeft"}); err != nil {
		return err
	}
	for i, f := range t.Fields {
		if err := s.SetColWidth(i+1, i+1, wide(f, t.Rows, i)); err != nil {
			return err
		}
	}
	return x.rows(s, t)
}

func (x *workbook) rows(s *excelize.StreamWriter, t Table) error {
	line := make([]any, len(t.Fields))
	for i, f := range t.Fields {
		line[i] = excelize.Cell{Value: f.Name, StyleID: x.bold}
	}
	if err := s.SetRow("A1", line); err != nil {
		return err
	}
	for n, row := range t.Rows {
		for i, cell := range row {
			value, err := x.cell(cell)
			if err != nil {
				return fmt.Errorf("table %s, row %d, %s: %w", t.Name, n+1, t.Fields[i].Name, err)
			}
			line[i] = value
		}
		if err := s.SetRow(fmt.Sprintf("A%d", n+2), line); err != nil {
			return err
		}
	}
	return s.Flush()
}

// cell converts a cell for the writer.
func (x *workbook) cell(cell any) (any, error) {
	if isNothing(cell) {
		return nil, nil
	}
	switch v := cell.(type) {
	case civil.Date:
		return excelize.Cell{Value: v.UTC(), StyleID: x.day}, nil
	case string:
		if !utf8.ValidString(v) {
			return nil, errors.New("the text is not UTF-8")
		}
		if utf8.RuneCountInString(v) > cellSigns {
			return nil, fmt.Errorf("the text is longer than the %d characters that a cell holds; export CSV instead", cellSigns)
		}
		if Armed(v) != v { // so that reading, which calls Armed, gives it back
			v = "'" + v
		}
		return v, nil
	}
	return cell, nil
}

// wide returns a column width, in characters, at which the first rows are readable.
func wide(f Field, rows [][]any, column int) float64 {
	most := utf8.RuneCountInString(f.Name)
	for _, row := range rows[:min(len(rows), 200)] {
		most = max(most, utf8.RuneCountInString(csvCell(row[column])))
	}
	return float64(min(most, 60) + 2)
}
