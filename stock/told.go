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

// putRightBody puts an entry right: it counts for nothing, or says something else.
type putRightBody struct {
	Target  ID             `json:"target"`
	Nothing bool           `json:"nothing,omitzero"`
	Version int            `json:"v,omitzero"` // of the new body's shape; the target's own if not said
	Body    jsontext.Value `json:"body,omitzero"`
	Note    string         `json:"note,omitzero"`
}

func (s *putRightBody) tell(t *turn) {
	b := t.book
	target, held := b.byID[s.Target]
	switch {
	case !held || target == t.seat:
		t.fail("there is no entry %s to put right", s.Target)
	case s.Nothing == (len(s.Body) > 0):
		t.fail(`say what it ought to have said (body), or "nothing": true; one of the two`)
	}
	if t.err != nil {
		return
	}
	root := b.entries[target].root
	if head := b.entries[root].head; head != target {
		t.fail("the entry %s was put right already, by entry %s; put that one right, if it is wrong too", s.Target, b.entries[head].id)
		return
	}
	if s.Nothing && !b.entries[root].stands {
		t.fail("the entry %s counts for nothing already; to bring it back give its whole body", s.Target)
		return
	}
	t.unborn = b.withdraw(root)
	w := &b.entries[root]
	w.head, w.stands = t.seat, !s.Nothing
	b.entries[t.seat].root = root
	t.late = true // the counts after it are reckoned anew
	if !s.Nothing {
		t.retell(root, s)
	}
}

// retell lets the root entry say the new body, at its own place in time.
func (t *turn) retell(root int32, s *putRightBody) {
	kind := t.book.entries[root].kind
	if s.Version > kinds[kind].version {
		t.fail("%w", &Newer{t.id, kinds[kind].name, s.Version})
		return
	}
	said, err := bodyOf(kind, s.Body)
	if err != nil {
		t.err = err
		return
	}
	again := t.book.turnOf(root)
	again.late = true
	said.tell(again)
	t.err, t.born, t.notices = again.err, again.born, again.notices
}

// withdraw takes away all that an entry said, and returns the lots that thereby never
// came to be; retelling it may bring them back.
func (b *Book) withdraw(root int32) (unborn []int32) {
	w := &b.entries[root]
	before := *w
	ops := make([]op, 0, w.count)
	for i := w.first; i < w.first+w.count; i++ {
		ops = append(ops, b.lines[i].op)
		b.touched = append(b.touched, b.holdings[b.lines[i].holding].lot)
		b.lines[i].op = nothing
	}
	for nth := 0; ; nth++ {
		l, any := b.byLot[LotID{w.id, nth}]
		if !any {
			break
		}
		if b.lots[l].stands {
			unborn = append(unborn, l)
			b.lots[l].stands = false
		}
	}
	descriptions := b.withdrawDescription(root)
	w.first, w.count = int32(len(b.lines)), 0
	if b.recording {
		b.undo = append(b.undo, func() {
			b.entries[root] = before
			for i, op := range ops {
				b.lines[before.first+int32(i)].op = op
			}
			for _, l := range unborn {
				b.lots[l].stands = true
			}
			descriptions()
		})
	}
	return unborn
}

// withdrawDescription forgets what an entry described, and returns how to take that back.
func (b *Book) withdrawDescription(root int32) (takeBack func()) {
	for thing, ds := range b.described {
		for i := range ds {
			if ds[i].moment.seat == root {
				b.described[thing] = slices.Delete(slices.Clone(ds), i, i+1)
				return func() { b.described[thing] = ds }
			}
		}
	}
	return func() {}
}

// orphans returns the lines of lots that do not stand.
func (b *Book) orphans(lots []int32) (lines []int32) {
	for _, l := range lots {
		if b.lots[l].stands {
			continue
		}
		for i := b.lots[l].last; i >= 0; i = b.lines[i].before {
			if b.lines[i].op != nothing {
				lines = append(lines, i)
			}
		}
	}
	return lines
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

// decidedBody says which plan is followed, with what it promised that day.
type decidedBody struct {
	Plan     string         `json:"plan"`
	Lines    jsontext.Value `json:"lines,omitzero"`
	Promised jsontext.Value `json:"promised,omitzero"`
	Note     string         `json:"note,omitzero"`
}

func (s *decidedBody) tell(t *turn) {
	if s.Plan == "" {
		t.fail("say which plan is followed (plan)")
	}
}
