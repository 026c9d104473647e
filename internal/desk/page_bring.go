package desk

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"strings"

	"eyeup/civil"
	"eyeup/internal/exchange"
	"eyeup/stock"
)

// Brought is a stock list as it was read, not yet written down.
type Brought struct {
	Holdings []stock.Holding
	Columns  []string // as they were taken
	Text     string   // as it will be read again
}

// ReadList reads a stock list that was pasted or typed: a table whose first line names
// its columns (variety, kind, form, count and place at least), parted by commas, or by
// tabs as spreadsheets do. Nothing is written down.
func (d *Desk) ReadList(text string) (*Brought, error) {
	text, err := commas(text)
	if err != nil {
		return nil, err
	}
	var table []byte
	folder, _, err := d.book.folder()
	if err != nil {
		return nil, err
	}
	table = folder[gardenFile]
	read, err := exchange.ReadGarden(drawer{gardenFile: table, "stock.csv": []byte(text)}, "the list")
	if err != nil {
		return nil, err
	}
	if len(read.Stock) == 0 {
		return nil, errors.New("the list has no row beneath its first line")
	}
	first, _, _ := strings.Cut(text, "\n")
	return &Brought{read.Stock, strings.Split(strings.TrimSpace(first), ","), text}, nil
}

// WriteList takes in a stock list, all of it or nothing.
func (d *Desk) WriteList(b *Brought, on civil.Date) error {
	return d.book.appendSaid(stockSaid(b.Holdings), on)
}

// commas turns a table parted by tabs into one parted by commas.
func commas(text string) (string, error) {
	text = strings.TrimSpace(strings.ReplaceAll(text, "\r\n", "\n"))
	first, _, _ := strings.Cut(text, "\n")
	if text == "" {
		return "", errors.New("there is nothing in the list yet; paste it, with its first line naming the columns")
	}
	if !strings.Contains(first, "\t") {
		return text + "\n", nil
	}
	r := csv.NewReader(strings.NewReader(text))
	r.Comma = '\t'
	r.LazyQuotes = true
	rows, err := r.ReadAll()
	if err != nil {
		return "", fmt.Errorf("the list can't be read: %w", err)
	}
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	if err := w.WriteAll(rows); err != nil {
		return "", err
	}
	return out.String(), nil
}
