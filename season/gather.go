package season

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"eyeup/stock"
)

// How is how plants come from what stands in store.
type How string

// The ways in which plants come from stock.
const (
	Whole        How = "whole"    // clumps, divisions or corms as they are; seed as it is
	Divided      How = "divided"  // clumps cut in spring, when their eyes show
	FromCuttings How = "cuttings" // struck from clumps started early on warmth
)

// batch is what the season does with one holding, or with the part of it that is raised
// in one way.
type batch struct {
	stock.Holding
	id      string
	how     How
	life    *life
	base    *life   // of the baseline: the stock as it is
	store   int     // index of the place where it waits; -1 for seed, which waits anywhere
	want    int     // plants, cells or divisions to start
	bed     float64 // share that goes into the patch; the rest is reserve, kept in its pots
	parents int     // clumps that are cut, or mothers of cuttings
}

// gather sorts the stock into batches and what the season can't cover, with the reason.
func (m *Planner) gather() {
	spots := map[string]int{} // of a lot
	for i, h := range m.Given.Stock {
		spots[h.Code]++
		if why := m.unwanted(h); why != "" {
			m.leave(h, why)
			continue
		}
		if err := m.split(h, batchOf(h, i, spots[h.Code])); err != nil {
			m.leave(h, err.Error())
		}
	}
	m.sortBatches()
}

// unwanted says why nothing of a holding is raised, whatever room there is; empty where some is.
func (m *Planner) unwanted(h stock.Holding) string {
	_, known := m.Given.Kinds(h.Variety.Kind)
	isGrown := h.Form == stock.Tray || h.Form == stock.Cutting || h.Form == stock.Plant || h.Form == stock.Pot
	switch {
	case !known:
		return "there are no figures for this kind"
	case h.Plant+h.Reserve > 0:
		return ""
	case isGrown:
		return "there since before this season, or at rest in a store, so not counted on; write down what became of it"
	case m.Given.growsOf(h.Variety):
		return "as many as are wanted grow already; it stays where it is"
	}
	return "none is wanted in the patch or as reserve; it stays where it is"
}

// batchOf names the batch of a holding: by its lot's code, or else by its row. Of a lot that
// waits in several places, or in several forms, all but the first have a number too.
func batchOf(h stock.Holding, row, spot int) string {
	switch {
	case h.Code == "":
		return fmt.Sprintf("row %d", row+1)
	case spot == 1:
		return h.Code
	}
	return fmt.Sprintf("%s.%d", h.Code, spot)
}

// sortBatches puts the batches in the order of kinds and varieties.
func (m *Planner) sortBatches() {
	slices.SortStableFunc(m.batches, func(a, b *batch) int {
		return cmp.Or(cmp.Compare(a.Variety.Kind, b.Variety.Kind), cmp.Compare(a.Variety.Name, b.Variety.Name), cmp.Compare(a.id, b.id))
	})
}

// lifeFor returns the life of a sort of batch, making it when first met.
func (m *Planner) lifeFor(key lifeKey) (*life, error) {
	one := m.recall.lives.get(key, func() lifeOrWhy {
		k, _ := m.Given.Kinds(key.kind)
		l, err := lifeOf(k, key, m.newYear)
		if err != nil {
			return lifeOrWhy{why: err}
		}
		l.kind = m.recall.rates.indexOf(l.Name)
		m.space(l)
		return lifeOrWhy{life: l}
	})
	return one.life, one.why
}

// split makes the batches of a holding. Where more plants are wanted than clumps stand in
// store, as many are divided as that takes, and what divisions can't give is struck as
// cuttings.
func (m *Planner) split(h stock.Holding, id string) error {
	key := lifeKey{h.Variety.Kind, h.Variety.Timing, h.Form, Whole}
	whole, err := m.lifeFor(key)
	if err != nil {
		return err
	}
	want := h.Plant + h.Reserve
	b := &batch{Holding: h, id: id, bed: float64(h.Plant) / float64(want), how: Whole, life: whole, base: whole, store: m.placeNamed(h.Place), want: want}
	switch {
	case h.Form == stock.Seed:
		b.store = -1
	case want > h.Count && h.Form == stock.Clump:
		m.divide(b, key)
	default:
		b.want = min(want, h.Count)
	}
	if b.want > 0 {
		m.batches = append(m.batches, b)
	}
	return nil
}

// divide cuts as many of a batch's clumps as gives the plants that are wanted, and takes
// cuttings for those that are still lacking.
func (m *Planner) divide(whole *batch, key lifeKey) {
	want := whole.want
	whole.want = min(want, whole.Count)
	key.how = Divided
	cut, err := m.lifeFor(key)
	if err != nil || !(cut.pieces > 1) {
		return
	}
	clumps := min(whole.Count, int(math.Ceil(float64(want-whole.Count)/(cut.pieces*(1-cut.never)-1))))
	whole.want = whole.Count - clumps
	divided := *whole
	divided.id, divided.how, divided.life, divided.parents = whole.id+" divided", Divided, cut, clumps
	most := int(float64(clumps) * cut.pieces)
	divided.want = min(most, int(math.Ceil(float64(want-whole.want)/(1-cut.never))))
	m.batches = append(m.batches, &divided)
	m.strike(whole, want-whole.want-int(float64(divided.want)*(1-cut.never)), key)
}

// strike takes cuttings for plants that are still lacking, where the kind's figures say how.
func (m *Planner) strike(whole *batch, lacking int, key lifeKey) {
	if lacking <= 0 {
		return
	}
	key.how = FromCuttings
	l, err := m.lifeFor(key)
	if err != nil {
		return
	}
	struck := *whole
	struck.id, struck.how, struck.life = whole.id+" cuttings", FromCuttings, l
	struck.want = int(math.Ceil(float64(lacking) / (1 - l.never)))
	struck.parents = int(math.Ceil(float64(struck.want) / l.pieces))
	if struck.parents > whole.Count {
		struck.parents = whole.Count
		struck.want = int(float64(whole.Count) * l.pieces)
	}
	m.batches = append(m.batches, &struck)
}

// notCovered is a holding that a plan leaves alone, and why.
func notCovered(h stock.Holding, why string) NotCovered {
	return NotCovered{Kind: h.Variety.Kind, Variety: h.Variety.Name, Count: h.Count, Form: string(h.Form), Place: h.Place, Why: why}
}

func (m *Planner) leave(h stock.Holding, why string) {
	m.left = append(m.left, notCovered(h, why))
}
