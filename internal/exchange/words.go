package exchange

import (
	"fmt"
	"slices"
	"strings"

	"eyeup/culture"
	"eyeup/quantity"
)

// As is what is typed for a key of garden.toml.
type As int

// The sorts of what is typed. A list stands with commas between; months are one measure for
// all the year or a list of twelve, January first.
const (
	AsText As = iota
	AsWhole
	AsDecimal
	AsList
	AsMonths
)

// Word is how one key of garden.toml is said to the grower.
type Word struct {
	Key     string // tables within after a dot; # stands for a number of several, * for a name
	Label   string // * stands for that name
	Help    string // what it is, with its unit; empty where the label says all
	US      string // the same in US measures, where it differs
	As      As
	Choices []string // all that may be said; empty where anything may
}

// HelpIn returns the help in the measures of a system.
func (w Word) HelpIn(u quantity.System) string {
	if u == quantity.US && w.US != "" {
		return w.US
	}
	return w.Help
}

// Parts returns the parts of garden.toml but its places, in the order in which they are told.
func Parts() []string {
	return []string{"garden", "normals", "offset", "season", "prices", "patch", "figures"}
}

// PartTitle says a part in the grower's words; of a place it is the place's sort.
func PartTitle(part string) string {
	if title, known := partTitles[part]; known {
		return title
	}
	return strings.TrimPrefix(part, placePart)
}

// placePart stands before the sort of a place where parts are named.
const placePart = "place/"

// PlacePart names the part that a place of a sort is.
func PlacePart(sort Sort) string { return placePart + string(sort) }

// Words returns the words of a part, in the order in which they are told.
func Words(part string) []Word { return partWords()[part] }

// WordOf returns the word of a key as it stands in a body, such as mix.2.want.early. The
// numbers and names that # and * stand for are put into key and label.
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

// fits reports whether a key is the word's, and what * stands for.
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

// figureWord says a figure of a kind, whose keys the kinds' own tables hold.
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

// Group says in which group of a part a key stands, such as "mix 2"; empty for none.
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

// Called says a key of a part in the grower's words: its group, then its label. A group as a
// whole is called by its title.
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

// Said tells a fault of garden.toml in the words of a form that asks for its keys.
func (f Fault) Said() string {
	if f.Part == "" {
		return f.What
	}
	if called := Called(f.Part, f.Key); called != "" {
		return called + ": " + f.Form
	}
	return f.Form
}
