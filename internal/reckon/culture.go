package reckon

import (
	"fmt"
	"io/fs"
	"slices"
	"strings"

	"eyeup/culture"
	"eyeup/internal/exchange"
)

// KindQuestion names a kind of plant and, if given, a garden's folder whose own figures replace the usual ones.
type KindQuestion struct {
	Kind       string
	Folder     fs.FS  // nil: the usual figures
	FolderName string // as the grower typed it, for messages
}

// kind finds the kind. The error for an unknown one lists those there are.
func (q KindQuestion) kind() (*culture.Kind, error) {
	name := strings.ToLower(strings.Join(strings.Fields(q.Kind), " "))
	k, known := culture.Lookup(name)
	if !known {
		return nil, fmt.Errorf("no figures are known for %q; there are some for %s", q.Kind, strings.Join(culture.Kinds(), ", "))
	}
	if q.Folder == nil {
		return k, nil
	}
	g, err := exchange.ReadGarden(q.Folder, q.FolderName)
	if err != nil {
		return nil, err
	}
	return k.With(g.Figures[name])
}

// CultureAnswer is all that is known about growing a kind.
type CultureAnswer struct {
	Kind    string         `json:"kind"`
	Life    string         `json:"life" jsonschema:"enum=store,enum=soak,enum=sow" jsonschema_description:"how it comes through the year"`
	Form    string         `json:"form" jsonschema_description:"what it comes from"`
	Goal    string         `json:"goal" jsonschema:"enum=flower,enum=fruit,enum=leaf,enum=bulb,enum=root"`
	Figures []FigureAnswer `json:"figures"`
	Facts   []FactAnswer   `json:"facts"`
	Unknown []UnknownPart  `json:"unknown" jsonschema_description:"figures that a season would use but that are not known"`
	Sources []SourceAnswer `json:"sources"`

	why bool
}

// FigureAnswer is one figure with all that is known of it.
type FigureAnswer struct {
	Key     string  `json:"key"`
	Meaning string  `json:"meaning"`
	Low     float64 `json:"low"`
	Value   float64 `json:"value"`
	High    float64 `json:"high"`
	Unit    string  `json:"unit"`
	Sure    string  `json:"sure" jsonschema:"enum=measured,enum=practice,enum=assumption,enum=memory,enum=own"`
	Source  string  `json:"source"`
}

// FactAnswer is something about a kind that is not a number.
type FactAnswer struct {
	About  string `json:"about"`
	Text   string `json:"text"`
	Sure   string `json:"sure"`
	Source string `json:"source"`
}

// UnknownPart is a figure that is not known.
type UnknownPart struct {
	Key     string `json:"key"`
	Meaning string `json:"meaning"`
	Blocks  bool   `json:"blocks" jsonschema_description:"without it no season of this kind can be computed"`
}

// SourceAnswer is what the short name of a source stands for.
type SourceAnswer struct {
	Name     string `json:"name"`
	Citation string `json:"citation"`
	Read     string `json:"read" jsonschema_description:"how it was seen: read, as quoted, society, trade or weak"`
}

// Culture answers what is known of a kind. With why, the source of each figure is printed too.
func Culture(q KindQuestion, why bool) (*CultureAnswer, error) {
	k, err := q.kind()
	if err != nil {
		return nil, err
	}
	a := &CultureAnswer{
		Kind: k.Name, Life: string(k.Life), Form: k.Form, Goal: string(k.Goal), why: why,
		Figures: FiguresOf(k, nil), Facts: []FactAnswer{}, Unknown: []UnknownPart{}, Sources: []SourceAnswer{},
	}
	var sources []string
	for _, f := range a.Figures {
		sources = append(sources, f.Source)
	}
	for _, f := range k.Facts() {
		a.Facts = append(a.Facts, FactAnswer{f.About, f.Text, string(f.Sure), f.Source})
		sources = append(sources, f.Source)
	}
	for _, l := range k.Lacks() {
		a.Unknown = append(a.Unknown, UnknownPart{l.Key, l.Meaning, l.Blocks})
	}
	a.Sources = citations(sources)
	return a, nil
}

// FiguresOf returns the figures of a kind whose keys begin with one of the words, or all.
func FiguresOf(k *culture.Kind, words []string) []FigureAnswer {
	all := []FigureAnswer{}
	for _, f := range k.Figures() {
		if words == nil || slices.ContainsFunc(words, func(w string) bool { return strings.HasPrefix(f.Key, w) }) {
			all = append(all, FigureAnswer{f.Key, f.Meaning, f.Low, f.Value, f.High, string(f.Unit), string(f.Sure), f.Source})
		}
	}
	return all
}

// citations returns what the sources stand for, each once, in the order of their names.
func citations(sources []string) []SourceAnswer {
	all := []SourceAnswer{}
	for _, source := range sources {
		for _, c := range culture.Cited(source) {
			all = append(all, SourceAnswer{c.Name, c.Text, c.Read})
		}
	}
	slices.SortFunc(all, func(a, b SourceAnswer) int { return strings.Compare(a.Name, b.Name) })
	return slices.Compact(all)
}
