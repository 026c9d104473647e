package check

import (
	"math"
	"slices"

	"eyeup/culture"
	"eyeup/odds"
	"eyeup/season"
	"eyeup/stock"
	"eyeup/supply"
)

// packed is what so many of a form take that are put away for the winter.
type packed struct {
	crates float64
	litres odds.Amount // of packing
}

// packedAway fills crates one after another, and packing by the piece; known is false for a form that
// nothing is known of.
func packedAway(count int, form string, bare bool) (p packed, known bool) {
	holds, known := supplied(form + " crate")
	if !known {
		return p, false
	}
	for left := float64(count); left > 0; left -= holds.Value {
		p.crates++
	}
	if each, known := supplied(form + " packing"); known && !bare {
		n := float64(count)
		p.litres = odds.Amount{Low: n * each.Low, Middle: n * each.Value, High: n * each.High}
	}
	return p, true
}

// supplied returns a figure of package supply by its key.
func supplied(key string) (f culture.Figure, known bool) {
	for _, f := range supply.FiguresOf(key) {
		return f.Figure, true
	}
	return f, false
}

// lifted is how many clumps of all that is raised are put away in autumn: those that made a plant.
func (c *replay) lifted() int {
	clumps := 0
	for _, b := range c.batches {
		if b.kind.Life == culture.Store {
			clumps += int(math.Floor(float64(b.count) * (1 - b.fails)))
		}
	}
	return clumps
}

// packing adds what it takes to put the clumps away, and notes where the stores take fewer crates.
func (c *replay) packing(w *wants) {
	away, known := packedAway(c.lifted(), string(stock.Clump), false)
	if known && away.crates > 0 {
		w.add(season.Need{What: "vermiculite or other packing", Amount: away.litres, Unit: "L", By: c.calendar.date(slices.Min(c.ends))})
	}
	there := 0
	for _, p := range c.brief.Given.Places {
		if p.Sort == season.Store {
			there += p.Crates
		}
	}
	if there > 0 && away.crates > float64(there) {
		c.lacks(season.Shortfall{Of: "crates", Wanted: away.crates, There: float64(there), Week: c.calendar.date(slices.Min(c.ends))})
	}
}
