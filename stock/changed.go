package stock

import (
	"slices"

	"eyeup/civil"
)

// Change is what one entry did to the count of a lot at one spot.
type Change struct {
	Entry   ID
	Kind    string // of the entry
	On      civil.Date
	Lot     LotID
	Code    Code
	Variety string
	Spot    Spot
	By      int // individuals added; negative if removed; never 0
}

// SinceRounds returns the changes of counts at the spots that match at, in the order of
// events: for each lot those after its last round there, or all where there was no round.
func (b *Book) SinceRounds(at Spot) []Change {
	counts := make([]int32, len(b.holdings))
	since := map[int32][]int32{} // by holding: lines that changed its count
	by := map[int32]int32{}      // by line
	order := b.ordered()
	for n, i := range order {
		h := b.lines[i].holding
		before := counts[h]
		fold(b.lines, order[n:n+1], counts, nil)
		switch {
		case !at.holds(b.spots[b.holdings[h].spot]):
		case b.lines[i].kind == kindRound && b.lines[i].op != nothing:
			delete(since, h)
		case counts[h] != before:
			since[h] = append(since[h], i)
			by[i] = counts[h] - before
		}
	}
	var lines []int32
	for _, some := range since {
		lines = append(lines, some...)
	}
	slices.SortFunc(lines, b.sooner)
	all := make([]Change, len(lines))
	for n, i := range lines {
		all[n] = b.change(i, int(by[i]))
	}
	return all
}

func (b *Book) change(i int32, by int) Change {
	l := &b.lines[i]
	h := b.holdings[l.holding]
	e := &b.entries[l.moment.seat]
	return Change{Entry: e.id, Kind: kinds[e.kind].name, On: l.moment.on, Lot: b.lots[h.lot].id, Code: b.lots[h.lot].code,
		Variety: b.varietyName(h.lot), Spot: b.spots[h.spot], By: by}
}
