package season

import (
	"cmp"
	"fmt"
	"slices"

	"eyeup/civil"
)

// Name names a group by its kind and how its plants come from the stock.
func (g *Group) Name() string {
	b := g.batches[0]
	return fmt.Sprintf("%s %s %s %s", b.Variety.Kind, b.Variety.Timing, b.Form, b.how)
}

// Of is a group of the same batches with another number of plants.
func (g *Group) Of(plants int) *Group { return &Group{g.batches, plants} }

// NewAssignment is an assignment of nothing yet, that gains so many weeks of flower, with changes
// of level by place.
func NewAssignment(gain float64, steps map[int]Step) Assignment {
	return Assignment{short: map[*batch]*lack{}, Left: map[*batch]int{}, Value: gain, Steps: steps}
}

// Add gives the batches of a group their plants by counts of its choices: choice by choice, the
// earliest first, batch by batch. What is over is left out.
func (a *Assignment) Add(g *Group, all []*Choice, counts []int) {
	a.Portions = append(a.Portions, g.part(all, counts, a.Left)...)
}

// part gives the batches of a group their plants. What is over is left out.
func (g *Group) part(all []*Choice, counts []int, left map[*batch]int) []Portion {
	order := make([]int, len(all))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int {
		return cmp.Or(cmp.Compare(all[i].start, all[j].start), cmp.Compare(all[i].route.name, all[j].route.name))
	})
	rest := slices.Clone(counts)
	var portions []Portion
	for _, b := range g.batches {
		want := b.want
		for _, i := range order {
			if n := min(want, rest[i]); n > 0 {
				portions = append(portions, Portion{b, all[i].outcome, n})
				rest[i], want = rest[i]-n, want-n
			}
		}
		if want > 0 {
			left[b] = want
		}
	}
	return portions
}

// group is batches that are raised alike and wait in one place: a programme counts their
// plants together, and parts them again afterwards.
type Group struct {
	batches []*batch // in the maker's order
	Want    int      // plants of all of them
}

// groups puts like batches together, in the maker's order.
func (m *Planner) Groups() []*Group {
	type key struct {
		life  *life
		store int
		held  civil.Date
	}
	at := map[key]*Group{}
	var all []*Group
	for _, b := range m.batches {
		k := key{life: b.life, store: b.store}
		if day, is := m.Asked.Held[b.Code]; is {
			k.held = day.Monday()
		}
		if at[k] == nil {
			at[k] = &Group{}
			all = append(all, at[k])
		}
		at[k].batches = append(at[k].batches, b)
		at[k].Want += b.want
	}
	return all
}
