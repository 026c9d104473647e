package stock

import (
	"slices"

	"eyeup/civil"
)

// Book is the state that results from a garden's entries. It depends on the entries and their
// order alone: the same entries added in the same order give the same book. It is not safe for
// use by several goroutines while entries are being added.
type Book struct {
	entries   []written
	byID      map[ID]int32
	lots      []lot
	byLot     map[LotID]int32
	byCode    map[Code]int32
	holdings  []holding
	byHolding map[holding]int32
	spots     []Spot
	bySpot    map[Spot]int32
	texts     []string
	byText    map[string]int32
	varieties []variety
	byName    map[varietyName]int32
	described map[described][]description
	figures   []figures

	lines  []line  // in the order they were written; an index into it never changes
	order  []int32 // line numbers in the order of events; see ordered
	newest moment  // the latest moment of any line
	counts []int32 // by holding, after the last line

	latest map[civil.Date]int16 // the latest time of day of any entry on that day, in minutes

	touched    []int32  // the lots that the current batch concerns
	undo       []func() // how to undo the current batch, newest last
	recording  bool
	linesKept  int // number of lines before the batch
	newestKept moment
}

// written is an entry as the book keeps it in memory.
type written struct {
	id     ID
	moment moment
	kind   kindNumber
	first  int32 // its lines: lines[first : first+count]
	count  int32
	root   int32 // the entry that it corrects, whose place in time it takes; else itself
	head   int32 // of a root: the last entry that corrects it; itself where none does
	stands bool  // of a root: false once it was corrected to nothing
}

// moment orders entries as things happened: by day, then time of day, then order of writing.
// An entry without a time of day comes after everything known of that day when it was written.
type moment struct {
	on     civil.Date
	minute int16
	seat   int32
}

func (m moment) before(n moment) bool {
	if m.on != n.on {
		return m.on.Before(n.on)
	}
	if m.minute != n.minute {
		return m.minute < n.minute
	}
	return m.seat < n.seat
}

// holding is one lot at one spot. Its number indexes Book.counts.
type holding struct{ lot, spot int32 }

// lot is a lot as the book keeps it in memory.
type lot struct {
	id       LotID
	code     Code
	born     int32 // the entry that created it
	stands   bool  // false once that entry was corrected to nothing
	how      birth
	kind     int32 // text
	variety  int32 // as it was taken in or sown; -1: inherited from the parent
	unsure   []int32
	parents  []int32
	children []int32
	last     int32 // its newest line, -1 where it has none
}

// birth is how a lot was created.
type birth uint8

const (
	takenIn birth = iota
	divided
	doubtful
	struck
	sown
	setApart
	mixed
)

var births = [...]string{"taken in", "divided", "divided, doubtful", "struck", "sown", "set apart", "mixed"}

func (h birth) String() string { return births[h] }

// line is one effect of an entry on one holding.
type line struct {
	moment  moment
	kind    kindNumber
	op      op
	holding int32
	n       int32
	note    int32 // number of a text, of figures or of a variety, depending on kind; -1 for none
	before  int32 // the previous line of the same lot, -1 for none
}

// op is what a line does to the count of its holding.
type op uint8

const (
	nothing op = iota // it was corrected and no longer counts
	add               // adds n to the count; n may be negative
	set               // sets the count to n: a whole round counted them
	need              // requires a count of at least n
)

// figures are the numbers of a round (firm, wrinkled, soft, lost, 1 if whole) or of a division
// (clumps, good, doubtful, waste, 0).
type figures [5]int32

// New returns an empty book.
func New() *Book {
	return &Book{
		byID: map[ID]int32{}, byLot: map[LotID]int32{}, byCode: map[Code]int32{},
		byHolding: map[holding]int32{}, bySpot: map[Spot]int32{}, byText: map[string]int32{},
		byName: map[varietyName]int32{}, described: map[described][]description{},
		latest: map[civil.Date]int16{},
	}
}

// Entries returns how many entries the book holds.
func (b *Book) Entries() int { return len(b.entries) }

// Holds reports whether an entry is in the book.
func (b *Book) Holds(id ID) bool { _, held := b.byID[id]; return held }

