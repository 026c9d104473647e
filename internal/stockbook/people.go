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

// PeopleAnswer lists the people whose ids entries may hold.
type PeopleAnswer []Person

// Person is a person's id and name. The name is empty if it was blanked.
type Person struct {
	ID   string `json:"id"`
	Name string `json:"name"`
}

// People lists everyone who has, or had, a name.
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

// Names returns people's names by their ids; blanked names are empty.
func (s *Book) Names() (map[string]string, error) { return s.book.People() }

// PersonNamed returns the id of the person with a name. If nobody has the name yet, it makes a new id.
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
		random := make([]byte, 4)
		_, _ = rand.Read(random) // never fails: see crypto/rand
		id = "p" + hex.EncodeToString(random)
	}
	return id, s.book.Call(id, name)
}

// Call sets the name of a person's id. An empty name blanks it.
func (s *Book) Call(id, name string) error { return s.book.Call(id, name) }

// Print writes a line for each person.
func (a PeopleAnswer) Print(w io.Writer, _ quantity.System) {
	if len(a) == 0 {
		fmt.Fprintln(w, "This book names nobody.")
	}
	for _, p := range a {
		name := p.Name
		if name == "" {
			name = "(blanked)"
		}
		report.NewPage(w).Wrap(fmt.Sprintf("%-8s ", p.ID), name)
	}
}
