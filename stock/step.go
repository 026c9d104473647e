package stock

import (
	"slices"

	"eyeup/civil"
)

// Step is one entry that reports a stage of growth: woken, started, sown, cuttings taken,
// eyed, up, planted out, first flower.
type Step struct {
	Entry ID
	Kind  string
	On    civil.Date
	Lot   LotID
	Count int // individuals; all at the spot if eyes, shoots or flowers were not counted
}

// stepKinds are the kinds of entries that are steps.
var stepKinds = []kindNumber{kindWoken, kindStarted, kindSown, kindCuttings, kindEyed, kindUp, kindPlantedOut, kindFirstFlower}

// Steps returns all steps in the order of events.
func (b *Book) Steps() []Step {
	var all []Step
	counts := make([]int32, len(b.holdings))
	order := b.ordered()
	for n, i := range order {
		l := &b.lines[i]
		fold(b.lines, order[n:n+1], counts, nil)
		if !slices.Contains(stepKinds, l.kind) {
			continue
		}
		if count := b.stepped(l, counts[l.holding]); count > 0 {
			all = append(all, Step{b.entries[l.moment.seat].id, kinds[l.kind].name, l.moment.on, b.lots[b.holdings[l.holding].lot].id, count})
		}
	}
	return all
}

// stepped returns how many individuals a line brings to the stage; there is how many stand at
// its spot. What leaves a spot is counted where it arrives.
func (b *Book) stepped(l *line, there int32) int {
	switch {
	case l.op == add:
		return int(l.n)
	case l.op != need || l.kind == kindSown || l.kind == kindCuttings:
		return 0
	case (l.kind == kindEyed || l.kind == kindUp || l.kind == kindFirstFlower) && l.note >= 0 && b.figures[l.note][0] == 0:
		return int(there)
	}
	return int(l.n)
}

// Down returns a lot and all its offspring, mixtures included.
func (b *Book) Down(ref string) ([]LotID, error) {
	l, err := b.find(ref)
	if err != nil {
		return nil, err
	}
	at := []int32{l}
	for i := 0; i < len(at); i++ {
		for _, y := range b.lots[at[i]].children {
			if b.isChild(y, at[i]) && !slices.Contains(at, y) {
				at = append(at, y)
			}
		}
	}
	all := make([]LotID, len(at))
	for i, one := range at {
		all[i] = b.lots[one].id
	}
	return all, nil
}
