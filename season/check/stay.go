package check

import (
	"fmt"

	"eyeup/civil"
	"eyeup/season"
)

// stays holds where a batch stands from when to when by the middle dates, and the most room
// it takes there.
func (c *replay) stays() {
	for _, b := range c.batches {
		want := c.staysOf(b)
		exactly(&c.Report, "stays", b.plan.ID, len(want), len(b.plan.Stays))
		for i, got := range b.plan.Stays[:min(len(want), len(b.plan.Stays))] {
			where := fmt.Sprintf("%s in %s", b.plan.ID, want[i].Place)
			exactly(&c.Report, "stay", where, want[i].Place, got.Place)
			if !near(want[i].From, got.From, 1) || !near(want[i].To, got.To, 1) {
				c.add("stay", where, fmt.Sprintf("%v to %v", want[i].From, want[i].To), fmt.Sprintf("%v to %v", got.From, got.To))
			}
			c.within("room", where, want[i].AreaM2, got.AreaM2, alike)
		}
	}
}

func (c *replay) staysOf(b *batch) []season.Stay {
	leaves, moves := c.calendar.dateAt(b.middle(out), 0.5), c.calendar.dateAt(b.middle(handOn), 0.5)
	start := c.calendar.date(b.start)
	ground := season.Stay{Place: c.brief.Given.Places[b.route.ground].Name, From: leaves, To: c.calendar.dateAt(c.ends, 0.5), AreaM2: c.most(b, b.route.ground)}
	if b.direct {
		return []season.Stay{ground}
	}
	first := season.Stay{Place: c.brief.Given.Places[b.route.first].Name, From: start, To: leaves, AreaM2: c.most(b, b.route.first)}
	if b.forGood {
		return c.forGood(b, first, moves)
	}
	all := []season.Stay{first}
	if b.route.first != b.route.on {
		all = c.moved(all, b, b.route.on, moves)
	}
	if b.route.frame >= 0 {
		all = c.moved(all, b, b.route.frame, c.calendar.dateAt(b.middle(framed), 0.5))
	}
	return append(all, ground)
}

// moved ends the last of the stays of a batch on a day, and begins one in another place.
func (c *replay) moved(all []season.Stay, b *batch, to int, on civil.Date) []season.Stay {
	last := &all[len(all)-1]
	next := season.Stay{Place: c.brief.Given.Places[to].Name, From: on, To: last.To, AreaM2: c.most(b, to)}
	last.To = on
	return append(all, next)
}

// forGood returns the stays of what is planted under cover and cleared when it has been cut.
func (c *replay) forGood(b *batch, first season.Stay, moves civil.Date) []season.Stay {
	over := func(r raised) int { return dayOf(min(r.middle.bloom, r.middle.died)) }
	gone := c.calendar.dateOf(quantile(b.middle(over), 0.5) + float64(b.cutFor))
	if b.route.first == b.route.on {
		first.To = gone
		return []season.Stay{first}
	}
	first.To = moves
	return []season.Stay{first, {Place: c.brief.Given.Places[b.route.on].Name, From: moves, To: gone, AreaM2: c.most(b, b.route.on)}}
}

// most returns the most room that a batch takes in a place in any week, m².
func (c *replay) most(b *batch, at int) float64 {
	most := 0.0
	for _, years := range b.fill[at] {
		most = max(most, c.planted(b, at)*c.basis(years))
	}
	return most
}
