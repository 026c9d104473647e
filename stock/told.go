package stock

import (
	"slices"

	"github.com/go-json-experiment/json/jsontext"
)

// namedBody records that a lot is another variety than was thought.
type namedBody struct {
	Lot     string `json:"lot"`
	Variety string `json:"variety"`
	Reach   Reach  `json:"reach"`
	Note    string `json:"note,omitzero"`
}

// Reach is which lots a new name applies to.
type Reach string

// The reaches: this lot, this lot and its offspring, or every lot of the same descent.
const (
	ReachLot  Reach = "lot"
	ReachDown Reach = "down"
	ReachAll  Reach = "all"
)

func (s *namedBody) apply(t *turn) {
	l := t.lot(s.Lot)
	if s.Variety == "" {
		t.fail("say what it is called (variety)")
	}
	if !slices.Contains([]Reach{ReachLot, ReachDown, ReachAll}, s.Reach) {
		t.fail("reach %q is not known; write lot (this lot), down (it and its offspring) or all (all its kin)", s.Reach)
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

// reached lists the lots that a new name applies to. It stops at mixtures, whose parts have
// several names.
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
		for _, y := range b.lots[all[i]].children {
			if b.isChild(y, all[i]) && b.lots[y].how != mixed {
				all = append(all, y)
			}
		}
	}
	return all
}

// isChild reports whether a lot stands and still has the given parent; a correction may have
// changed its parents.
func (b *Book) isChild(l, parent int32) bool {
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

// describedBody describes a thing: a variety, a place, a price, a figure of the garden's own.
type describedBody struct {
	What string         `json:"what"`
	Name string         `json:"name"`
	Body jsontext.Value `json:"body"`
}

func (s *describedBody) apply(t *turn) {
	if s.What == "" || s.Name == "" || len(s.Body) == 0 {
		t.fail("say what is described (what), which one (name), and give the description (body)")
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

// describeVariety checks a variety's description, registers its new name if it has one, and
// returns the name under which the description is kept.
func (t *turn) describeVariety(s *describedBody) string {
	var facts varietyFacts
	if err := decode(s.Body, &facts, []string{"kind", "name", "timing", "colour", "height", "plant", "reserve", "note"}); err != nil {
		t.err = err
		return ""
	}
	t.checkKind(facts.Kind)
	if !slices.Contains([]Timing{"", Early, Mid, Late}, facts.Timing) {
		t.fail("timing %q is not known; write early, mid or late", facts.Timing)
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
		t.fail("colour %q is not a colour code; write it like #b3261e", facts.Colour)
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

// alsoCalled registers another name for a variety.
func (t *turn) alsoCalled(v int32, kind, name string) {
	b, key := t.book, nameOf(kind, name)
	other, known := b.byName[key]
	switch {
	case known && other != v:
		t.fail("%s is already the name of another variety", name)
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

// decidedBody records which plan is followed and what it promised that day. From version 2 it
// can also hold the plan's decisions: the level of each place (held) and the decision of each
// line (lines). Without held the plan is followed by its name alone.
type decidedBody struct {
	Plan     string         `json:"plan"`
	Lines    jsontext.Value `json:"lines,omitzero"`
	Promised jsontext.Value `json:"promised,omitzero"`
	Held     jsontext.Value `json:"held,omitzero"`
	Note     string         `json:"note,omitzero"`
}

func (s *decidedBody) apply(t *turn) {
	if s.Plan == "" {
		t.fail("say which plan is followed (plan)")
	}
	if len(s.Held) > 0 && (s.Held.Kind() != '{' || s.Lines.Kind() != '[') {
		t.fail("a plan with its decisions needs both held (an object) and lines (a list)")
	}
}
