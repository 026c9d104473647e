package check

import (
	"fmt"
	"maps"
	"slices"

	"eyeup/season"
	"eyeup/stock"
)

// counts holds that no plant is lost or made: what each holding gives, the plan raises or leaves
// alone and says so, and a batch is the sum of its starts.
func (c *replay) counts() {
	raised, wanted := map[string]int{}, map[string]int{}
	left := map[season.NotCovered]int{}
	for _, n := range c.plan.NotCovered {
		n.Why = ""
		left[n]++
	}
	for i := range c.plan.Batches {
		b := &c.plan.Batches[i]
		total := 0
		for _, s := range b.Starts {
			total += s.Count
		}
		exactly(&c.Report, "count", b.ID, total, b.Count)
		raised[b.Code+" "+b.Kind+" "+b.Variety+" "+b.Form] += b.Count
	}
	for _, h := range c.brief.Stock {
		n := season.NotCovered{Kind: h.Variety.Kind, Variety: h.Variety.Name, Count: h.Count, Form: string(h.Form)}
		if left[n] > 0 {
			left[n]--
			continue
		}
		wanted[nameOf(h)] += wantOf(h)
	}
	for name := range raised {
		wanted[name] += 0 // what is raised and not wanted is told too
	}
	for _, name := range slices.Sorted(maps.Keys(wanted)) {
		exactly(&c.Report, "count", name, wanted[name], raised[name])
	}
	for _, n := range c.plan.NotCovered {
		why := n.Why
		n.Why = ""
		if left[n] > 0 {
			left[n]--
			c.add("not covered", n.Variety, "a holding of the stock", fmt.Sprintf("%d %s: %s", n.Count, n.Form, why))
		}
	}
}

// nameOf names a holding by all but its place: a lot may stand in several.
func nameOf(h stock.Holding) string {
	return h.Code + " " + h.Variety.Kind + " " + h.Variety.Name + " " + string(h.Form)
}

// wantOf returns how many plants of a holding are to be raised: as many as are wanted, and
// no more than there are, unless they come of seed.
func wantOf(h stock.Holding) int {
	if h.Form == stock.Seed {
		return h.Plant + h.Reserve
	}
	return min(h.Plant+h.Reserve, h.Count)
}
