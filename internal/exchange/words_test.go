package exchange

import (
	"fmt"
	"reflect"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"eyeup/quantity"
)

// ofAFile finds what only somebody who writes the file would know.
var ofAFile = regexp.MustCompile(`quotes|[.]toml|the folder| = |…|[{]|\[[a-z[]|[a-z]_[a-z]`)

// inForm holds that a fault of garden.toml is told in the words of a form: by a key that has a
// word, and without the signs of a file.
func inForm(t *testing.T, f Fault) {
	t.Helper()
	if f.Part == "" || f.Form == unasked {
		return
	}
	if sign := ofAFile.FindString(f.Said()); sign != "" {
		t.Errorf("%s, %s: a form says %q, with %q", f.Part, f.Key, f.Said(), sign)
	}
	if called := Called(f.Part, f.Key); called == f.Key && strings.ContainsAny(called, "._#") {
		t.Errorf("%s has no word for %s", f.Part, f.Key)
	}
}

// TestEveryKeyHasAWord goes through all keys that a garden is written with.
func TestEveryKeyHasAWord(t *testing.T) {
	var w writtenGarden
	for part, of := range map[string]any{"garden": w.Garden, "normals": *new(writtenNormals), "offset": w.Offset, "season": w.Season, "patch": *new(writtenPatch)} {
		for _, key := range keysOf(reflect.TypeOf(of), "") {
			if _, known := WordOf(part, key); !known {
				t.Errorf("[%s] has no word for %s", part, key)
			}
		}
	}
	g := mustRead(t, folder(goodGarden, goodStock))
	for key := range g.writtenPrices() {
		if _, known := WordOf("prices", key); !known {
			t.Errorf("there is no word for the price of %s", key)
		}
	}
	for _, p := range g.Places {
		for _, key := range saidKeys(p.written()) {
			if _, known := WordOf(PlacePart(p.Sort), key); !known && key != "name" {
				t.Errorf("a %s has no word for %s", p.Sort, key)
			}
		}
	}
}

// keysOf lists the keys of a written table, those of tables within after a dot.
func keysOf(table reflect.Type, before string) []string {
	var all []string
	for i := range table.NumField() {
		key, _, _ := strings.Cut(table.Field(i).Tag.Get("toml"), ",")
		switch of := table.Field(i).Type; {
		case of.Kind() == reflect.Slice && of.Elem().Kind() == reflect.Struct:
			all = append(all, keysOf(of.Elem(), before+key+".2.")...)
		case of.Kind() == reflect.Map:
			all = append(all, before+key+".dahlia")
		default:
			all = append(all, before+key)
		}
	}
	return all
}

// saidKeys lists the keys of a written place of which something is said.
func saidKeys(p writtenPlace) []string {
	var all []string
	of := reflect.ValueOf(p)
	for i := range of.NumField() {
		key, _, _ := strings.Cut(of.Type().Field(i).Tag.Get("toml"), ",")
		if of.Field(i).IsZero() {
			continue
		}
		if inner, is := of.Field(i).Interface().(map[string]string); is {
			for name := range inner {
				all = append(all, key+"."+name)
			}
			continue
		}
		all = append(all, key)
	}
	return all
}

// TestEveryWordIsAKey says each word's key by itself: it is read as one of its part.
func TestEveryWordIsAKey(t *testing.T) {
	for _, part := range append(Parts(), PlacePart(Store), PlacePart(Room), PlacePart(Glass), PlacePart(Frame), PlacePart(Ground)) {
		for _, w := range Words(part) {
			key := strings.ReplaceAll(w.Key, "*", "dahlia")
			stem, inner, several := strings.Cut(key, ".#.")
			head := "[" + part + "]"
			if sort, is := strings.CutPrefix(part, placePart); is {
				head = "[[place]]\nname = \"x\"\n"
				if key != "sort" {
					head += fmt.Sprintf("sort = %q\n", sort)
				}
			}
			if several {
				head, key = "[["+part+"."+stem+"]]", inner
			}
			g := &Garden{files: fstest.MapFS{}}
			var faults Faults
			root, err := outlineOf("garden.toml", []byte(head+"\n"+key+" = \"store\"\n"))
			if err != nil {
				t.Fatal(err)
			}
			g.readTop(&section{file: "garden.toml", group: root, faults: &faults})
			for _, f := range faults {
				if f.Part == part && f.Form == unasked {
					t.Errorf("%s has a word for %s, which nobody reads", part, w.Key)
				}
				inForm(t, f)
			}
		}
	}
}

// TestWordsAreSaid says keys by group and label, in either system.
func TestWordsAreSaid(t *testing.T) {
	for _, c := range []struct{ part, key, want string }{
		{"patch", "low", "a variety is low up to"},
		{"patch", "mix.1.want.early", "mix 1, share of early"},
		{"patch", "variety.12.wish", "variety 12, how much it is wanted"},
		{"patch", "spacing.anemone", "from plant to plant, from anemone to anemone"},
		{"patch", "mix.3", "mix 3"},
		{PlacePart(Glass), "heater.power", "heater, power"},
		{PlacePart(Glass), "heater", "heater"},
		{"figures", "dahlia.sprout.base", "dahlia, no sprouting at or below"},
		{"prices", "pot_no1", "no. 1 nursery pot (trade gallon)"},
	} {
		if got := Called(c.part, c.key); got != c.want {
			t.Errorf("%s of %s is called %q, not %q", c.key, c.part, got, c.want)
		}
	}
	w, _ := WordOf("patch", "row_length")
	if w.HelpIn(quantity.Metric) != "such as 9 m" || w.HelpIn(quantity.US) != "such as 30 ft" {
		t.Errorf("%q, %q", w.HelpIn(quantity.Metric), w.HelpIn(quantity.US))
	}
}
