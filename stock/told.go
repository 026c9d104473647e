package stock

import (
	"slices"

	"github.com/go-json-experiment/json/jsontext"
)

// namedBody says that a lot is another variety than was thought.
type namedBody struct {
	Lot     string `json:"lot"`
	Variety string `json:"variety"`
	Reach   Reach  `json:"reach"`
	Note    string `json:"note,omitzero"`
}

// Reach says how far a new name goes.
type Reach string

// The reaches: this lot, it and all that came of it, or all of one descent.
const (
	ReachLot  Reach = "lot"
	ReachDown Reach = "down"
	ReachAll  Reach = "all"
)

func (s *namedBody) tell(t *turn) {
	l := t.lot(s.Lot)
	if s.Variety == "" {
		t.fail("say what it is called (variety)")
	}
	if !slices.Contains([]Reach{ReachLot, ReachDown, ReachAll}, s.Reach) {
		t.fail("reach %q is not known; it is lot (this lot), down (its kin down) or all (all kin)", s.Reach)
	}
	if t.err != nil {
		return
	}
	kind := t.book.words(t.book.lots[l].kind)
	t.nameNotice(kind, s.Variety)
	variety := t.variety(kind, s.Variety)
	reached := t.book.reached(l, s.Reach)
	for _, k := range reached {
		if !t.moment.before(t.book.entries[t.book.lots[k].born].moment) {
			t.write(kindNamed, need, t.anywhere(k), 0, variety)
		}
	}
	t.notice("labels due for reprint: %s", t.book.codes(reached))
}

// reached lists the lots that a new name reaches. It never goes through a mixture, whose
// parts are not of one name.
func (b *Book) reached(l int32, reach Reach) []int32 {
	top := l
	for reach == ReachAll && len(b.lots[top].parents) == 1 {
		top = b.lots[top].parents[0]
	}
	all := []int32{top}
	if reach == ReachLot {
		return all
	}
	for i := 0; i < len(all); i++ {
		for _, y := range b.lots[all[i]].young {
			if b.isYoung(y, all[i]) && b.lots[y].how != mixed {
				all = append(all, y)
			}
		}
	}
	return all
}

// isYoung reports whether a lot stands and came of another; what was put right may have
// given it another parent since.
func (b *Book) isYoung(l, parent int32) bool {
	return b.lots[l].stands && slices.Contains(b.lots[l].parents, parent)
}

func (b *Book) codes(ls []int32) string {
	s := ""
	for i, l := range ls {
		if i > 0 {
			s += ", "
		}
		s += string(b.lots[l].code)
	}
	return s
}

// describedBody says how a thing is: a variety, a place, a price, a figure overridden.
type describedBody struct {
	What string         `json:"what"`
	Name string         `json:"name"`
	Body jsontext.Value `json:"body"`
}

func (s *describedBody) tell(t *turn) {
	if s.What == "" || s.Name == "" || len(s.Body) == 0 {
		t.fail("say what is described (what), which one (name), and how it is (body)")
		return
	}
	thing := described{s.What, s.Name}
	if s.What == "variety" {
		thing.name = t.describeVariety(s)
	}
	if t.err != nil {
		return
	}
	b := t.book
	before := b.described[thing]
	b.described[thing] = append(slices.Clip(before), description{t.moment, s.Body.Clone()})
	if b.recording {
		b.undo = append(b.undo, func() { b.described[thing] = before })
	}
}

// describeVariety checks a variety's description, lets it be known by its new name too,
// and returns under which name the description is kept.
func (t *turn) describeVariety(s *describedBody) string {
	var facts varietyFacts
	if err := decode(s.Body, &facts, []string{"kind", "name", "timing", "colour", "height", "plant", "reserve", "note"}); err != nil {
		t.err = err
		return ""
	}
	t.checkKind(facts.Kind)
	if !slices.Contains([]Timing{"", Early, Mid, Late}, facts.Timing) {
		t.fail("timing %q is not known; it is early, mid or late", facts.Timing)
	}
	if !facts.Height.IsZero() {
		if _, err := facts.Height.Length(); err != nil {
			t.fail("height: %w", err)
		}
	}
	if facts.Plant < 0 || facts.Reserve < 0 {
		t.fail("plant and reserve are whole numbers from 0")
	}
	if !isColour(facts.Colour) {
		t.fail("colour %q is not written like #rrggbb", facts.Colour)
	}
	v := t.variety(facts.Kind, s.Name)
	if t.err != nil {
		return ""
	}
	if facts.Name != "" {
		t.alsoCalled(v, facts.Kind, facts.Name)
	}
	name := t.book.varieties[v].name
	return facts.Kind + "/" + nameOf(facts.Kind, name).name
}

// alsoCalled lets a variety be known by another name.
func (t *turn) alsoCalled(v int32, kind, name string) {
	b, key := t.book, nameOf(kind, name)
	other, known := b.byName[key]
	switch {
	case known && other != v:
		t.fail("%s is another variety's name already", name)
	case !known:
		b.byName[key] = v
		if b.recording {
			b.undo = append(b.undo, func() { delete(b.byName, key) })
		}
	}
}

func isColour(s string) bool {
	if s == "" {
		return true
	}
	if len(s) != 7 || s[0] != '#' {
		return false
	}
	for _, c := range s[1:] {
		if !(c >= '0' && c <= '9' || c >= 'a' && c <= 'f' || c >= 'A' && c <= 'F') {
			return false
		}
	}
	return true
}

// decidedBody says which plan is followed, with what it promised that day; and where its
// decisions are held, which places are held at what level (held), beside what is decided of each
// line. Without that the plan is followed by its name.
type decidedBody struct {
	Plan     string         `json:"plan"`
	Lines    jsontext.Value `json:"lines,omitzero"`
	Promised jsontext.Value `json:"promised,omitzero"`
	Held     jsontext.Value `json:"held,omitzero"`
	Note     string         `json:"note,omitzero"`
}

func (s *decidedBody) tell(t *turn) {
	if s.Plan == "" {
		t.fail("say which plan is followed (plan)")
	}
	if len(s.Held) > 0 && (s.Held.Kind() != '{' || s.Lines.Kind() != '[') {
		t.fail("a plan whose decisions are held says what is held (held, an object) and what is decided line by line (lines, a list)")
	}
}
