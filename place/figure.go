package place

import (
	"embed"
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"sync"
)

//go:embed data/*.csv
var data embed.FS

// Figure is one number of a table with its unit, range, source and sureness. Low to High is
// its plausible range.
type Figure struct {
	Key              string // such as "twin-wall.u"
	Low, Value, High float64
	Unit             string
	Sure             string // measured, practice, assumption or memory
	Source           string
}

// tables are the names of the tables, in the order in which they are shown.
var tables = []string{"covers", "fuels", "leakage", "body", "ground"}

// figures reads the tables once. They are part of the program, so a table that can't be read
// is a programming error: it panics, and tests catch it first.
var figures = sync.OnceValue(func() map[string][]Figure {
	all := map[string][]Figure{}
	for _, table := range tables {
		rows, err := readTable(table)
		if err != nil {
			panic("place: " + err.Error())
		}
		all[table] = rows
	}
	return all
})

// Figures returns the figures of a table in its order: covers, fuels, leakage, body or ground;
// nil for an unknown table.
func Figures(table string) []Figure { return slices.Clone(figures()[table]) }

// FiguresOf returns the figures of one row of a table, such as "covers" and "twin-wall".
func FiguresOf(table, row string) []Figure {
	var own []Figure
	for _, f := range figures()[table] {
		if name, _, _ := strings.Cut(f.Key, "."); name == row {
			own = append(own, f)
		}
	}
	return own
}

// names returns the rows of a table in its order.
func names(table string) []string {
	var all []string
	for _, f := range figures()[table] {
		name, _, _ := strings.Cut(f.Key, ".")
		if len(all) == 0 || all[len(all)-1] != name {
			all = append(all, name)
		}
	}
	return all
}

// value returns the figure with a key that the table must have.
func value(table, key string) float64 { return figure(table, key).Value }

func figure(table, key string) Figure {
	for _, f := range figures()[table] {
		if f.Key == key {
			return f
		}
	}
	panic("place: the table " + table + " has no " + key)
}

func readTable(table string) ([]Figure, error) {
	file, err := data.Open("data/" + table + ".csv")
	if err != nil {
		return nil, err
	}
	defer func() { _ = file.Close() }()
	rows := csv.NewReader(file)
	rows.FieldsPerRecord = 7
	if _, err := rows.Read(); err != nil {
		return nil, fmt.Errorf("%s: %w", table, err)
	}
	var all []Figure
	for {
		row, err := rows.Read()
		if err == io.EOF {
			return all, nil
		}
		if err != nil {
			return nil, fmt.Errorf("%s: %w", table, err)
		}
		f, err := figureOf(row)
		if err != nil {
			return nil, fmt.Errorf("%s, %s: %w", table, row[0], err)
		}
		all = append(all, f)
	}
}

func figureOf(row []string) (Figure, error) {
	f := Figure{Key: row[0], Unit: row[4], Sure: row[5], Source: row[6]}
	for i, to := range []*float64{&f.Low, &f.Value, &f.High} {
		x, err := strconv.ParseFloat(row[i+1], 64)
		if err != nil {
			return f, err
		}
		*to = x
	}
	return f, nil
}
