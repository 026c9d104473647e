package season

import (
	"math"
	"slices"

	"eyeup/culture"
	"eyeup/quantity"
	"eyeup/stock"
	"eyeup/supply"
)

// smallPot is one in which plants may begin, to be potted up when it begins to hold them back.
type smallPot struct {
	container string
	limit     float64 // days at best from up until it holds a plant back
	tight     float64 // m² pot-tight
	touch     float64 // days at best from up until leaves meet when it stands pot-tight
}

// usualSmall are the small pots that a garden may have, the one to prefer first.
var usualSmall = []string{"square4half", "round4"}

// pottedNoMore is how many days before the Monday of planting out nothing is potted up any
// more: it goes into the ground instead.
var pottedNoMore = int(culture.Usual("pot.last"))

// smallPots lists the pots in which plants of a life may begin: where they end in a larger one,
// and come from seed, a cutting or a division. A whole clump has no room in them.
func (l *life) smallPots(key lifeKey) []*smallPot {
	cut := key.how != Whole || key.form == stock.Division
	if math.IsInf(l.flower, 1) || !cut && l.Life != culture.Sow {
		return nil
	}
	var all []*smallPot
	for _, id := range append([]string{l.StartIn}, usualSmall...) {
		c, err := supply.ContainerNamed(id)
		if err != nil || c.Cells != 1 || id == l.container || slices.ContainsFunc(all, func(p *smallPot) bool { return p.container == id }) {
			continue
		}
		limit, tight := l.PotLimit(quantity.Volume(c.Volume.Value)*quantity.Litre), c.Bench.Value
		if limit < l.potLimit && !math.IsInf(l.potLimit, 1) && tight < l.tight {
			// leaves reach as far as a plant has come, and the room they want goes with the square
			all = append(all, &smallPot{id, limit * l.flower, tight, l.meets * math.Sqrt(tight/l.tight)})
		}
	}
	return all
}

// smallPot returns the small pot that plants of a life begin in where they are potted up: the
// kind's own, or one that the garden has a price for; nil where there is none.
func (m *Planner) smallPot(l *life) *smallPot {
	for _, p := range l.small {
		if p.container == l.StartIn || m.Given.Prices.Pots[p.container].Known {
			return p
		}
	}
	return nil
}

// pottedUp is the route on which plants begin in a small pot.
func (r *route) pottedUp(pot *smallPot) *route {
	p := *r
	p.pot = pot
	p.name += pottedName
	return &p
}

// pottedName is what such a route adds to its name.
const pottedName = ", in small pots first"

// pots moves to a larger pot what its small one has begun to hold back, unless it is to be
// planted out soon.
func (w walker) pots(day int, f *fate) {
	if w.route.pot != nil && f.potted == Never && f.full < day && day < w.outFrom-pottedNoMore {
		f.potted = day
	}
}

// limitOf returns the share of the way to flower at which a plant's pot holds it back on a day.
func (w walker) limitOf(day int, f *fate) float64 {
	if w.route.pot != nil && day < f.potted {
		return w.route.pot.limit / w.flower
	}
	return w.potLimit
}

// potArea returns the room that a plant which is up, or has been cut, takes in its pot.
func (o *option) potArea(l *life, f fate, day int) float64 {
	switch {
	case f.meet != Never && day >= f.meet:
		return l.spaced
	case o.route.pot != nil && day < f.potted && day < f.touch:
		return o.route.pot.tight
	}
	return l.tight
}

// isPottedUp reports whether plants that began in small pots are potted up in most years.
func (r *route) isPottedUp(fates []fate) bool {
	potted := 0
	for _, f := range fates {
		if f.potted != Never {
			potted++
		}
	}
	return r.pot != nil && 2*potted > len(fates)
}

// containers lists the pots and trays that plants of a life pass by a route, the first first.
func (l *life) containers(r *route, potted bool) []string {
	var all []string
	if l.StartIn != "" && (r.pot == nil || l.Life == culture.Sow) {
		all = append(all, l.StartIn)
	}
	if r.pot != nil {
		all = append(all, r.pot.container)
	}
	if r.pot == nil || potted {
		all = append(all, l.container)
	}
	return slices.Compact(all)
}

// body is what stands in the mix of the first container; nothing for seed.
func (b *batch) body() string {
	switch {
	case b.Form == stock.Seed:
		return ""
	case b.how == Divided:
		return string(stock.Division)
	case b.how == FromCuttings:
		return string(stock.Cutting)
	}
	return string(b.Form)
}

// fill passes to add the mix that raising so many plants takes, and returns how many of each
// container: those they are started in, and those they are potted on into.
func fill(containers []string, plants int, body string, add func(supply.Need, error)) map[string]int {
	pots := map[string]int{}
	for i, id := range containers {
		c, err := supply.ContainerNamed(id)
		if err != nil {
			add(supply.Need{}, err)
			continue
		}
		pots[id] = (plants + c.Cells - 1) / max(c.Cells, 1)
		if i == 0 {
			add(c.Mix(pots[id], body))
		} else {
			add(c.PotUp(containers[i-1], pots[id]))
		}
	}
	return pots
}

// containers lists the pots and trays that a part passes.
func (p *part) containers() []string {
	return p.life.containers(p.route, p.route.isPottedUp(p.fates))
}

// isPotted reports whether a part is raised in containers: not what goes straight into the
// ground, nor corms planted under cover for good.
func (p *part) isPotted() bool {
	return !p.route.direct && !(p.route.stays && p.life.Life == culture.Soak)
}
