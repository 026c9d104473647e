package stockbook

import (
	"crypto/rand"
	"encoding/hex"
	"fmt"
	"io"
	"maps"
	"slices"

	"eyeup/internal/report"
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
func (s *Book) People() (*PeopleAnswer, error) {
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

// Names returns the names of people by their ids; blanked ones are empty.
func (s *Book) Names() (map[string]string, error) { return s.book.People() }

// PersonNamed returns the id of the person of a name, and gives the name an id where
// nobody has it yet.
func (s *Book) PersonNamed(name string) (id string, err error) {
	names, err := s.book.People()
	if err != nil {
		return "", err
	}
	for _, id := range slices.Sorted(maps.Keys(names)) {
		if names[id] == name {
			return id, nil
		}
	}
	for id == "" || names[id] != "" {
		drawn := make([]byte, 4)
		_, _ = rand.Read(drawn) // never fails: see crypto/rand
		id = "p" + hex.EncodeToString(drawn)
	}
	return id, s.book.Call(id, name)
}

// Call gives a person's id a name, or blanks it where the name is empty.
func (s *Book) Call(id, name string) error { return s.book.Call(id, name) }

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
		report.NewPage(w).Wrap(fmt.Sprintf("%-8s ", p.ID), name)
	}
}
