package stock

import (
	"fmt"
	"slices"

	"eyeup/civil"
)

// Way is how a lot is related to another.
type Way string

// The ways: Down is offspring, Up is an ancestor, Side is a lot that had contact with it.
const (
	Down Way = "down"
	Up   Way = "up"
	Side Way = "side"
)

// Kin is a related lot, which may share a disease, and why.
type Kin struct {
	Lot Lot // with what is left of it, and where
	Way Way
	Why []string
}

// Kin returns all lots related to the one with the given code or id: down (its offspring), up
// (its ancestors) and sideways (cut in the same session or with the same knife that day, of
// the same mother, or standing at the same time in the same crate, bed or row). Each lot is
// listed once, under its nearest way, with every reason. Used-up lots are included: their
// offspring may still stand elsewhere.
func (b *Book) Kin(ref string) ([]Kin, error) {
	l, err := b.find(ref)
	if err != nil {
		return nil, err
	}
	k := &kinship{book: b, found: map[int32]int{}}
	k.found[l] = -1
	k.down(l)
	k.up(l)
	k.sisters(l)
	k.cut(l)
	k.beside(l)
	all := make([]Kin, len(k.kin))
	for i, f := range k.kin {
		all[i] = Kin{b.lotView(f.lot), f.way, f.why}
	}
	return all, nil
}

// kinship collects the relatives of one lot.
type kinship struct {
	book  *Book
	found map[int32]int // index in kin of each lot found; -1 for the lot itself
	kin   []kinFound
}

type kinFound struct {
	lot int32
	way Way
	why []string
}

func (k *kinship) add(l int32, way Way, why string) (isNew bool) {
	if !k.book.lots[l].stands {
		return false
	}
	at, known := k.found[l]
	switch {
	case !known:
		k.found[l] = len(k.kin)
		k.kin = append(k.kin, kinFound{l, way, []string{why}})
		return true
	case at >= 0 && !slices.Contains(k.kin[at].why, why):
		k.kin[at].why = append(k.kin[at].why, why)
	}
	return false
}

func (k *kinship) down(top int32) {
	for queue := []int32{top}; len(queue) > 0; queue = queue[1:] {
		for _, y := range k.book.lots[queue[0]].children {
			if k.book.isChild(y, queue[0]) && k.add(y, Down, k.came(y, queue[0])) {
				queue = append(queue, y)
			}
		}
	}
}

// came says how a lot arose from another.
func (k *kinship) came(l, parent int32) string {
	b := k.book
	return fmt.Sprintf("%s from %s on %s", b.lots[l].how, b.lots[parent].code, b.entries[b.lots[l].born].moment.on)
}

func (k *kinship) up(l int32) {
	for queue := []int32{l}; len(queue) > 0; queue = queue[1:] {
		for _, p := range k.book.lots[queue[0]].parents {
			why := fmt.Sprintf("%s was %s", k.book.lots[queue[0]].code, k.came(queue[0], p))
			if k.add(p, Up, why) {
				queue = append(queue, p)
			}
		}
	}
}

func (k *kinship) sisters(l int32) {
	for _, p := range k.book.lots[l].parents {
		for _, y := range k.book.lots[p].children {
			if k.book.isChild(y, p) {
				k.add(y, Side, "of the same mother, "+string(k.book.lots[p].code))
			}
		}
	}
}

// cutting is one entry in which plants were cut: the mother lot and the moment.
type cutting struct {
	entry  int32
	mother int32
	moment moment
	says   [3]int32 // sitting, knife, tools
}

// cut adds the lots cut in the same session, or with the same knife on the same day.
func (k *kinship) cut(l int32) {
	cuttings := k.book.cuttings()
	for _, own := range cuttings {
		if own.mother != l && k.book.lots[l].born != own.entry {
			continue
		}
		for _, other := range cuttings {
			if why := k.sameCut(own, other); why != "" && other.entry != own.entry {
				for _, m := range k.book.ofEntry(other) {
					k.add(m, Side, why)
				}
			}
		}
	}
}

// sameCut says what two cuttings have in common; empty if nothing.
func (k *kinship) sameCut(own, other cutting) string {
	order := "before it"
	if own.moment.before(other.moment) {
		order = "after it"
	}
	tools := ""
	if other.says[2] >= 0 {
		tools = "; tools: " + k.book.words(other.says[2])
	}
	switch {
	case own.says[0] >= 0 && own.says[0] == other.says[0]:
		return fmt.Sprintf("cut at the same sitting, %s, %s%s", k.book.words(own.says[0]), order, tools)
	case own.says[1] >= 0 && own.says[1] == other.says[1] && own.moment.on == other.moment.on:
		return fmt.Sprintf("cut with the same knife, %s, on %s, %s%s", k.book.words(own.says[1]), own.moment.on, order, tools)
	}
	return ""
}

// cuttings lists all entries that name a cutting session or a knife.
func (b *Book) cuttings() []cutting {
	var all []cutting
	for i := range b.lines {
		l := &b.lines[i]
		if l.kind < kindSitting || l.op == nothing {
			continue
		}
		if n := len(all); n == 0 || all[n-1].entry != l.moment.seat {
			all = append(all, cutting{l.moment.seat, b.holdings[l.holding].lot, l.moment, [3]int32{-1, -1, -1}})
		}
		all[len(all)-1].says[l.kind-kindSitting] = l.note
	}
	return all
}

// ofEntry lists the lots that a cutting concerned.
func (b *Book) ofEntry(c cutting) []int32 {
	all := []int32{c.mother}
	for nth := 0; ; nth++ {
		l, any := b.byLot[LotID{b.entries[c.entry].id, nth}]
		if !any {
			return all
		}
		all = append(all, l)
	}
}

// times returns the spans during which each of the wanted holdings was not empty. A span that
// has not ended ends on lastDay.
func (b *Book) times(wanted func(h int32) bool) map[int32][]civil.Span {
	open := map[int32][]civil.Span{}
	counts := make([]int32, len(b.holdings))
	order := b.ordered()
	for at, i := range order {
		l := &b.lines[i]
		if l.op == nothing || !wanted(l.holding) {
			continue
		}
		before := counts[l.holding]
		fold(b.lines, order[at:at+1], counts, nil)
		spans := open[l.holding]
		switch now := counts[l.holding]; {
		case before <= 0 && now > 0:
			open[l.holding] = append(spans, civil.Span{From: l.moment.on, To: lastDay})
		case before > 0 && now <= 0 && len(spans) > 0:
			spans[len(spans)-1].To = l.moment.on
		}
	}
	return open
}

var lastDay = civil.MustOn(9999, 12, 31)

// meet returns the first time during which both holdings were not empty.
func meet(x, y []civil.Span) (from civil.Date, to string, met bool) {
	for _, s := range x {
		for _, r := range y {
			from, end := s.From, s.To
			if from.Before(r.From) {
				from = r.From
			}
			if r.To.Before(end) {
				end = r.To
			}
			if !end.Before(from) {
				if end == lastDay {
					return from, "now", true
				}
				return from, end.String(), true
			}
		}
	}
	return civil.Date{}, "", false
}