// Nth returns the id of the n-th entry, from 0, in the order of writing.
func (b *Book) Nth(n int) ID { return b.entries[n].id }

// Head returns the last entry that corrects the given one, or the entry itself, and whether it
// still counts. held is false for an entry that the book does not hold.
func (b *Book) Head(id ID) (head ID, stands, held bool) {
	i, held := b.byID[id]
	if !held {
		return ID{}, false, false
	}
	root := &b.entries[b.entries[i].root]
	return b.entries[root.head].id, root.stands, true
}

// LastOf returns the last written entry of a kind that still counts, and the entry that last
// corrected it, or itself. is is false where there is none.
func (b *Book) LastOf(kindName string) (root, head ID, is bool) {
	n, known := kindByName[kindName]
	for i := len(b.entries) - 1; known && i >= 0; i-- {
		if e := &b.entries[i]; e.kind == n && e.stands && e.root == int32(i) {
			return e.id, b.entries[e.head].id, true
		}
	}
	return ID{}, ID{}, false
}

// fold applies lines to counts in the given order. It calls bad for each line that can't hold:
// one that makes a count negative, or requires more than there are.
func fold(lines []line, order []int32, counts []int32, bad func(line int32)) {
	for _, i := range order {
		l := &lines[i]
		switch l.op {
		case add:
			counts[l.holding] += l.n
			if counts[l.holding] < 0 && bad != nil {
				bad(i)
			}
		case set:
			counts[l.holding] = l.n
		case need:
			if counts[l.holding] < l.n && bad != nil {
				bad(i)
			}
		}
	}
}

// ordered returns the numbers of all lines in the order of events.
func (b *Book) ordered() []int32 {
	if len(b.order) == len(b.lines) {
		return b.order
	}
	b.order = b.order[:0]
	for i := range b.lines {
		b.order = append(b.order, int32(i))
	}
	slices.SortFunc(b.order, b.sooner)
	return b.order
}

// sooner compares two lines by their moments; lines of one entry keep their order.
func (b *Book) sooner(i, j int32) int {
	switch m, n := &b.lines[i].moment, &b.lines[j].moment; {
	case m.before(*n):
		return -1
	case n.before(*m):
		return 1
	}
	return int(i - j)
}

// linesOf returns the lines of a lot that count, in the order of events.
func (b *Book) linesOf(l int32) []int32 {
	var all []int32
	for i := b.lots[l].last; i >= 0; i = b.lines[i].before {
		if b.lines[i].op != nothing {
			all = append(all, i)
		}
	}
	slices.SortFunc(all, b.sooner)
	return all
}

// refold recomputes the counts of the given lots and returns the lines that can't hold.
func (b *Book) refold(lots []int32) (bad []int32) {
	slices.Sort(lots)
	for _, l := range slices.Compact(lots) {
		for _, h := range b.holdingsOf(l) {
			b.counts[h] = 0
		}
		fold(b.lines, b.linesOf(l), b.counts, func(i int32) { bad = append(bad, i) })
	}
	return bad
}

// text returns the number of a text, which it stores if it is new; -1 for an empty text.
func (b *Book) text(s string) int32 {
	if s == "" {
		return -1
	}
	i, known := b.byText[s]
	if !known {
		i = int32(len(b.texts))
		b.texts = append(b.texts, s)
		b.byText[s] = i
	}
	return i
}

// words returns the text of a number from text; empty for -1.
func (b *Book) words(i int32) string {
	if i < 0 {
		return ""
	}
	return b.texts[i]
}

// holding returns the number of a holding; a new one starts with a count of 0.
func (b *Book) holding(lot int32, at Spot) int32 {
	spot, known := b.bySpot[at]
	if !known {
		spot = int32(len(b.spots))
		b.spots = append(b.spots, at)
		b.bySpot[at] = spot
	}
	h := holding{lot, spot}
	i, known := b.byHolding[h]
	if !known {
		i = int32(len(b.holdings))
		b.holdings = append(b.holdings, h)
		b.counts = append(b.counts, 0)
		b.byHolding[h] = i
		if b.recording {
			b.undo = append(b.undo, func() {
				b.holdings, b.counts = b.holdings[:i], b.counts[:i]
				delete(b.byHolding, h)
			})
		}
	}
	return i
}
