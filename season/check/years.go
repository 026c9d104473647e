package check

import (
	"fmt"
	"math"

	"eyeup/civil"
	"eyeup/season"
)

// yearDates holds what became of the middle plant of every batch in every year, to the day. A batch
// may have odd years: the last digits of a sum can bring a plant up on Sunday or on Monday.
func (c *replay) yearDates() {
	for _, b := range c.batches {
		exactly(&c.Report, "years told", b.plan.ID, len(b.years), len(b.plan.Years))
		var all []Difference
		odd := 0
		for year, got := range b.plan.Years[:min(len(b.years), len(b.plan.Years))] {
			if d := c.yearOf(b, year, got); len(d) > 0 {
				all, odd = append(all, d...), odd+1
			}
		}
		if float64(odd) > math.Ceil(oddOnes*float64(len(b.years))) {
			c.Differences = append(c.Differences, all...)
		}
	}
}

// yearOf returns the dates of one year that do not come out again.
func (c *replay) yearOf(b *batch, year int, got season.YearDates) (all []Difference) {
	r := b.years[year]
	start := b.start
	if b.direct {
		start = r.out
	}
	exactly(&c.Report, "year", b.plan.ID, c.brief.Given.Years[year], got.Year)
	for _, one := range []struct {
		what string
		want int
		got  civil.Date
	}{
		{"start", start, got.Start}, {"eyes showing", eyed(r), got.Eyed}, {"coming up", up(r), got.Up},
		{"handing on", r.handOn, got.HandOn}, {"potting up", r.potted, got.PotUp}, {"moving to the frame", r.framed, got.Frame},
		{"planting out", r.out, got.PlantOut}, {"first flower", dayOf(r.middle.bloom), got.First}, {"first freeze", c.ends[year], got.Ended},
	} {
		if want := c.calendar.date(one.want); want != one.got {
			all = append(all, Difference{fmt.Sprintf("%s in %d", one.what, got.Year), b.plan.ID, want.String(), one.got.String()})
		}
	}
	return all
}
