package check

import (
	"fmt"
	"math"
	"slices"

	"eyeup/season"
	"eyeup/stock"
)

// raising is what the plan raises from one holding: plants by how they come from it, and
// the clumps that are cut.
type raising struct {
	whole, divided, struck int
	cut, mothers           int
}

// counts holds that no plant is lost or made: what each holding gives the plan raises, or
// leaves alone and says so, and a batch is the sum of its starts.
func (c *replay) counts() {
	raised := map[string]*raising{}
	for _, h := range c.brief.Given.Stock {
		raised[nameOf(h)] = &raising{}
	}
	for i := range c.plan.Batches {
		b := &c.plan.Batches[i]
		c.sumOfStarts(b)
		if h, err := c.holdingOf(b); err == nil && raised[nameOf(h)] != nil {
			raised[nameOf(h)].add(b)
		}
	}
	covered, short := c.covered(), []*lotLack{}
	for i, h := range c.brief.Given.Stock {
		r := raised[nameOf(h)]
		if r == nil {
			continue // reported already: the lot stands in several crates
		}
		for _, other := range c.brief.Given.Stock[i+1:] {
			if nameOf(other) == nameOf(h) {
				h.Count, h.Plant, h.Reserve = h.Count+other.Count, h.Plant+other.Plant, h.Reserve+other.Reserve
			}
		}
		raised[nameOf(h)] = nil
		if covered[nameOf(h)] && c.plan.Held {
			c.given(h, r, &short)
		} else if covered[nameOf(h)] {
			c.conserved(h, r, &short)
		} else {
			exactly(&c.Report, "count", nameOf(h), 0, r.whole+r.divided+r.struck)
		}
	}
	c.lackOf(short)
}

// lotLack is what is wanted of a lot, and what is to be counted on, wherever it waits.
type lotLack struct {
	lot, variety string
	wanted       int
	counted      float64
}

// lackOf notes of which lots plants are lacking, and how many.
func (c *replay) lackOf(lots []*lotLack) {
	for _, one := range lots {
		if sure := math.Floor(one.counted + 0.5); sure < float64(one.wanted) {
			c.lacks(season.Shortfall{Of: "stock", Variety: one.variety, Wanted: float64(one.wanted), There: sure, Week: c.calendar.date(c.calendar.monday(c.calendar.turn))})
		}
	}
}

func (c *replay) sumOfStarts(b *season.BatchPlan) {
	total := 0
	for _, s := range b.Starts {
		total += s.Count
	}
	exactly(&c.Report, "count", b.ID, total, b.Count)
}

// add counts a batch. The clumps that are cut are listed with every way in which their
// pieces are raised.
func (r *raising) add(b *season.BatchPlan) {
	switch season.How(b.How) {
	case season.Divided:
		r.divided, r.cut = r.divided+b.Count, b.Parents
	case season.FromCuttings:
		r.struck, r.mothers = r.struck+b.Count, b.Parents
	default:
		r.whole += b.Count
	}
}

// raisedWay is how many plants are raised in one way, from so many clumps where they are cut or
// give cuttings.
type raisedWay struct {
	how             season.How
	raised, parents int
}

func (r *raising) ways() []raisedWay {
	return []raisedWay{{season.Whole, r.whole, 0}, {season.Divided, r.divided, r.cut}, {season.FromCuttings, r.struck, r.mothers}}
}

// covered returns the holdings that the plan does not say it leaves alone, and holds that
// what it leaves alone is there.
func (c *replay) covered() map[string]bool {
	left := slices.Clone(c.plan.NotCovered)
	covered := map[string]bool{}
	for _, h := range c.brief.Given.Stock {
		at := slices.IndexFunc(left, func(n season.NotCovered) bool {
			return n.Kind == h.Variety.Kind && n.Variety == h.Variety.Name && n.Count == h.Count && n.Form == string(h.Form) && n.Place == h.Place
		})
		if at < 0 {
			covered[nameOf(h)] = true
			continue
		}
		left = slices.Delete(left, at, at+1)
	}
	for _, n := range left {
		c.add("not covered", n.Variety, "a holding of the stock", fmt.Sprintf("%d %s: %s", n.Count, n.Form, n.Why))
	}
	return covered
}

// conserved holds what is raised from a holding to what stands in it and what is wanted, and
// notes in short how many plants are lacking.
func (c *replay) conserved(h stock.Holding, r *raising, short *[]*lotLack) {
	want, name := h.Plant+h.Reserve, nameOf(h)
	if _, err := needsOf(c.brief, h.Variety, h.Form, season.Whole); err != nil {
		c.add("count", name, err, "covered")
		return
	}
	switch {
	case h.Form == stock.Seed:
		c.asMany("count", h, r, want, r.whole)
	case r.cut == 0:
		c.asMany("count", h, r, min(want, h.Count), r.whole)
	default:
		c.asMany("count of clumps", h, r, h.Count, r.whole+r.cut)
	}
	c.fromCut(h, r)
	c.noteShort(h, r, short)
}

