package stock

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"eyeup/civil"
)

// Added is the result of adding one entry.
type Added struct {
	ID      ID
	Born    []Born   // the lots that the entry created
	Notices []string // advice for the grower; none of it prevents the entry
}

// Born is a newly created lot, with the code for its label.
type Born struct {
	Lot  LotID `json:"lot"`
	Code Code  `json:"code"`
}

// Refusal is the error for an entry that can't be added. It says why in the grower's words.
type Refusal struct {
	Entry  ID
	Kind   string
	On     civil.Date
	Why    string
	Breaks []Broken // entries already in the book that would no longer hold
	cause  error
}

// Broken is an entry already in the book that the refused entry would contradict.
type Broken struct {
	Entry ID
	Says  string
}

// Error returns the reason and the broken entries, one a line.
func (r *Refusal) Error() string {
	var s strings.Builder
	fmt.Fprintf(&s, "%s on %s: %s", r.Kind, r.On, r.Why)
	for _, b := range r.Breaks {
		fmt.Fprintf(&s, "\n  %s (entry %s)", b.Says, b.Entry)
	}
	if len(r.Breaks) > 0 {
		s.WriteString("\n  correct these in the same batch")
	}
	return s.String()
}

// Unwrap returns the underlying error, such as a *Newer.
func (r *Refusal) Unwrap() error { return r.cause }

// Add adds a batch of entries: all of them, or none. Its error is a *Refusal, which says which
// entry is refused and why. Entries that the book already holds are refused. After a
// successful Add, call Keep to make it final or TakeBack to undo it, before the next Add.
func (b *Book) Add(entries ...Entry) ([]Added, error) {
	b.recording, b.linesKept, b.newestKept = true, len(b.lines), b.newest
	added, err := b.addAll(entries)
	if err != nil {
		b.TakeBack()
		return nil, err
	}
	return added, nil
}

// Keep makes the last Add final.
func (b *Book) Keep() { b.undo, b.recording = b.undo[:0], false }

// TakeBack undoes everything added since the last Keep.
func (b *Book) TakeBack() {
	if !b.recording {
		return
	}
	b.dropLines(b.linesKept)
	for i := len(b.undo) - 1; i >= 0; i-- {
		b.undo[i]()
	}
	b.newest = b.newestKept
	b.refold(slices.DeleteFunc(b.touched, func(l int32) bool { return int(l) >= len(b.lots) }))
	b.Keep()
}

// Replay adds entries that a book already accepted once, without recording how to undo them.
// After an error the book must be discarded.
func (b *Book) Replay(entries ...Entry) error {
	_, err := b.addAll(entries)
	return err
}

func (b *Book) addAll(entries []Entry) ([]Added, error) {
	all := make([]Added, len(entries))
	b.touched = b.touched[:0]
	late := false
	var breaks, unborn []int32
	for i := range entries {
		from := len(b.touched)
		t, err := b.addOne(&entries[i])
		if err != nil {
			return nil, refuse(&entries[i], err)
		}
		if t.late {
			late = true
			breaks = b.refold(b.touched[from:])
		}
		breaks = append(breaks, t.breaks...)
		unborn = append(unborn, t.unborn...)
		all[i] = Added{ID: entries[i].ID, Notices: t.notices}
		for _, l := range t.born {
			all[i].Born = append(all[i].Born, Born{b.lots[l].id, b.lots[l].code})
		}
	}
	if late {
		breaks = append(b.refold(b.touched), b.orphans(unborn)...)
	}
	if len(breaks) > 0 {
		return nil, b.broken(entries, breaks)
	}
	return all, nil
}

func refuse(e *Entry, err error) error {
	return &Refusal{Entry: e.ID, Kind: e.Kind, On: e.On, Why: err.Error(), cause: err}
}

// addOne adds one entry. The caller checks what the entry breaks.
func (b *Book) addOne(e *Entry) (*turn, error) {
	if b.Holds(e.ID) {
		return nil, fmt.Errorf("the entry %s is already in the book", e.ID)
	}
	if err := e.check(); err != nil {
		return nil, err
	}
	n, err := kindOf(e)
	if err != nil {
		return nil, err
	}
	if err := n.checkVersion(e); err != nil {
		return nil, err
	}
	said, err := bodyOf(n, e.Body)
	if err != nil {
		return nil, err
	}
	seat := b.seatEntry(e, n)
	t := b.turnOf(seat)
	said.apply(t)
	return t, t.err
}

