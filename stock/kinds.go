package stock

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"eyeup/quantity"
)

// body is the body of an entry of one kind.
type body interface {
	// apply writes the entry's effects through t; it reports an error by t.fail.
	apply(t *turn)
}

// kindNumber is the index of a kind in kinds.
type kindNumber uint8

// kind is a kind of entry: its name, the version of the body's format that this program
// writes, and an empty body.
type kind struct {
	name    string
	version int
	empty   func() body
	members []string
	since   map[string]int // the first version with a member, where that is not 1
}

// The kinds of entries. Snapshots store these numbers, so a new kind goes to the end.
const (
	kindTakenIn kindNumber = iota
	kindLifted
	kindCured
	kindPacked
	kindRound
	kindWoken
	kindDivided
	kindStarted
	kindEyed
	kindUp
	kindWatered
	kindMoved
	kindPottedUp
	kindPinched
	kindCuttings
	kindHardened
	kindPlantedOut
	kindFirstFlower
	kindStemsCut
	kindProved
	kindMarked
	kindSick
	kindDestroyed
	kindGivenAway
	kindSold
	kindNamed
	kindMixed
	kindSetApart
	kindNote
	kindPutRight
	kindDescribed
	kindDecided
	kindSown

	// These mark extra lines of a division; no entry has them as its kind.
	kindSitting
	kindKnife
	kindTools
)

var kinds, kindByName = allKinds()

func allKinds() ([]kind, map[string]kindNumber) {
	table := []kind{
		kindTakenIn:     {name: "taken in", empty: func() body { return new(takenInBody) }},
		kindLifted:      {name: "lifted", empty: func() body { return &moveBody{gone: true} }},
		kindCured:       {name: "cured", empty: func() body { return new(seenBody) }},
		kindPacked:      {name: "packed", empty: func() body { return new(packedBody) }},
		kindRound:       {name: "round", empty: func() body { return new(roundBody) }},
		kindWoken:       {name: "woken", empty: func() body { return new(moveBody) }},
		kindDivided:     {name: "divided", empty: func() body { return new(dividedBody) }},
		kindStarted:     {name: "started", empty: func() body { return new(moveBody) }},
		kindEyed:        {name: "eyed", empty: func() body { return new(seenBody) }},
		kindUp:          {name: "up", empty: func() body { return new(seenBody) }},
		kindWatered:     {name: "watered", empty: func() body { return new(wateredBody) }},
		kindMoved:       {name: "moved", empty: func() body { return new(moveBody) }},
		kindPottedUp:    {name: "potted up", empty: func() body { return &moveBody{form: Pot} }},
		kindPinched:     {name: "pinched", empty: func() body { return new(seenBody) }},
		kindCuttings:    {name: "cuttings taken", empty: func() body { return new(cuttingsBody) }},
		kindHardened:    {name: "hardened", empty: func() body { return new(moveBody) }},
		kindPlantedOut:  {name: "planted out", empty: func() body { return &moveBody{form: Plant} }},
		kindFirstFlower: {name: "first flower", empty: func() body { return new(seenBody) }},
		kindStemsCut:    {name: "stems cut", empty: func() body { return new(stemsBody) }},
		kindProved:      {name: "name proved", empty: func() body { return new(provedBody) }},
		kindMarked:      {name: "marked", empty: func() body { return new(markedBody) }},
		kindSick:        {name: "marked sick", empty: func() body { return new(sickBody) }},
		kindDestroyed:   {name: "destroyed", empty: func() body { return new(goneBody) }},
		kindGivenAway:   {name: "given away", empty: func() body { return new(goneBody) }},
		kindSold:        {name: "sold", empty: func() body { return new(goneBody) }},
		kindNamed:       {name: "named", empty: func() body { return new(namedBody) }},
		kindMixed:       {name: "mixed", empty: func() body { return new(mixedBody) }},
		kindSetApart:    {name: "set apart", empty: func() body { return new(setApartBody) }},
		kindNote:        {name: "note", empty: func() body { return new(noteBody) }},
		kindPutRight:    {name: "put right", empty: func() body { return new(putRightBody) }},
		kindDescribed:   {name: "described", empty: func() body { return new(describedBody) }},
		kindDecided:     {name: "decided", version: 2, since: map[string]int{"held": 2}, empty: func() body { return new(decidedBody) }},
		kindSown:        {name: "sown", empty: func() body { return new(sownBody) }},
	}
	byName := map[string]kindNumber{}
	for i := range table {
		k := &table[i]
		k.version = max(k.version, 1)
		k.members = membersOf(reflect.TypeOf(k.empty()).Elem())
		byName[k.name] = kindNumber(i)
	}
	return table, byName
}

// Kinds lists the kinds of entries, in alphabetical order.
func Kinds() []string {
	var names []string
	for _, k := range kinds {
		names = append(names, k.name)
	}
	slices.Sort(names)
	return names
}

// Version returns the version of the body's format in which this program writes entries of a
// kind; 1 for an unknown kind.
func Version(kindName string) int {
	if n, known := kindByName[kindName]; known {
		return kinds[n].version
	}
	return 1
}

// membersOf lists the JSON members that a body may have.
func membersOf(t reflect.Type) []string {
	var names []string
	for i := range t.NumField() {
		f := t.Field(i)
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		switch {
		case f.Anonymous && name == "":
			names = append(names, membersOf(f.Type)...)
		case name != "":
			names = append(names, name)
		}
	}
	return names
}

// Newer is the error for an entry whose kind or version this program does not know, because a
// newer program wrote it.
type Newer struct {
	Entry   ID
	Kind    string
	Version int
}

// Error says what to do.
func (n *Newer) Error() string {
	return fmt.Sprintf("entry %s is of kind %q, version %d, which this program does not know; a newer eyeup wrote it: use that version", n.Entry, n.Kind, n.Version)
}

// kindOf finds the kind of an entry. An unknown kind is an error that wraps a *Newer.
func kindOf(e *Entry) (kindNumber, error) {
	n, known := kindByName[e.Kind]
	if !known {
		if near, like := quantity.Nearest(e.Kind, Kinds()); like {
			return 0, fmt.Errorf("there is no kind of entry %q; is %q meant? %w", e.Kind, near, &Newer{e.ID, e.Kind, e.Version})
		}
		return 0, fmt.Errorf("there is no kind of entry %q; there are: %s. %w", e.Kind, strings.Join(Kinds(), ", "), &Newer{e.ID, e.Kind, e.Version})
	}
	if e.Version > kinds[n].version {
		return 0, &Newer{e.ID, e.Kind, e.Version}
	}
	return n, nil
}

// checkVersion refuses a member that the entry's version does not have yet: an older program
// would read such an entry wrongly.
func (n kindNumber) checkVersion(e *Entry) error {
	if e.Version >= kinds[n].version {
		return nil
	}
	var said map[string]jsontext.Value
	if json.Unmarshal(e.Body, &said) != nil {
		return nil // bodyOf reports the error
	}
	for name, since := range kinds[n].since {
		if _, is := said[name]; is && e.Version < since {
			return fmt.Errorf("%q in a %q needs \"v\":%d", name, e.Kind, since)
		}
	}
	return nil
}

// bodyOf reads the body of an entry of a kind.
func bodyOf(n kindNumber, raw []byte) (body, error) {
	b := kinds[n].empty()
	if err := decode(raw, b, kinds[n].members); err != nil {
		return nil, err
	}
	return b, nil
}
