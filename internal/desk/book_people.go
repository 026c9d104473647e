package desk

import (
	"fmt"
	"io"
	"maps"
	"slices"

	"eyeup/quantity"
)

// PeopleAnswer lists the people that entries speak of by an id.
type PeopleAnswer []Person

// Person is an id and its name; empty where it was blanked.
type Person struct {
	ID   string `json:"id"`
	Name string `json:"name"`
}

// People lists the people that have, or had, a name.
func (s *StockBook) People() (*PeopleAnswer, error) {
	names, err := s.book.People()
	if err != nil {
		return nil, err
	}
	all := PeopleAnswer{}
	for _, id := range slices.Sorted(maps.Keys(names)) {
		all = append(all, Person{id, names[id]})
	}
	return &all, nil
}

// Call gives a person's id a name, or blanks it where the name is empty.
func (s *StockBook) Call(id, name string) error { return s.book.Call(id, name) }

// Print writes a line for each.
func (a PeopleAnswer) Print(w io.Writer, _ quantity.System) {
	if len(a) == 0 {
		fmt.Fprintln(w, "No id has a name in this book.")
	}
	for _, p := range a {
		name := p.Name
		if name == "" {
			name = "(blanked)"
		}
		(&page{w}).wrap(fmt.Sprintf("%-8s ", p.ID), name)
	}
}
