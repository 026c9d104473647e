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

// FieldType is what a column of a table holds. The names are those of Table Schema.
type FieldType string

// The types that columns have.
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
	Unit string // of numbers; empty where they have none
	Says string // what it means
}

// Table is a table on its way out. A cell is a string, int, float64, civil.Date or bool, of
// its field's type; nil, a date that is none, or a number that is none stand for nothing.
type Table struct {
	Name   string // of the file without its ending
	Says   string
	Fields []Field
	Rows   [][]any
}

// check refuses a table whose rows do not hold what its fields say.
func (t *Table) check() error {
	for i, row := range t.Rows {
		if len(row) != len(t.Fields) {
			return fmt.Errorf("table %s, row %d has %d cells; there are %d fields", t.Name, i+1, len(row), len(t.Fields))
		}
		for j, cell := range row {
			if !t.Fields[j].holds(cell) {
				return fmt.Errorf("table %s, row %d: %v is no %s, which %s is", t.Name, i+1, cell, t.Fields[j].Type, t.Fields[j].Name)
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

// isNothing reports whether a cell stands for nothing.
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

// WriteCSV writes a table as CSV by RFC 4180, in UTF-8, with numbers in full and dates
// year-month-day. A text that a spreadsheet would take for a formula is defused: see
// Defused.
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

// formula is what a spreadsheet takes for the beginning of a formula, and the same with
// apostrophes before it.
var formula = regexp.MustCompile(`^'*[=+\-@\t\r]`)

// Defused puts an apostrophe before a text that a spreadsheet would reckon out as a
// formula; Armed takes it away again, and no other text is changed by either. Source: OWASP,
// CSV Injection, for the signs.
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
