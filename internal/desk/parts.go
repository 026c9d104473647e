package desk

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"github.com/pelletier/go-toml/v2"

	"eyeup/civil"
	"eyeup/internal/exchange"
	"eyeup/internal/garden"
	"eyeup/internal/stockbook"
	"eyeup/stock"
)

// Part is a part of how the book describes the garden: a table of garden.toml, or a place.
type Part struct {
	What   string // garden or place
	Name   string
	Title  string // in the grower's words
	Groups []PartGroup
}

// PartGroup is what is said together, such as all of one mix.
type PartGroup struct {
	Title  string // empty for what is said of the part itself
	About  string // what it is of, such as the name of a variety, or that nothing is said yet
	Fields []PartField
	More   *PartMore // nil where all that may be said has a field
}

// PartField is one key with its value as typed; a dot leads into a table within, a number
// between dots to that table of several, and the members of a list stand between commas.
type PartField struct {
	Key, Value  string
	Label, Help string
	Choices     []string // all that may be said; empty where anything may
	Fixed       bool     // it can't be changed
}

// PartMore asks for one more key of a table whose keys the grower names.
type PartMore struct {
	Under       string       // what stands before the key, with its dot
	Label, Says string       // of the key, of its value
	Help        string       // on its value
	Choices     []PartChoice // all that the key may be, or (Open) what is usual
	Open        bool
	Key, Value  string // as they were typed, where they were refused
}

// PartChoice is a key that may be chosen, and what it means.
type PartChoice struct{ Key, Says string }

// Fields returns the fields of all groups.
func (p Part) Fields() []PartField {
	var all []PartField
	for _, g := range p.Groups {
		all = append(all, g.Fields...)
	}
	return all
}

// Parts returns how the garden is described, part by part: also those of which nothing is
// said yet, but for a climate where a file serves.
func (d *Desk) Parts() ([]Part, error) {
	var parts, places []stock.Description
	d.Read(func(b *stock.Book) { parts, places = b.Described("garden"), b.Described("place") })
	garden, said := d.Site(), map[string]map[string]any{}
	for _, one := range parts {
		body, err := stockbook.TomlOf(one.Body)
		if err != nil {
			return nil, err
		}
		said[one.Name] = body
	}
	var all []Part
	for _, name := range exchange.Parts() {
		if body, there := said[name]; there || name != "normals" {
			all = append(all, Part{"garden", name, exchange.PartTitle(name), groups(garden, name, body)})
		}
	}
	for _, one := range places {
		body, err := stockbook.TomlOf(one.Body)
		if err != nil {
			return nil, err
		}
		if gone, _ := body["gone"].(bool); !gone {
			part := partOf("place", one.Name, body)
			all = append(all, Part{"place", one.Name, placeTitle(one.Name, exchange.PartTitle(part)), groups(garden, part, body)})
		}
	}
	return all, nil
}

// placeTitle says a place with its sort, once where they are the same.
func placeTitle(name, sort string) string {
	if name == sort {
		return "place: " + name
	}
	return "place: " + name + ", " + sort
}

// flat lists the keys of a table, those of tables within after a dot.
func flat(before string, table map[string]any) []PartField {
	var all []PartField
	for _, key := range slices.Sorted(maps.Keys(table)) {
		switch v := table[key].(type) {
		case map[string]any:
			all = append(all, flat(before+key+".", v)...)
		case []any:
			if tables := numbered(v); tables != nil {
				for i := range v {
					number := strconv.Itoa(i + 1)
					one, _ := tables[number].(map[string]any)
					all = append(all, flat(before+key+"."+number+".", one)...)
				}
				continue
			}
			said := make([]string, len(v))
			for i, one := range v {
				said[i] = fmt.Sprint(one)
			}
			all = append(all, PartField{Key: before + key, Value: strings.Join(said, ", ")})
		default:
			all = append(all, PartField{Key: before + key, Value: fmt.Sprint(v)})
		}
	}
	return all
}

