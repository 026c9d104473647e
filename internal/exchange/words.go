package exchange

import (
	"fmt"
	"slices"
	"strings"

	"eyeup/culture"
	"eyeup/quantity"
)

// As is the type of the value of a key of garden.toml.
type As int

// The types of values. Items of a list are separated by commas. AsMonths is one measure for
// the whole year or a list of twelve, January first.
const (
	AsText As = iota
	AsWhole
	AsDecimal
	AsList
	AsMonths
)

// Word is the label and help of one key of garden.toml, for a form.
type Word struct {
	Key     string // tables within it after a dot; # stands for a number, * for a name
	Label   string // * stands for that name
	Help    string // explanation with an example and unit; empty if the label suffices
	US      string // Help in US measures, if it differs
	As      As
	Choices []string // the allowed values; empty: any
}

// HelpIn returns the help in a system of measures.
func (w Word) HelpIn(u quantity.System) string {
	if u == quantity.US && w.US != "" {
		return w.US
	}
	return w.Help
}

// Parts returns the parts of garden.toml except its places, in the order of the form.
func Parts() []string {
	return []string{"garden", "normals", "offset", "season", "prices", "patch", "figures"}
}

// PartTitle returns the title of a part; for a place, that of its type.
func PartTitle(part string) string {
	if title, known := partTitles[part]; known {
		return title
	}
	return strings.TrimPrefix(part, placePart)
}

// placePart is the prefix of a part that is a type of place.
const placePart = "place/"

// PlacePart returns the part for a type of place.
func PlacePart(sort Sort) string { return placePart + string(sort) }

// Words returns the words of a part, in the order of the form.
func Words(part string) []Word { return partWords()[part] }

// WordOf returns the word of a key as it appears in a request, such as mix.2.want.early. In
// its key and label, # and * are replaced by their number and name.
func WordOf(part, key string) (Word, bool) {
	if part == "figures" {
		return figureWord(key)
	}
	for _, w := range Words(part) {
		if name, fits := w.fits(key); fits {
			w.Key, w.Label = key, strings.ReplaceAll(w.Label, "*", name)
			return w, true
		}
	}
	return Word{}, false
}

// fits reports whether a key matches the word, and the name that * matched.
func (w Word) fits(key string) (name string, fits bool) {
	own, typed := strings.Split(w.Key, "."), strings.Split(key, ".")
	if len(own) != len(typed) {
		return "", false
	}
	for i, part := range own {
		switch {
		case part == "*":
			name = typed[i]
		case part == "#" && typed[i] != "" && strings.Trim(typed[i], "0123456789") == "":
		case part != typed[i]:
			return "", false
		}
	}
	return name, true
}

// figureWord returns the word of a figure of a kind; the kinds' tables list those keys.
func figureWord(key string) (Word, bool) {
	kind, figure, _ := strings.Cut(key, ".")
	k, known := culture.Lookup(kind)
	if !known {
		return Word{}, false
	}
	all := k.Figures()
	i := slices.IndexFunc(all, func(f culture.NamedFigure) bool { return f.Key == figure })
	if i < 0 {
		return Word{}, false
	}
	help := "a whole or decimal number"
	if unit := all[i].Unit; unit != culture.Each && unit != culture.Times {
		help = fmt.Sprintf("in %s", strings.Replace(string(unit), string(culture.Share), "%", 1))
	}
	return Word{Key: key, Label: all[i].Meaning, Help: help}, true
}

// Group returns the group of a key within a part, such as "mix 2"; empty for none.
func Group(part, key string) string {
	typed := strings.Split(key, ".")
	title, known := groupTitles[typed[0]]
	switch {
	case part == "figures":
		return typed[0]
	case !known || len(typed) == 1:
		return ""
	case title.several:
		return title.says + " " + typed[1]
	}
	return title.says
}

// Called names a key of a part in the grower's words: its group, then its label. A group
// itself is named by its title.
func Called(part, key string) string {
	group := Group(part, key)
	w, known := WordOf(part, key)
	switch {
	case known && group != "":
		return group + ", " + w.Label
	case known:
		return w.Label
	case group != "":
		return group
	}
	if title, is := groupTitles[key]; is {
		return title.says
	}
	return key
}

// Said returns a fault of garden.toml in the words of a form with its keys.
func (f Fault) Said() string {
	if f.Part == "" {
		return f.What
	}
	if called := Called(f.Part, f.Key); called != "" {
		return called + ": " + f.Form
	}
	return f.Form
}