// turnOf starts the turn of the root entry with the given number.
func (b *Book) turnOf(seat int32) *turn {
	w := &b.entries[seat]
	t := &turn{book: b, seat: seat, id: w.id, kind: w.kind, moment: w.moment}
	t.late = t.moment.before(b.newest)
	return t
}

// seatEntry appends an entry to the book and fixes its number and its moment in time.
func (b *Book) seatEntry(e *Entry, n kindNumber) int32 {
	seat := int32(len(b.entries))
	minute, _ := minuteOf(e.At) // checked
	known, any := b.latest[e.On]
	if minute < 0 && any {
		minute = known
	}
	minute = max(minute, 0)
	b.entries = append(b.entries, written{
		id: e.ID, moment: moment{e.On, minute, seat}, kind: n, first: int32(len(b.lines)),
		root: seat, head: seat, stands: true,
	})
	b.byID[e.ID] = seat
	b.latest[e.On] = max(minute, known)
	if b.recording {
		id, on := e.ID, e.On
		b.undo = append(b.undo, func() {
			b.entries = b.entries[:seat]
			delete(b.byID, id)
			if any {
				b.latest[on] = known
			} else {
				delete(b.latest, on)
			}
		})
	}
	return seat
}

// dropLines removes all lines from the given one on.
func (b *Book) dropLines(from int) {
	for i := len(b.lines) - 1; i >= from; i-- {
		b.lots[b.holdings[b.lines[i].holding].lot].last = b.lines[i].before
	}
	if len(b.order) > from {
		b.order = b.order[:0]
	}
	b.lines = b.lines[:from]
}

// broken makes the Refusal for lines whose counts fail; it names the first of the entries.
func (b *Book) broken(entries []Entry, lines []int32) error {
	first := &entries[0]
	r := &Refusal{Entry: first.ID, Kind: first.Kind, On: first.On, cause: errors.New("it contradicts the book")}
	told := map[int32]bool{}
	for _, i := range lines {
		root := b.lines[i].moment.seat
		if told[root] || len(r.Breaks) == maxBreaks {
			continue
		}
		told[root] = true
		r.Breaks = append(r.Breaks, Broken{b.entries[root].id, b.lineText(i)})
	}
	r.Why = "it would contradict entries already in the book:"
	if int(b.lines[lines[0]].moment.seat) >= len(b.entries)-len(entries) {
		r.Why = "the counts do not fit:"
	}
	return r
}

// maxBreaks is how many broken entries a Refusal lists.
const maxBreaks = 10

// lineText describes a line for a Refusal.
func (b *Book) lineText(i int32) string {
	l := &b.lines[i]
	spot := b.spots[b.holdings[l.holding].spot]
	form := spot.Form
	spot.Form = ""
	n := int(l.n)
	if l.op == add {
		n = -n
	}
	name := b.name(b.holdings[l.holding].lot)
	if n <= 0 {
		return fmt.Sprintf("%s: %s of %s, in %s", l.moment.on, kinds[l.kind].name, name, spot)
	}
	return fmt.Sprintf("%s: %s, %s of %s in %s", l.moment.on, kinds[l.kind].name, form.count(n), name, spot)
}

// lineEffect says what a line did, for the lot's own page.
func (b *Book) lineEffect(i int32) string {
	l := &b.lines[i]
	spot := b.spots[b.holdings[l.holding].spot]
	form := spot.Form
	spot.Form = ""
	switch {
	case l.kind == kindRound:
		f := b.figures[l.note]
		return fmt.Sprintf("%d firm, %d wrinkled, %d soft, %d lost in %s", f[0], f[1], f[2], f[3], spot)
	case l.op == add && l.n >= 0:
		return fmt.Sprintf("%s to %s", form.count(int(l.n)), spot)
	case l.op == add:
		return fmt.Sprintf("%s from %s", form.count(-int(l.n)), spot)
	case l.kind == kindNamed:
		view, _, _ := b.varietyView(l.note)
		return view.Name
	case l.kind == kindDivided:
		f := b.figures[l.note]
		return fmt.Sprintf("%s cut: %d good, %d doubtful, %d waste", form.count(int(f[0])), f[1], f[2], f[3])
	case l.note >= 0 && (l.kind == kindPacked || l.kind == kindProved || l.kind == kindMarked || l.kind == kindSick || l.kind == kindSetApart):
		return b.words(l.note)
	}
	return "in " + spot.String()
}
