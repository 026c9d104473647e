package stock

import (
	"slices"

	"github.com/go-json-experiment/json/jsontext"
)

// putRightBody corrects an entry: it cancels it, or replaces its body.
type putRightBody struct {
	Target  ID             `json:"target"`
	Nothing bool           `json:"nothing,omitzero"`
	Version int            `json:"v,omitzero"` // of the new body's format; the target's own version if 0
	Body    jsontext.Value `json:"body,omitzero"`
	Note    string         `json:"note,omitzero"`
}

func (s *putRightBody) apply(t *turn) {
	b := t.book
	target, held := b.byID[s.Target]
	switch {
	case !held || target == t.seat:
		t.fail("there is no entry %s to correct", s.Target)
	case s.Nothing == (len(s.Body) > 0):
		t.fail(`give the correct body (body), or "nothing": true to cancel it; one of the two`)
	}
	if t.err != nil {
		return
	}
	root := b.entries[target].root
	if head := b.entries[root].head; head != target {
		t.fail("the entry %s was already corrected by entry %s; if that is wrong too, correct that one", s.Target, b.entries[head].id)
		return
	}
	if s.Nothing && !b.entries[root].stands {
		t.fail("the entry %s is already cancelled; to restore it, give its whole body", s.Target)
		return
	}
	t.unborn = b.withdraw(root)
	w := &b.entries[root]
	w.head, w.stands = t.seat, !s.Nothing
	b.entries[t.seat].root = root
	t.late = true // later counts are recomputed
	if !s.Nothing {
		t.reapply(root, s)
	}
}

// reapply applies the new body at the root entry's own place in time.
func (t *turn) reapply(root int32, s *putRightBody) {
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
	said.apply(again)
	t.err, t.born, t.notices = again.err, again.born, again.notices
}

// withdraw removes the effects of an entry and returns the lots that it had created; applying
// a new body may create them again.
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

// withdrawDescription removes an entry's description and returns how to undo that.
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

// orphans returns the lines of lots whose entry no longer stands.
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
