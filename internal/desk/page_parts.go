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
	"eyeup/stock"
)

// Part is a part of how the book describes the garden: a table of garden.toml, or a place.
type Part struct {
	What   string // garden or place
	Name   string
	Fields []PartField
}

// PartField is one key with its value as typed; a dot leads into a table within, a number
// between dots to that table of several, and the members of a list stand between commas.
type PartField struct{ Key, Value string }

// Parts returns how the garden is described, part by part.
func (d *Desk) Parts() ([]Part, error) {
	var parts []Part
	var failed error
	d.Read(func(b *stock.Book) {
		for _, what := range []string{"garden", "place"} {
			for _, one := range b.Described(what) {
				body, err := tomlOf(one.Body)
				if err != nil {
					failed = err
					return
				}
				if gone, _ := body["gone"].(bool); !gone {
					parts = append(parts, Part{what, one.Name, flat("", body)})
				}
			}
		}
	})
	return parts, failed
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
			all = append(all, PartField{before + key, strings.Join(said, ", ")})
		default:
			all = append(all, PartField{before + key, fmt.Sprint(v)})
		}
	}
	return all
}

// Describe describes a part of the garden anew, from today on: said holds every key; one
// that says nothing is left out. What would not hold together is refused, and nothing is
// written.
func (d *Desk) Describe(what, name string, said map[string]string, today civil.Date, by Writer) error {
	before := map[string]any{}
	d.Read(func(b *stock.Book) {
		for _, one := range b.Described(what) {
			if one.Name == name {
				before, _ = tomlOf(one.Body) // it was read before
			}
		}
	})
	body := map[string]any{}
	for key, value := range said {
		if value = strings.TrimSpace(value); value != "" {
			put(body, before, strings.Split(key, "."), value)
		}
	}
	inRows(body)
	return d.describe(what, name, body, today, by)
}

// numbered returns tables that stand one by one under their numbers, from 1; nil for a list
// of anything else.
func numbered(list []any) map[string]any {
	tables := map[string]any{}
	for i, one := range list {
		if _, is := one.(map[string]any); !is {
			return nil
		}
		tables[strconv.Itoa(i+1)] = one
	}
	if len(tables) == 0 {
		return nil
	}
	return tables
}

// inRows makes lists again of tables that were typed under their numbers, in their order;
// of those from which all was taken away none is left.
func inRows(body map[string]any) {
	for key, value := range body {
		tables, is := value.(map[string]any)
		if !is {
			continue
		}
		inRows(tables)
		var numbers []int
		for text := range tables {
			if n, err := strconv.Atoi(text); err == nil && n > 0 {
				numbers = append(numbers, n)
			}
		}
		if len(numbers) == 0 || len(numbers) < len(tables) {
			continue
		}
		slices.Sort(numbers)
		list := make([]any, len(numbers))
		for i, n := range numbers {
			list[i] = tables[strconv.Itoa(n)]
		}
		body[key] = list
	}
}

// AddPlace adds a worked place to the garden, under a name.
func (d *Desk) AddPlace(sketch, name string, today civil.Date, by Writer) error {
	for _, s := range Sketches(d.Site().System) {
		if s.Key != sketch {
			continue
		}
		starts := map[string]string{}
		for _, f := range s.Fields {
			starts[f.Key] = f.Start
		}
		if _, there := d.Site().Place(name); there || strings.TrimSpace(name) == "" {
			return fmt.Errorf("give the place a name that no other has")
		}
		return d.describe("place", strings.TrimSpace(name), s.Place(name, func(key string) string { return starts[key] }).Body, today, by)
	}
	return fmt.Errorf("there is no worked place %q", sketch)
}

// RemovePlace says that a place is gone. It refuses while something stands there.
func (d *Desk) RemovePlace(name string, today civil.Date, by Writer) error {
	if there, any := d.Shelf().Place(name); any {
		return fmt.Errorf("%d stand in %s still; move them first", there.Count, name)
	}
	return d.describe("place", name, map[string]any{"gone": true}, today, by)
}

// describe writes a description, once the garden has been read with it.
func (d *Desk) describe(what, name string, body map[string]any, today civil.Date, by Writer) error {
	if err := d.tryWith(what, name, body); err != nil {
		return err
	}
	return d.book.As(by).appendSaid([]said{{"described", map[string]any{"what": what, "name": name, "body": body}}}, today)
}

// tryWith reads the garden as it would be.
func (d *Desk) tryWith(what, name string, body map[string]any) error {
	folder, _, err := d.book.folder()
	if err != nil {
		return err
	}
	var table map[string]any
	if err := toml.Unmarshal(folder[gardenFile], &table); err != nil {
		return err
	}
	if what == "garden" {
		table[name] = body
	} else {
		places, _ := table["place"].([]any)
		table["place"] = withPlace(places, name, body)
	}
	if folder[gardenFile], err = toml.Marshal(table); err != nil {
		return err
	}
	read, err := exchange.ReadGarden(folder, "the garden")
	var faults exchange.Faults
	if errors.As(err, &faults) {
		return plainFaults(faults)
	}
	if err != nil {
		return err
	}
	_, err = openGarden(read, folder)
	return err
}

// plainFaults tells faults without the lines of a file that nobody sees.
func plainFaults(faults exchange.Faults) error {
	var all []error
	for _, f := range faults {
		all = append(all, errors.New(f.What))
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

// put sets a key, in tables within where it has dots, as what it was before: a number, a
// list, or text.
func put(body, before map[string]any, keys []string, value string) {
	if len(keys) > 1 {
		inner, _ := body[keys[0]].(map[string]any)
		if inner == nil {
			inner = map[string]any{}
			body[keys[0]] = inner
		}
		was, _ := before[keys[0]].(map[string]any)
		if list, is := before[keys[0]].([]any); is {
			was = numbered(list)
		}
		put(inner, was, keys[1:], value)
		return
	}
	body[keys[0]] = typedAs(before[keys[0]], value)
}

func typedAs(before any, value string) any {
	switch before.(type) {
	case []any:
		var all []any
		for one := range strings.SplitSeq(value, ",") {
			all = append(all, strings.TrimSpace(one))
		}
		return all
	case int64, float64, nil: // of a new key a bare number is meant as one
		if n, err := strconv.ParseInt(value, 10, 64); err == nil {
			return n
		}
		if x, err := strconv.ParseFloat(value, 64); err == nil {
			return x
		}
	}
	return value
}
