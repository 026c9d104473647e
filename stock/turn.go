package stock

import (
	"fmt"
	"slices"
)

// turn is the state while one entry is added: its body writes its effects through it. After
// the first failure, all further calls do nothing.
type turn struct {
	book    *Book
	seat    int32 // number of the root entry, which owns the new lots and lines
	id      ID    // of the root entry
	kind    kindNumber
	moment  moment
	late    bool            // the book already holds lines of a later moment
	counts  map[int32]int32 // if late: counts by holding just before this moment
	counted map[int32]bool  // the lots whose holdings are in counts
	err     error
	born    []int32
	notices []string
	breaks  []int32 // lines that can't hold
	unborn  []int32 // lots that no longer stand
}

func (t *turn) fail(format string, args ...any) {
	if t.err == nil {
		t.err = fmt.Errorf(format, args...)
	}
}

func (t *turn) notice(format string, args ...any) {
	t.notices = append(t.notices, fmt.Sprintf(format, args...))
}

// count returns how many stand at a holding just before this entry.
func (t *turn) count(h int32) int {
	if !t.late {
		return int(t.book.counts[h])
	}
	b, l := t.book, t.book.holdings[h].lot
	if !t.counted[l] {
		if t.counts == nil {
			t.counts, t.counted = map[int32]int32{}, map[int32]bool{}
		}
		t.counted[l] = true
		for _, i := range b.linesOf(l) {
			if b.lines[i].moment.before(t.moment) {
				foldOne(&b.lines[i], t.counts)
			}
		}
	}
	return int(t.counts[h])
}

// foldOne applies one line to counts in a map.
func foldOne(l *line, counts map[int32]int32) {
	switch l.op {
	case add:
		counts[l.holding] += l.n
	case set:
		counts[l.holding] = l.n
	}
}

// lot finds the lot with the given id or code; it must exist at this moment.
func (t *turn) lot(ref string) int32 {
	if t.err != nil {
		return -1
	}
	l, err := t.book.find(ref)
	if err != nil {
		t.err = err
		return -1
	}
	lot := &t.book.lots[l]
	born := &t.book.entries[lot.born]
	switch {
	case !lot.stands:
		t.fail("%s no longer exists: the entry that created it was corrected", t.book.name(l))
	case t.moment.before(born.moment) && lot.born != t.seat:
		t.fail("on %s there was no %s yet; it was %s on %s; %s", t.moment.on, t.book.name(l), lot.how, born.moment.on, t.meantDay(born.moment))
	}
	if t.err != nil {
		return -1
	}
	return l
}

// meantDay suggests the nearest day that may be meant.
func (t *turn) meantDay(born moment) string {
	if t.moment.on == born.on {
		return "give this entry a later time of day (at), or correct the other's"
	}
	next := t.moment.on.MonthDay().In(t.moment.on.Year() + 1)
	if next.Before(born.on) || next.Sub(born.on) > 366 {
		return "which day do you mean?"
	}
	return "did you mean " + next.String() + "?"
}

// standing finds the one holding of a lot that is not empty and matches the spot. If several
// match, it takes the one that equals the spot exactly; otherwise stock that stands in a place
// without crate, bed and row could not be named.
func (t *turn) standing(l int32, at Spot) int32 {
	if t.err != nil {
		return -1
	}
	var found, others []int32
	for _, h := range t.book.holdingsOf(l) {
		switch {
		case t.count(h) <= 0:
		case at.holds(t.book.spots[t.book.holdings[h].spot]):
			found = append(found, h)
		default:
			others = append(others, h)
		}
	}
	if exact := slices.IndexFunc(found, func(h int32) bool { return t.book.spots[t.book.holdings[h].spot] == at }); exact >= 0 {
		return found[exact]
	}
	switch {
	case len(found) == 1:
		return found[0]
	case len(found) > 1:
		t.fail("%s stands in several spots there on %s: %s; say which", t.book.name(l), t.moment.on, t.spots(found))
	case len(others) > 0:
		t.fail("no %s stands in %s on %s; it stands in %s", t.book.name(l), at, t.moment.on, t.spots(others))
	default:
		t.fail("none of %s is left on %s%s", t.book.name(l), t.moment.on, t.sameVariety(l, 1))
	}
	return -1
}

// spots lists holdings with their counts, like "9 clumps in cellar, crate 1".
func (t *turn) spots(hs []int32) string {
	s := ""
	for i, h := range hs {
		if i > 0 {
			s += "; "
		}
		spot := t.book.spots[t.book.holdings[h].spot]
		form := spot.Form
		spot.Form = ""
		s += form.count(t.count(h)) + " in " + spot.String()
	}
	return s
}

