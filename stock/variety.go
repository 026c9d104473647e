package stock

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"
)

// variety is a named variety of a kind. Its identity never changes; its name may.
type variety struct {
	kind string
	name string // as first written; a description may have renamed it since
}

// varietyName is a name of a variety, independent of spacing and capitals.
type varietyName struct{ kind, name string }

func nameOf(kind, name string) varietyName {
	return varietyName{kind, strings.Join(strings.FieldsFunc(strings.ToLower(name), unicode.IsSpace), " ")}
}

// variety returns the number of the variety with that name, and adds it if it is new.
func (b *Book) variety(kind, name string) int32 {
	key := nameOf(kind, name)
	i, known := b.byName[key]
	if !known {
		i = int32(len(b.varieties))
		b.varieties = append(b.varieties, variety{kind, name})
		b.byName[key] = i
		if b.recording {
			b.undo = append(b.undo, func() {
				b.varieties = b.varieties[:i]
				delete(b.byName, key)
			})
		}
	}
	return i
}

// varietyFacts is the description of a variety. It is the only kind of description that this
// package reads.
type varietyFacts struct {
	Kind    string  `json:"kind"`
	Name    string  `json:"name,omitzero"` // its new name
	Timing  Timing  `json:"timing,omitzero"`
	Colour  string  `json:"colour,omitzero"`
	Height  Measure `json:"height,omitzero"`
	Plant   int     `json:"plant,omitzero"`
	Reserve int     `json:"reserve,omitzero"`
	Note    string  `json:"note,omitzero"`
}

// described identifies a thing that entries describe: a variety, a place, a price.
type described struct{ what, name string }

// description is how a thing was described at a moment.
type description struct {
	moment moment
	body   []byte // canonical JSON
}

// Description is the latest description of a thing.
type Description struct {
	Name string
	Body []byte // canonical JSON, as it was written
}

// Described returns the latest description of each thing of the given sort, in the order in
// which they were first described.
func (b *Book) Described(what string) []Description {
	type seated struct {
		Description
		seat int32
	}
	var found []seated
	for thing, ds := range b.described {
		if d, any := last(ds); any && thing.what == what {
			found = append(found, seated{Description{thing.name, d.body}, ds[0].moment.seat})
		}
	}
	slices.SortFunc(found, func(a, b seated) int { return int(a.seat - b.seat) })
	all := make([]Description, len(found))
	for i, f := range found {
		all[i] = f.Description
	}
	return all
}

func last(ds []description) (latest description, any bool) {
	for _, d := range ds {
		if !any || latest.moment.before(d.moment) {
			latest, any = d, true
		}
	}
	return latest, any
}

// Wanted is how many of a variety are to stand in the patch, and how many are kept back as
// insurance, by its latest description.
type Wanted struct{ Plant, Reserve int }

// varietyView returns a variety by its latest name and description.
func (b *Book) varietyView(i int32) (Variety, Wanted, string) {
	v := b.varieties[i]
	view := Variety{Name: v.name, Kind: v.kind}
	d, any := last(b.described[described{"variety", v.kind + "/" + nameOf(v.kind, v.name).name}])
	if !any {
		return view, Wanted{}, ""
	}
	var facts varietyFacts
	if err := json.Unmarshal(jsontext.Value(d.body), &facts); err != nil {
		panic("stock: a description was checked when it was added: " + err.Error())
	}
	if facts.Name != "" {
		view.Name = facts.Name
	}
	view.Timing, view.Colour = facts.Timing, facts.Colour
	if !facts.Height.IsZero() {
		view.Height, _ = facts.Height.Length() // checked when it was added
	}
	return view, Wanted{facts.Plant, facts.Reserve}, facts.Note
}

// Varieties returns all varieties in the book by their latest names, in the order in which
// they were first written.
func (b *Book) Varieties() []Variety {
	all := make([]Variety, len(b.varieties))
	for i := range b.varieties {
		all[i], _, _ = b.varietyView(int32(i))
	}
	return all
}

// varietyOf returns the variety that a lot was thought to be just before a moment, or after
// the last entry if until is nil; -1 if unknown.
func (b *Book) varietyOf(l int32, until *moment) int32 {
	lot := &b.lots[l]
	if at := b.lastLine(l, kindNamed, until); at >= 0 {
		return b.lines[at].note
	}
	if lot.variety >= 0 || lot.how == takenIn || lot.how == mixed || len(lot.parents) != 1 {
		return lot.variety
	}
	born := b.entries[lot.born].moment
	return b.varietyOf(lot.parents[0], &born)
}

// lastLine returns the latest line of a kind for a lot before a moment; -1 for none.
func (b *Book) lastLine(l int32, kind kindNumber, until *moment) int32 {
	found := int32(-1)
	for i := b.lots[l].last; i >= 0; i = b.lines[i].before {
		at := &b.lines[i]
		if at.kind != kind || at.op == nothing || until != nil && !at.moment.before(*until) {
			continue
		}
		if found < 0 || b.lines[found].moment.before(at.moment) {
			found = i
		}
	}
	return found
}

// DescriptionOf returns the variety of a lot, by kind and the name it was first written under,
// and its latest description, nil if it has none. It fails where the variety is unsure.
func (b *Book) DescriptionOf(ref string) (kind, name string, body []byte, err error) {
	l, err := b.find(ref)
	if err != nil {
		return "", "", nil, err
	}
	i := b.varietyOf(l, nil)
	if i < 0 {
		return "", "", nil, fmt.Errorf("%s may be one of several varieties; write a named entry first", b.name(l))
	}
	v := b.varieties[i]
	if d, any := last(b.described[described{"variety", v.kind + "/" + nameOf(v.kind, v.name).name}]); any {
		body = d.body
	}
	return v.kind, v.name, body, nil
}