// noteShort notes what is wanted of a holding and what is to be counted on, by its lot.
func (c *replay) noteShort(h stock.Holding, r *raising, short *[]*lotLack) {
	lot := h.Code
	if lot == "" {
		lot = nameOf(h) + fmt.Sprint(h.Line)
	}
	at := slices.IndexFunc(*short, func(l *lotLack) bool { return l.lot == lot })
	if at < 0 {
		at = len(*short)
		*short = append(*short, &lotLack{lot: lot, variety: h.Variety.Name})
	}
	one := (*short)[at]
	one.wanted, one.counted = one.wanted+h.Plant+h.Reserve, one.counted+c.counted(h, r)
}

// given holds that a plan whose decisions are held raises no more of a holding than it gives,
// and notes in short how many plants are lacking.
func (c *replay) given(h stock.Holding, r *raising, short *[]*lotLack) {
	name := nameOf(h)
	for _, one := range r.ways() {
		n, err := needsOf(c.brief, h.Variety, h.Form, one.how)
		if err != nil {
			c.add("count", name, err, "covered")
			return
		}
		if one.how != season.Whole && one.raised > int(float64(one.parents)*n.pieces) {
			c.add("count", name, fmt.Sprintf("at most %d of %d %s", int(float64(one.parents)*n.pieces), one.parents, one.how), one.raised)
		}
	}
	if h.Form != stock.Seed && r.whole+r.cut > h.Count || r.mothers > h.Count {
		c.add("count", name, fmt.Sprintf("at most the %d there", h.Count), r.whole+r.cut)
	}
	c.noteShort(h, r, short)
}

// asMany holds that as many are raised as the rules ask for. Fewer are where a shortfall is
// said of the variety, since nothing more has room or is warm enough in time, or where the
// plants to be counted on suffice, to the nearest plant.
func (c *replay) asMany(what string, h stock.Holding, r *raising, want, got int) {
	short := slices.ContainsFunc(c.plan.Shortfalls, func(s season.Shortfall) bool {
		return s.Of == "stock" && s.Variety == h.Variety.Name
	})
	suffices := c.counted(h, r) >= float64(h.Plant+h.Reserve)-0.5
	if got > want || got < want && !short && !suffices {
		c.add(what, nameOf(h), want, got)
	}
}

// counted returns the plants that are to be counted on from what is raised of a holding.
func (c *replay) counted(h stock.Holding, r *raising) float64 {
	sure := 0.0
	for _, one := range r.ways() {
		if n, err := needsOf(c.brief, h.Variety, h.Form, one.how); err == nil && one.raised > 0 {
			sure += float64(one.raised) * (1 - n.fails)
		}
	}
	return sure
}

// fromCut holds what is raised from cut clumps and from mothers.
func (c *replay) fromCut(h stock.Holding, r *raising) {
	if r.cut == 0 {
		exactly(&c.Report, "count of cuttings", nameOf(h), 0, r.struck)
		return
	}
	lacking := float64(h.Plant + h.Reserve - r.whole)
	cut, _ := needsOf(c.brief, h.Variety, h.Form, season.Divided)
	exactly(&c.Report, "count of clumps cut", nameOf(h), c.fewestCut(h, cut), r.cut)
	c.asMany("count of divisions", h, r, enough(lacking, float64(r.cut), cut), r.divided)
	if r.struck == 0 {
		return
	}
	struck, _ := needsOf(c.brief, h.Variety, h.Form, season.FromCuttings)
	lacking -= math.Floor(float64(r.divided) * (1 - cut.fails))
	exactly(&c.Report, "count of mothers", nameOf(h), int(min(float64(h.Count), math.Ceil(math.Ceil(lacking/(1-struck.fails))/struck.pieces))), r.mothers)
	c.asMany("count of cuttings", h, r, enough(lacking, float64(r.mothers), struck), r.struck)
}

// enough returns how many pieces of so many parents to raise for the plants that are
// lacking: no more than the parents give.
func enough(lacking, parents float64, n *needs) int {
	return int(min(math.Floor(parents*n.pieces), math.Ceil(lacking/(1-n.fails))))
}

// nameOf names a holding: a lot may stand in several places, in several forms.
func nameOf(h stock.Holding) string {
	return h.Code + " " + h.Variety.Kind + " " + h.Variety.Name + " " + string(h.Form) + " in " + h.Place
}
