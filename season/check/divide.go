package check

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"eyeup/culture"
	"eyeup/season"
	"eyeup/stock"
)

// cut is a lot of which clumps are cut, into so many pieces.
type cut struct {
	holding        stock.Holding
	clumps, pieces int
}

// beforeOut is how many weeks before the Monday of planting out clumps are cut in spring.
var beforeOut = int(culture.Usual("divide.before"))

// dividing holds what is cut, and what cutting it in spring and in autumn comes to.
func (c *replay) dividing() {
	wanted, told := c.wantCut(), slices.Clone(c.plan.Dividing)
	exactly(&c.Report, "lots divided", "plan", len(wanted), len(told))
	for _, want := range wanted {
		at := slices.IndexFunc(told, func(d season.Dividing) bool {
			return d.Variety == want.holding.Variety.Name && d.Clumps == want.clumps && d.Pieces == want.pieces
		})
		if at < 0 {
			c.add("divided", want.holding.Variety.Name, fmt.Sprintf("%d clumps into %d pieces", want.clumps, want.pieces), told)
			continue
		}
		c.bothSeasons(want, told[at])
		told = slices.Delete(told, at, at+1)
	}
}

// bothSeasons holds what cutting in spring and in autumn comes to, and which is chosen.
func (c *replay) bothSeasons(of cut, got season.Dividing) {
	n, err := needsOf(c.brief, of.holding.Variety, of.holding.Form, season.Divided)
	if err != nil {
		c.add("divided", got.Variety, err, got.Clumps)
		return
	}
	wake, _ := n.kind.Work("wake")
	divide, _ := n.kind.Work("divide")
	clumps, name := float64(of.clumps), got.Variety
	spring := c.kept(of.holding, n, string(stock.Clump), of.clumps)
	autumn := c.kept(of.holding, n, string(stock.Division), of.pieces)
	spring.Hours, autumn.Hours = clumps*(divide+wake)/60, clumps*divide/60
	c.cutSeason("divided in spring", name, spring, got.Spring)
	c.cutSeason("divided in autumn", name, autumn, got.Autumn)
	choice := "spring"
	if autumn.Through.Middle > spring.Through.Middle {
		choice = "autumn"
	}
	exactly(&c.Report, "divided when", name, choice, got.Choice)
}

// kept is what keeping so many of a form through the winter comes to, but for the hours.
func (c *replay) kept(h stock.Holding, n *needs, form string, count int) season.CutSeason {
	till := c.calendar.day(c.plan.PlantOutFrom) - 7*beforeOut
	away, _ := packedAway(count, form, h.Pack == "bare")
	return season.CutSeason{Through: c.comesThrough(h, form, n.kind, till), Crates: away.crates, Packing: away.litres.Middle}
}

func (c *replay) cutSeason(what, where string, want, got season.CutSeason) {
	c.spread(what+": come through", where, want.Through, got.Through, exact, 0)
	c.within(what+": crates", where, want.Crates, got.Crates, 0)
	c.within(what+": packing", where, want.Packing, got.Packing, litre)
	c.within(what+": hours", where, want.Hours, got.Hours, cent)
}

// wantCut lists the lots that are cut: those that do not give as many plants as are wanted of them, so
// many clumps as that takes; in a plan whose decisions are held, those that are decided.
func (c *replay) wantCut() (all []cut) {
	if c.plan.Held {
		return c.decidedCuts()
	}
	covered := c.covered()
	for _, h := range c.brief.Given.Stock {
		want := h.Plant + h.Reserve
		n, err := needsOf(c.brief, h.Variety, h.Form, season.Divided)
		if err != nil || !covered[nameOf(h)] || h.Form != stock.Clump || want <= h.Count || !(n.pieces > 1) {
			continue
		}
		clumps := c.fewestCut(h, n)
		all = append(all, cut{h, clumps, enough(float64(want-h.Count+clumps), float64(clumps), n)})
	}
	return all
}

// fewestCut is how many clumps of a lot are to be cut at least, so that it gives the plants wanted.
func (c *replay) fewestCut(h stock.Holding, n *needs) int {
	lacking := float64(h.Plant + h.Reserve - h.Count)
	return int(min(float64(h.Count), math.Ceil(lacking/(n.pieces*(1-n.fails)-1))))
}

// decidedCuts lists the lots of which it is decided that clumps are cut, and holds that no more pieces
// are decided than the clumps give, nor raised than are decided.
func (c *replay) decidedCuts() (all []cut) {
	if c.plan.Decisions == nil {
		c.add("decisions", "plan", "what is held", "nothing")
		return nil
	}
	raised := map[string]int{}
	for _, d := range c.plan.Decisions.Batches {
		id, _, _ := strings.Cut(d.ID, "/")
		first := raised[id] == 0
		raised[id] += d.Count
		if d.How != season.Divided || d.Parents == 0 {
			continue
		}
		if raised[id] > d.Of {
			c.add("divided", id, fmt.Sprintf("at most the %d pieces decided", d.Of), raised[id])
		}
		if h, is := c.lotOf(d); is && first {
			all = append(all, cut{h, d.Parents, d.Of})
		}
	}
	return all
}

// lotOf returns the holding that something is decided about: by its code, or its row.
func (c *replay) lotOf(d season.Decided) (stock.Holding, bool) {
	id, _, _ := strings.Cut(d.ID, "/")
	for i, h := range c.brief.Given.Stock {
		if h.Variety.Kind == d.Kind && h.Form == d.Form && cmp.Or(h.Code, fmt.Sprintf("row %d", i+1)) == strings.TrimSuffix(id, " "+string(d.How)) {
			return h, true
		}
	}
	c.add("divided", id, "a lot of the stock", d.Variety)
	return stock.Holding{}, false
}
