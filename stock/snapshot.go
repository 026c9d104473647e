package stock

import (
	"encoding/binary"
	"errors"
	"fmt"

	"eyeup/civil"
)

// snapshotForm is the version of the snapshot format; other versions are not read.
const snapshotForm = 1

// ErrSnapshot is returned for a snapshot that is damaged or of another version. Nothing is
// lost: the entries give the same book.
var ErrSnapshot = errors.New("the snapshot can't be read")

// epoch is day 0 of the dates in a snapshot.
var epoch = civil.MustOn(1600, 1, 1)

// Snapshot returns the book as bytes, from which Restore makes the same book without applying
// its entries again. It is only a cache, and has no checksum of its own.
func (b *Book) Snapshot() []byte {
	w := &packer{out: make([]byte, 0, 64*len(b.entries)+40*len(b.lines)+1024)}
	w.number(snapshotForm)
	w.texts(b.texts)
	packAll(w, b.spots, func(s Spot) { w.texts([]string{s.Place, s.Crate, s.Bed, s.Row, string(s.Form)}) })
	packAll(w, b.varieties, func(v variety) { w.texts([]string{v.kind, v.name}) })
	w.number(len(b.byName))
	for n, v := range b.byName {
		w.texts([]string{n.kind, n.name})
		w.numbers(v)
	}
	packAll(w, b.entries, func(e written) {
		w.out = append(w.out, e.id[:]...)
		w.moment(e.moment)
		w.numbers(int32(e.kind), e.first, e.count, e.root, e.head, flag(e.stands))
	})
	packAll(w, b.lots, w.lot)
	packAll(w, b.holdings, func(h holding) { w.numbers(h.lot, h.spot) })
	packAll(w, b.counts, func(n int32) { w.numbers(n) })
	packAll(w, b.figures, func(f figures) { w.numbers(f[:]...) })
	packAll(w, b.lines, func(l line) {
		w.moment(l.moment)
		w.numbers(int32(l.kind)<<8|int32(l.op), l.holding, l.n, l.note, l.before)
	})
	w.moment(b.newest)
	w.number(len(b.latest))
	for day, minute := range b.latest {
		w.numbers(int32(day.Sub(epoch)), int32(minute))
	}
	w.number(len(b.described))
	for thing, ds := range b.described {
		w.texts([]string{thing.what, thing.name})
		packAll(w, ds, func(d description) { w.moment(d.moment); w.texts([]string{string(d.body)}) })
	}
	return w.out
}

// packer appends fixed-width numbers and texts.
type packer struct{ out []byte }

func (w *packer) number(n int) { w.numbers(int32(n)) }

func (w *packer) numbers(ns ...int32) {
	for _, n := range ns {
		w.out = binary.LittleEndian.AppendUint32(w.out, uint32(n))
	}
}

func (w *packer) texts(ts []string) {
	w.number(len(ts))
	for _, t := range ts {
		w.number(len(t))
		w.out = append(w.out, t...)
	}
}

func (w *packer) moment(m moment) {
	w.numbers(int32(m.on.Sub(epoch)), int32(m.minute), m.seat)
}

func (w *packer) lot(l lot) {
	w.out = append(w.out, l.id.Entry[:]...)
	w.numbers(int32(l.id.Nth), int32(l.code.number()), l.born, flag(l.stands)|int32(l.how)<<1, l.kind, l.variety, l.last)
	for _, list := range [][]int32{l.unsure, l.parents, l.children} {
		w.number(len(list))
		w.numbers(list...)
	}
}

func flag(b bool) int32 {
	if b {
		return 1
	}
	return 0
}

func packAll[T any](w *packer, all []T, one func(T)) {
	w.number(len(all))
	for _, x := range all {
		one(x)
	}
}

