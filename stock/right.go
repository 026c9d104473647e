package stock

import (
	"slices"

	"github.com/go-json-experiment/json/jsontext"
)

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
