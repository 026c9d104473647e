package exchange

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"regexp"
	"strconv"

	"eyeup/civil"
)

// FieldType is the type of a column. The names are those of Table Schema.
type FieldType string

// The types of columns.
const (
	Text   FieldType = "string"
	Whole  FieldType = "integer"
	Number FieldType = "number"
	Day    FieldType = "date"
	YesNo  FieldType = "boolean"
)

// Field is a column of a table.
type Field struct {
	Name string // a word or several joined by _
	Type FieldType
	Unit string // of numbers; empty if they have none
	Says string // what it means
}

// Table is a table to export. A cell is a string, int, float64, civil.Date or bool, as its
// field's type requires. nil, the zero date and NaN are empty cells.
type Table struct {
	Name   string // of the file without its ending
	Says   string
	Fields []Field
	Rows   [][]any
}

// check returns an error if a row does not fit the fields.
func (t *Table) check() error {
	for i, row := range t.Rows {
		if len(row) != len(t.Fields) {
			return fmt.Errorf("table %s, row %d has %d cells for %d fields", t.Name, i+1, len(row), len(t.Fields))
		}
		for j, cell := range row {
			if !t.Fields[j].holds(cell) {
				return fmt.Errorf("table %s, row %d: %v does not have the type %s of %s", t.Name, i+1, cell, t.Fields[j].Type, t.Fields[j].Name)
			}
		}
	}
	return nil
}

func (f Field) holds(cell any) bool {
	switch cell.(type) {
	case nil:
		return true
	case string:
		return f.Type == Text
	case int:
		return f.Type == Whole
	case float64:
		return f.Type == Number
	case civil.Date:
		return f.Type == Day
	case bool:
		return f.Type == YesNo
	}
	return false
}

// isNothing reports whether a cell is empty.
func isNothing(cell any) bool {
	switch v := cell.(type) {
	case nil:
		return true
	case float64:
		return math.IsNaN(v) || math.IsInf(v, 0)
	case civil.Date:
		return v.IsZero()
	}
	return false
}

// WriteCSV writes a table as CSV by RFC 4180, in UTF-8, with numbers in full and dates as
// year-month-day. Text that a spreadsheet would read as a formula is defused: see Defused.
func WriteCSV(w io.Writer, t Table) error {
	if err := t.check(); err != nil {
		return err
	}
	rows := csv.NewWriter(w)
	rows.UseCRLF = true
	line := make([]string, len(t.Fields))
	for i, f := range t.Fields {
		line[i] = f.Name
	}
	if err := rows.Write(line); err != nil {
		return err
	}
	for _, row := range t.Rows {
		for i, cell := range row {
			line[i] = csvCell(cell)
		}
		if err := rows.Write(line); err != nil {
			return err
		}
	}
	rows.Flush()
	return rows.Error()
}

func csvCell(cell any) string {
	if isNothing(cell) {
		return ""
	}
	switch v := cell.(type) {
	case string:
		return Defused(v)
	case int:
		return strconv.Itoa(v)
	case float64:
		return strconv.FormatFloat(v, 'f', -1, 64)
	case bool:
		return strconv.FormatBool(v)
	}
	return fmt.Sprint(cell)
}

// formula matches text that a spreadsheet reads as a formula, and such text with apostrophes
// before it.
var formula = regexp.MustCompile(`^'*[=+\-@\t\r]`)

// Defused puts an apostrophe before text that a spreadsheet would evaluate as a formula. Armed
// removes it again. Neither changes any other text. Source of the characters: OWASP, CSV
// Injection.
func Defused(text string) string {
	if formula.MatchString(text) {
		return "'" + text
	}
	return text
}

// Armed undoes Defused.
func Armed(text string) string {
	if len(text) > 1 && text[0] == '\'' && formula.MatchString(text[1:]) {
		return text[1:]
	}
	return text
}