// Restore makes a book from a snapshot. It fails with ErrSnapshot.
func Restore(snapshot []byte) (b *Book, err error) {
	r := &unpacker{in: snapshot}
	if form := r.number(); form != snapshotForm {
		return nil, fmt.Errorf("form %d: %w", form, ErrSnapshot)
	}
	b = New()
	b.texts = r.texts()
	b.spots = unpackAll(r, func() Spot { t := r.few(5); return Spot{t[0], t[1], t[2], t[3], Form(t[4])} })
	b.varieties = unpackAll(r, func() variety { t := r.few(2); return variety{t[0], t[1]} })
	for n := r.length(); n > 0; n-- {
		t := r.few(2)
		b.byName[varietyName{t[0], t[1]}] = r.int32()
	}
	b.entries = unpackAll(r, func() written {
		e := written{id: r.id(), moment: r.moment()}
		e.kind, e.first, e.count, e.root, e.head = kindNumber(r.int32()), r.int32(), r.int32(), r.int32(), r.int32()
		e.stands = r.int32() == 1
		return e
	})
	b.lots = unpackAll(r, r.lot)
	b.holdings = unpackAll(r, func() holding { return holding{r.int32(), r.int32()} })
	b.counts = unpackAll(r, r.int32)
	b.figures = unpackAll(r, func() figures { return figures{r.int32(), r.int32(), r.int32(), r.int32(), r.int32()} })
	b.lines = unpackAll(r, func() line {
		l := line{moment: r.moment()}
		both := r.int32()
		l.kind, l.op = kindNumber(both>>8), op(both&0xff)
		l.holding, l.n, l.note, l.before = r.int32(), r.int32(), r.int32(), r.int32()
		return l
	})
	b.newest = r.moment()
	for n := r.length(); n > 0; n-- {
		day := r.day()
		b.latest[day] = int16(r.int32())
	}
	for n := r.length(); n > 0; n-- {
		t := r.few(2)
		b.described[described{t[0], t[1]}] = unpackAll(r, func() description {
			return description{r.moment(), []byte(r.few(1)[0])}
		})
	}
	if r.bad || len(r.in) > 0 {
		return nil, ErrSnapshot
	}
	b.index()
	return b, nil
}

// index fills the maps that find things by name.
func (b *Book) index() {
	b.byID = make(map[ID]int32, len(b.entries))
	for i := range b.entries {
		b.byID[b.entries[i].id] = int32(i)
	}
	b.byLot, b.byCode = make(map[LotID]int32, len(b.lots)), make(map[Code]int32, len(b.lots))
	for i := range b.lots {
		b.byLot[b.lots[i].id], b.byCode[b.lots[i].code] = int32(i), int32(i)
	}
	b.byHolding = make(map[holding]int32, len(b.holdings))
	for i, h := range b.holdings {
		b.byHolding[h] = int32(i)
	}
	for i, s := range b.spots {
		b.bySpot[s] = int32(i)
	}
	for i, t := range b.texts {
		b.byText[t] = int32(i)
	}
}

// unpacker reads what a packer wrote; bad is set when the input is too short or malformed.
type unpacker struct {
	in  []byte
	bad bool
}

func (r *unpacker) take(n int) []byte {
	if r.bad || n < 0 || n > len(r.in) {
		r.bad, r.in = true, nil
		return nil
	}
	part := r.in[:n]
	r.in = r.in[n:]
	return part
}

func (r *unpacker) int32() int32 {
	if len(r.in) < 4 {
		r.bad, r.in = true, nil
		return 0
	}
	n := int32(binary.LittleEndian.Uint32(r.in))
	r.in = r.in[4:]
	return n
}

func (r *unpacker) number() int { return int(r.int32()) }

// length reads the length of a list, which is at most the number of bytes left.
func (r *unpacker) length() int {
	n := r.number()
	if n < 0 || n > len(r.in) {
		r.bad, r.in = true, nil
		return 0
	}
	return n
}

func (r *unpacker) texts() []string {
	return unpackAll(r, func() string { return string(r.take(r.number())) })
}

// few reads exactly n texts.
func (r *unpacker) few(n int) []string {
	t := r.texts()
	if len(t) != n {
		r.bad, r.in = true, nil
		return make([]string, n)
	}
	return t
}

func (r *unpacker) id() (id ID) { copy(id[:], r.take(len(id))); return id }

func (r *unpacker) day() civil.Date { return epoch.AddDays(civil.Days(r.int32())) }

func (r *unpacker) moment() moment { return moment{r.day(), int16(r.int32()), r.int32()} }

func (r *unpacker) lot() lot {
	l := lot{id: LotID{Entry: r.id()}}
	l.id.Nth = r.number()
	code := r.number()
	if code < 0 || code >= codes {
		r.bad, code = true, 0
	}
	l.code = codeOf(code)
	l.born = r.int32()
	both := r.int32()
	l.stands, l.how = both&1 == 1, birth(both>>1)
	l.kind, l.variety, l.last = r.int32(), r.int32(), r.int32()
	l.unsure, l.parents, l.children = r.list(), r.list(), r.list()
	return l
}

func (r *unpacker) list() []int32 {
	if n := r.length(); n > 0 {
		all := make([]int32, n)
		for i := range all {
			all[i] = r.int32()
		}
		return all
	}
	return nil
}

func unpackAll[T any](r *unpacker, one func() T) []T {
	n := r.length()
	all := make([]T, 0, n)
	for range n {
		if r.bad {
			return nil
		}
		all = append(all, one())
	}
	return all
}
