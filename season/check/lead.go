package check

import (
	"fmt"
	"math"

	"eyeup/place"
	"eyeup/season"
	"eyeup/stock"
)

// through returns the places of a route in one year, at the settings of the plan.
func (c *replay) through(r route, year int) through {
	in := through{ground: c.courses.of(r.ground, place.Off())[year]}
	if r.store >= 0 {
		in.store = c.courses.of(r.store, c.settings[r.store])[year]
	}
	if r.direct {
		in.first, in.on = in.ground, in.ground
		if in.store != nil {
			in.first = in.store
		}
		return in
	}
	in.first = c.courses.of(r.first, c.settings[r.first])[year]
	in.on = c.courses.of(r.on, c.settings[r.on])[year]
	if r.frame >= 0 {
		in.frame = c.courses.of(r.frame, c.settings[r.frame])[year]
	}
	return in
}

// raise leads every batch through every year.
func (c *replay) raise() {
	for _, b := range c.batches {
		ground := route{direct: true, store: b.route.store, first: -1, on: -1, frame: -1, ground: b.route.ground}
		b.years = c.lead(b.way, b.route, b.plan.How, b.holding)
		b.base = c.lead(b.dormant, ground, string(season.Whole), b.holding)
		b.fill = c.fillingOf(b)
	}
}

// lead leads what is raised in one way through every year, once for all that is alike.
func (c *replay) lead(w *way, r route, how string, h stock.Holding) []raised {
	key := fmt.Sprintf("%s\n%s\n%s\n%s\n%v %d %d %d %d %v\n", h.Variety.Kind, h.Variety.Timing, h.Form, how, r, w.start, w.outFrom, w.safe, w.framed, w.small != nil)
	for _, at := range []int{r.store, r.first, r.on, r.frame} {
		if at >= 0 {
			key += written(c.settings[at]) + "\n"
		}
	}
	if c.courses.lives[key] == nil {
		for year := range c.brief.Given.Weather {
			c.courses.lives[key] = append(c.courses.lives[key], w.walk(&c.calendar, c.through(r, year)))
		}
	}
	return c.courses.lives[key]
}

// potsUp reports whether a batch that begins in small pots is potted up in most years.
func (b *batch) potsUp() bool {
	return b.small != nil && !math.IsInf(quantile(b.middle(pottedUp), 0.5), 0)
}

// middle returns one day of the middle plant for every year.
func (b *batch) middle(day func(raised) int) []int {
	days := make([]int, len(b.years))
	for i, r := range b.years {
		days[i] = day(r)
	}
	return days
}

// each returns one day of every individual for every year.
func (b *batch) each(hour func(*plant) int) []int {
	var days []int
	for _, r := range b.years {
		for _, p := range r.lot {
			days = append(days, dayOf(hour(p)))
		}
	}
	return days
}

func bloom(p *plant) int    { return p.bloom }
func out(r raised) int      { return r.out }
func handOn(r raised) int   { return r.handOn }
func framed(r raised) int   { return r.framed }
func pottedUp(r raised) int { return r.potted }
func eyed(r raised) int     { return dayOf(r.middle.eyed) }
func up(r raised) int       { return dayOf(r.middle.up) }