// Describe describes a part of the garden anew, from today on: said holds every key; one
// that says nothing is left out. What would not hold together is refused, and nothing is
// written.
func (d *Desk) Describe(what, name string, said map[string]string, today civil.Date, by stockbook.Writer) error {
	before := map[string]any{}
	d.Read(func(b *stock.Book) {
		for _, one := range b.Described(what) {
			if one.Name == name {
				before, _ = stockbook.TomlOf(one.Body) // it was read before
			}
		}
	})
	body := map[string]any{}
	part := partOf(what, name, before)
	for key, value := range said {
		if value = strings.TrimSpace(value); value != "" {
			put(body, strings.Split(key, "."), typedAs(part, key, before, value))
		}
	}
	inRows(body)
	return d.describe(what, name, body, today, by)
}

// AddPlace adds a worked place to the garden, under a name.
func (d *Desk) AddPlace(sketch, name string, today civil.Date, by stockbook.Writer) error {
	for _, s := range Sketches(d.Site().System) {
		if s.Key != sketch {
			continue
		}
		starts := map[string]string{}
		for _, f := range s.Fields {
			starts[f.Key] = f.Start
		}
		if _, there := d.Site().Place(name); there || strings.TrimSpace(name) == "" {
			return fmt.Errorf("give the place a name that no other place has")
		}
		return d.describe("place", strings.TrimSpace(name), s.Place(name, func(key string) string { return starts[key] }).Body, today, by)
	}
	return fmt.Errorf("there is no worked place %q", sketch)
}

// RemovePlace says that a place is gone. It refuses while something stands there.
func (d *Desk) RemovePlace(name string, today civil.Date, by stockbook.Writer) error {
	if there, any := d.Shelf().Place(name); any {
		return fmt.Errorf("%d are still in %s; move them first", there.Count, name)
	}
	return d.describe("place", name, map[string]any{"gone": true}, today, by)
}

// describe writes a description, once the garden has been read with it.
func (d *Desk) describe(what, name string, body map[string]any, today civil.Date, by stockbook.Writer) error {
	if err := d.tryWith(what, name, body); err != nil {
		return err
	}
	return d.book.As(by).AppendDrafts([]stockbook.Draft{{Kind: "described", Body: map[string]any{"what": what, "name": name, "body": body}}}, today)
}

// tryWith reads the garden as it would be.
func (d *Desk) tryWith(what, name string, body map[string]any) error {
	folder, _, err := d.book.Folder()
	if err != nil {
		return err
	}
	var table map[string]any
	if err := toml.Unmarshal(folder[stockbook.GardenFile], &table); err != nil {
		return err
	}
	if what == "garden" {
		table[name] = body
	} else {
		places, _ := table["place"].([]any)
		table["place"] = withPlace(places, name, body)
	}
	if folder[stockbook.GardenFile], err = toml.Marshal(table); err != nil {
		return err
	}
	read, err := exchange.ReadGarden(folder, "the garden")
	var faults exchange.Faults
	if errors.As(err, &faults) {
		return plainFaults(faults, partOf(what, name, body))
	}
	if err != nil {
		return err
	}
	_, err = garden.New(read, folder)
	var fault exchange.Fault
	if errors.As(err, &fault) { // of the weather's file, which the part of the garden names
		return fmt.Errorf("%s: %s", exchange.Called("garden", "weather"), fault.What)
	}
	return err
}

// plainFaults tells faults without the lines of a file that nobody sees, in the words of the
// fields that are asked; those of another part than the one that was described name it.
func plainFaults(faults exchange.Faults, part string) error {
	var all []error
	for _, f := range faults {
		if f.Part == part || f.Part == "" {
			all = append(all, errors.New(f.Said()))
			continue
		}
		all = append(all, fmt.Errorf("%s: %s", exchange.PartTitle(f.Part), f.Said()))
	}
	return errors.Join(all...)
}

// withPlace puts a place in the stead of the one of its name, or after the others.
func withPlace(places []any, name string, body map[string]any) []any {
	own := maps.Clone(body)
	own["name"] = name
	gone, _ := own["gone"].(bool)
	var all []any
	found := false
	for _, p := range places {
		if m, ok := p.(map[string]any); ok && m["name"] == name {
			found = true
			if !gone {
				all = append(all, own)
			}
			continue
		}
		all = append(all, p)
	}
	if !found && !gone {
		all = append(all, own)
	}
	return all
}
