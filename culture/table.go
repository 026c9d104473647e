package culture

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

// shelf is all kinds, in the order of kinds.csv, and the citations of their sources.
type shelf struct {
	kinds     []*Kind
	citations map[string]Citation
}

// stocked reads the tables once. They are part of the program, so a table that can't be read
// is a programming error: it panics, and tests catch it first.
var stocked = sync.OnceValue(func() *shelf {
	s, err := readShelf()
	if err != nil {
		panic("culture: " + err.Error())
	}
	return s
})

// Lookup returns a kind by its name; false if it is unknown.
func Lookup(kind string) (*Kind, bool) {
	for _, k := range stocked().kinds {
		if k.Name == kind {
			return k, true
		}
	}
	return nil, false
}

// Kinds returns the names of all kinds.
func Kinds() []string {
	var names []string
	for _, k := range stocked().kinds {
		names = append(names, k.Name)
	}
	return names
}

func readShelf() (*shelf, error) {
	s := &shelf{citations: map[string]Citation{}}
	err := rows("sources.csv", 3, func(r []string) error {
		s.citations[r[0]] = Citation{r[0], r[1], r[2]}
		return nil
	})
	if err != nil {
		return nil, err
	}
	if err := rows("kinds.csv", 9, func(r []string) error {
		k, err := readKind(r)
		s.kinds = append(s.kinds, k)
		return err
	}); err != nil {
		return nil, err
	}
	return s, rows("facts.csv", 5, s.addFact)
}

func (s *shelf) addFact(r []string) error {
	for _, k := range s.kinds {
		if k.Name == r[0] {
			k.facts = append(k.facts, Fact{About: r[1], Text: r[2], Sure: Sureness(r[3]), Source: r[4]})
			return nil
		}
	}
	return fmt.Errorf("a fact about %q, which is no kind of kinds.csv", r[0])
}

func readKind(r []string) (*Kind, error) {
	k := &Kind{
		Name: r[0], Life: Life(r[1]), Form: r[2], Goal: Goal(r[3]), StartIn: r[4], PotOnIn: r[5],
		Frost:   Frost{Dormant: Effect(r[6]), Leafy: Effect(r[7]), Cutting: Effect(r[8])},
		figures: map[string]Figure{},
	}
	file := strings.ReplaceAll(k.Name, " ", "-") + ".csv"
	if err := rows(file, 7, func(r []string) error { return addFigure(k.figures, keys, r) }); err != nil {
		return nil, err
	}
	k.fill()
	return k, nil
}

// addFigure adds a row of a table of figures under one of the keys that it may have.
func addFigure(figures map[string]Figure, keys []key, r []string) error {
	i := slices.IndexFunc(keys, func(k key) bool { return k.name == r[0] })
	if i < 0 {
		return fmt.Errorf("%q is not the key of any figure", r[0])
	}
	if _, twice := figures[r[0]]; twice {
		return fmt.Errorf("%q stands twice", r[0])
	}
	f := Figure{Unit: Unit(r[4]), Sure: Sureness(r[5]), Source: r[6]}
	for j, v := range []*float64{&f.Low, &f.Value, &f.High} {
		var err error
		if *v, err = strconv.ParseFloat(r[1+j], 64); err != nil {
			return fmt.Errorf("%s: %q is not a number", r[0], r[1+j])
		}
	}
	if f.Unit != keys[i].unit {
		return fmt.Errorf("%s is in %s, not in %q", r[0], keys[i].unit, r[4])
	}
	figures[r[0]] = f
	return nil
}

// rows reads a table of the given width and calls each for every row except the heading.
func rows(file string, width int, each func([]string) error) error {
	f, err := data.Open("data/" + file)
	if err != nil {
		return err
	}
	defer func() { _ = f.Close() }()
	in := csv.NewReader(f)
	in.FieldsPerRecord = width
	for heading := true; ; heading = false {
		row, err := in.Read()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return fmt.Errorf("%s: %w", file, err)
		}
		if heading {
			continue
		}
		if err := each(slices.Clone(row)); err != nil {
			line, _ := in.FieldPos(0)
			return fmt.Errorf("%s line %d: %w", file, line, err)
		}
	}
}