// sameVariety suggests another lot of the same variety with at least n individuals.
func (t *turn) sameVariety(l int32, n int) string {
	variety := t.book.varietyOf(l, &t.moment)
	for h := range t.book.holdings {
		other := t.book.holdings[h].lot
		if other == l || t.count(int32(h)) < n || !t.book.lots[other].stands || t.book.varietyOf(other, &t.moment) != variety || variety < 0 {
			continue
		}
		return fmt.Sprintf("; did you mean %s, with %s?", t.book.lots[other].code, t.spots([]int32{int32(h)}))
	}
	return ""
}

// howMany returns the number meant: the given count, or all that stand there.
func (t *turn) howMany(h int32, count int, all bool) int {
	if t.err != nil {
		return 0
	}
	stand := t.count(h)
	if all && count == 0 {
		return stand
	}
	if count > 0 && !all {
		return count
	}
	switch name := t.book.name(t.book.holdings[h].lot); {
	case all && count != stand:
		t.fail("all of %s are %d on %s, not %d; give count or all, not both", name, stand, t.moment.on, count)
	case count < 0:
		t.fail("%d of %s is not a count; a count is 1 or more", count, name)
	case count == 0:
		t.fail("say how many of %s (count), or all: %d stand there on %s", name, stand, t.moment.on)
	}
	return count
}

// take removes n from a holding.
func (t *turn) take(h int32, n int) {
	if t.err != nil || n == 0 {
		return
	}
	if stand := t.count(h); n > stand {
		l := t.book.holdings[h].lot
		t.fail("only %s of %s there on %s, not %d%s", t.spots([]int32{h}), t.book.name(l), t.moment.on, n, t.enough(l, h, n))
		return
	}
	t.write(t.kind, add, h, -n, -1)
}

// enough says where more of the lot stand, or which other lot has enough.
func (t *turn) enough(l, except int32, n int) string {
	var there []int32
	for _, h := range t.book.holdingsOf(l) {
		if h != except && t.count(h) > 0 {
			there = append(there, h)
		}
	}
	if len(there) > 0 {
		return "; there are also " + t.spots(there)
	}
	return t.sameVariety(l, n)
}

// put adds n of a lot at a spot, which must have a place and a form.
func (t *turn) put(l int32, at Spot, n int) int32 {
	if t.err == nil {
		t.checkSpot(at)
	}
	if t.err != nil {
		return -1
	}
	h := t.book.holding(l, at)
	t.write(t.kind, add, h, n, -1)
	return h
}

func (t *turn) checkSpot(at Spot) {
	switch {
	case at.Place == "":
		t.fail("say in which place they stand (place)")
	case at.Form == "":
		t.fail("say in which form they stand (form): one of %v", Forms())
	case !slices.Contains(Forms(), at.Form):
		t.fail("%q is not a form; the forms are %v", at.Form, Forms())
	case at.Crate != "" && at.Bed != "":
		t.fail("crate %s and bed %s exclude each other; give one", at.Crate, at.Bed)
	}
}

// see records that at least n stand at a holding, with a note about them.
func (t *turn) see(kind kindNumber, h int32, n int, note int32) {
	if t.err != nil {
		return
	}
	if stand := t.count(h); n > stand {
		t.fail("only %s of %s there on %s, not %d", t.spots([]int32{h}), t.book.name(t.book.holdings[h].lot), t.moment.on, n)
		return
	}
	t.write(kind, need, h, n, note)
}

// write appends a line; the lines of one entry are contiguous.
func (t *turn) write(kind kindNumber, op op, h int32, n int, note int32) {
	if t.err != nil {
		return
	}
	if n > maxCount || n < -maxCount {
		t.fail("%d is more than a garden holds; a count is at most %d", n, maxCount)
		return
	}
	b := t.book
	i := int32(len(b.lines))
	l := &b.lots[b.holdings[h].lot]
	b.lines = append(b.lines, line{t.moment, kind, op, h, int32(n), note, l.last})
	l.last = i
	b.entries[t.seat].count++
	b.touched = append(b.touched, b.holdings[h].lot)
	if t.late {
		return
	}
	b.newest = t.moment
	if len(b.order) == int(i) {
		b.order = append(b.order, i)
	}
	fold(b.lines, []int32{i}, b.counts, func(int32) { t.breaks = append(t.breaks, i) })
}

// maxCount keeps counts and their sums far below the limit of 32 bits.
const maxCount = 10_000_000
