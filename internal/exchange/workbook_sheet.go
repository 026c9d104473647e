package exchange

import (
	"encoding/xml"
	"fmt"
	"strconv"
)

// readShared reads the texts that cells share.
func (w *packedBook) readShared(part string) error {
	var text []byte
	var in []string // the elements that are open
	return w.read(part, func(start *xml.StartElement, said []byte) error {
		switch {
		case start != nil:
			in = append(in, start.Name.Local)
			if start.Name.Local == "si" {
				text = text[:0]
			}
		case said != nil:
			return w.spell(&text, in, said, len(w.shared)+1)
		default:
			ended := in[len(in)-1]
			if in = in[:len(in)-1]; ended != "si" {
				return nil
			}
			if w.shared = append(w.shared, string(text)); len(w.shared) > mostShared {
				return tooLarge(w.name, 0, "the workbook has too many texts", mostShared)
			}
		}
		return nil
	})
}

// spell adds what is said in a t that is not the reading of a text (rPh).
func (w *packedBook) spell(text *[]byte, in []string, said []byte, line int) error {
	if n := len(in); n == 0 || in[n-1] != "t" || n > 1 && in[n-2] == "rPh" {
		return nil
	}
	return w.grow(text, said, line)
}

// grow adds to the text of a cell.
func (w *packedBook) grow(text *[]byte, said []byte, line int) error {
	if *text = append(*text, said...); len(*text) > mostCellText {
		return tooLarge(w.name, line, "a cell has too many bytes", mostCellText)
	}
	return nil
}

// sheetReader reads a sheet.
type sheetReader struct {
	*packedBook
	in     []string // the elements that are open
	rows   [][]string
	filled int // rows up to the last that says something
	cells  int // gaps counted
	text   int // bytes in all cells

	kind   string // of the cell
	column int    // of the cell, from 0
	value  []byte // of the cell
}

// readSheet reads the cells of a sheet.
func (w *packedBook) readSheet(part string) ([][]string, error) {
	s := &sheetReader{packedBook: w}
	err := w.read(part, func(start *xml.StartElement, said []byte) error {
		switch {
		case start != nil:
			s.in = append(s.in, start.Name.Local)
			return s.begin(start)
		case said != nil && len(s.in) > 0 && s.in[len(s.in)-1] == "v" && s.kind != "inlineStr":
			return s.grow(&s.value, said, len(s.rows))
		case said != nil && s.kind == "inlineStr":
			return s.spell(&s.value, s.in, said, len(s.rows))
		case said != nil:
			return nil
		}
		ended := s.in[len(s.in)-1]
		if s.in = s.in[:len(s.in)-1]; ended == "c" {
			return s.cell()
		}
		return nil
	})
	return s.rows[:s.filled], err
}

// begin takes the start of a row or a cell.
func (s *sheetReader) begin(start *xml.StartElement) error {
	switch start.Name.Local {
	case "row":
		return s.row(attribute(start, "r"))
	case "c":
		if len(s.rows) == 0 {
			return fmt.Errorf("a cell stands in no row")
		}
		s.kind, s.value = attribute(start, "t"), s.value[:0]
		if at := attribute(start, "r"); at != "" {
			s.column = columnOf(at)
		} else {
			s.column++
		}
		if s.column < 0 || s.column >= mostColumns {
			return tooLarge(s.name, len(s.rows), fmt.Sprintf("the table reaches to column %s", clip(attribute(start, "r"))), mostColumns)
		}
	}
	return nil
}

// row begins a row, and the empty ones that are left out before it.
func (s *sheetReader) row(number string) error {
	at := len(s.rows) + 1
	if number != "" {
		var err error
		if at, err = strconv.Atoi(number); err != nil || at <= len(s.rows) {
			return fmt.Errorf("row %s stands behind row %d", clip(number), len(s.rows))
		}
	}
	if at > mostRows {
		return tooLarge(s.name, 0, "there are too many rows", mostRows)
	}
	for len(s.rows) < at {
		s.rows = append(s.rows, nil)
	}
	s.column = -1
	return nil
}

// columnOf reads the column of a reference such as AB12, from 0; -1 where there is none.
func columnOf(reference string) int {
	column := 0
	for _, c := range []byte(reference) {
		if c|0x20 < 'a' || c|0x20 > 'z' || column > mostColumns {
			break
		}
		column = 26*column + int(c|0x20-'a') + 1
	}
	return column - 1
}

// cell puts the cell that ended into its row.
func (s *sheetReader) cell() error {
	said, err := s.says()
	if err != nil || said == "" {
		return err
	}
	row := &s.rows[len(s.rows)-1]
	if gap := s.column + 1 - len(*row); gap > 0 {
		if s.cells += gap; s.cells > mostCells {
			return tooLarge(s.name, len(s.rows), "the table has too many cells, with those left empty", mostCells)
		}
		*row = append(*row, make([]string, gap)...)
	}
	if s.text += len(said); s.text > mostText {
		return tooLarge(s.name, len(s.rows), "the cells have too many bytes of text", mostText)
	}
	(*row)[s.column] = said
	s.filled = len(s.rows)
	return nil
}

// says returns what the cell says.
func (s *sheetReader) says() (string, error) {
	switch s.kind {
	case "s":
		if len(s.value) == 0 {
			return "", nil
		}
		at, err := strconv.Atoi(string(s.value))
		if err != nil || at < 0 || at >= len(s.shared) {
			return "", fmt.Errorf("row %d names the text %s, and there are %d", len(s.rows), clip(string(s.value)), len(s.shared))
		}
		return s.shared[at], nil
	case "b":
		if string(s.value) == "1" {
			return "TRUE", nil
		}
		return "FALSE", nil
	case "", "n":
		if v, err := strconv.ParseFloat(string(s.value), 64); err == nil {
			short, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 15, 64), 64) // as the sheet shows it, without the noise of its sums
			return strconv.FormatFloat(short, 'f', -1, 64), nil
		}
	}
	return string(s.value), nil
}
