package check

import (
	"fmt"
	"slices"
	"strings"

	"eyeup/season"
	"eyeup/stock"
)

// batch is a batch of the plan with the holding it comes from, the way it is raised and
// what became of it.
type batch struct {
	*way
	plan    *season.BatchPlan
	holding stock.Holding
	route   route
	years   []raised
	dormant *way     // the baseline: the stock as it is, straight into the ground
	base    []raised // and what became of that
	count   int
	fill    filling
}

// route is the places a batch passes, by their number in the brief. The store is -1 for
// seed, first, on and frame are -1 for what goes straight into the ground.
type route struct {
	direct, forGood  bool
	small            bool // begins in a small pot
	store, first, on int
	frame            int // where it hardens; -1: carried out and in
	ground           int
}

// direct is the name of the route straight into the ground.
const direct = "straight into the ground"

// routeNamed reads the places from the name of a route.
func routeNamed(b *season.Brief, name string, store, ground int) (route, bool) {
	r := route{store: store, first: -1, on: -1, frame: -1, ground: ground}
	name, r.small = strings.CutSuffix(name, ", in small pots first")
	if way, frame, hardens := strings.Cut(name, ", hardened in "); hardens {
		name, r.frame = way, slices.IndexFunc(b.Given.Places, func(p season.Place) bool { return p.Name == frame })
		if r.frame < 0 {
			return r, false
		}
	}
	name, r.forGood = strings.CutSuffix(name, ", for good")
	if name == direct {
		r.direct = true
		return r, true
	}
	for i, p := range b.Given.Places {
		if name == p.Name || name == p.Name+", under lamps" {
			r.first, r.on = i, i
			return r, true
		}
		for j, q := range b.Given.Places {
			if name == p.Name+", then "+q.Name {
				r.first, r.on = i, j
				return r, true
			}
		}
	}
	return r, false
}

// readBatches reads the batches of the plan. What can't be read is reported and left out.
func (c *replay) readBatches() {
	for i := range c.plan.Batches {
		plan := &c.plan.Batches[i]
		b, err := c.readBatch(plan)
		if err != nil {
			c.add("decision", plan.ID, err, "unreadable")
			continue
		}
		c.batches = append(c.batches, b)
	}
}

func (c *replay) readBatch(plan *season.BatchPlan) (*batch, error) {
	if len(plan.Starts) != 1 {
		return nil, fmt.Errorf("one start, since the dates of a batch are those of one start")
	}
	holding, err := c.holdingOf(plan)
	if err != nil {
		return nil, err
	}
	n, err := needsOf(c.brief, holding.Variety, holding.Form, season.How(plan.How))
	if err != nil {
		return nil, err
	}
	b := &batch{plan: plan, holding: holding, count: plan.Count}
	b.way = &way{needs: n}
	store := c.placeNamed(holding.Place)
	if holding.Form == stock.Seed {
		store = -1
	}
	var known bool
	start := plan.Starts[0]
	if b.route, known = routeNamed(c.brief, start.Route, store, c.courses.ground()); !known {
		return nil, fmt.Errorf("a route by places of the garden, not %q", start.Route)
	}
	if b.route.small {
		if b.small = smallOf(c.brief, n); b.small == nil {
			return nil, fmt.Errorf("a way without a small pot, since the garden has none for %s", plan.Kind)
		}
	}
	b.direct, b.forGood, b.start, b.outFrom = b.route.direct, b.route.forGood, c.calendar.day(start.Week), c.outFrom(n)
	if c.plan.Held {
		b.outFrom = c.calendar.day(plan.OutFrom)
	}
	switch {
	case b.direct:
		b.way = c.directly(n)
	case b.start < 0 || b.start >= c.calendar.days:
		return nil, fmt.Errorf("a start within the season, not %v", start.Week)
	default:
		b.safe, b.framed = c.safeFrom(b.route.on, n), never
		if c.brief.Given.Places[b.route.first].Sort == season.Bench {
			b.safe = 0 // the air of its bench is no warmer
		}
		if b.route.frame >= 0 {
			b.framed = c.framedFrom(b.route.frame, b.way)
		}
	}
	whole, err := needsOf(c.brief, holding.Variety, holding.Form, season.Whole)
	if err != nil {
		return nil, err
	}
	b.dormant = c.directly(whole)
	return b, nil
}

// directly is the way straight into the ground: dormant stock that frost does not reach
// as soon as the soil allows, all else when frost allows too.
func (c *replay) directly(n *needs) *way {
	w := &way{needs: n, direct: true, start: c.calendar.monday(max(c.calendar.turn, 0)), outFrom: c.outFrom(n), framed: never}
	if n.setBack > 0 {
		w.outFrom = 0
	}
	return w
}

// holdingOf returns the holding that a batch comes from: by its code, or its row. It fails
// where there is none, or where the lot waits in several places.
func (c *replay) holdingOf(plan *season.BatchPlan) (stock.Holding, error) {
	var found *stock.Holding
	row, _, _ := strings.Cut(plan.ID, "/")
	row = strings.TrimSuffix(row, " "+plan.How)
	for i, h := range c.brief.Given.Stock {
		same := h.Variety.Kind == plan.Kind && h.Variety.Name == plan.Variety && string(h.Form) == plan.Form && h.Code == plan.Code && (plan.Place == "" || h.Place == plan.Place)
		if !same || h.Code == "" && row != fmt.Sprintf("row %d", i+1) {
			continue
		}
		if found != nil && found.Place != h.Place && h.Form != stock.Seed {
			return h, fmt.Errorf("where it waits, since it stands in %s and in %s", found.Place, h.Place)
		}
		if found == nil {
			found = &h
		}
	}
	if found == nil {
		return stock.Holding{}, fmt.Errorf("a holding of this code, name, kind and form in the stock")
	}
	return *found, nil
}

func (c *replay) placeNamed(name string) int {
	for i, p := range c.brief.Given.Places {
		if p.Name == name {
			return i
		}
	}
	return -1
}
