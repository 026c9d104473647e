package check

import (
	"slices"

	"eyeup/odds"
)

// cost adds up the money from its parts.
func (c *replay) cost() {
	got := c.plan.Cost
	heat, mix, pots := odds.Amount{}, 0.0, 0
	for _, h := range c.heats {
		bill := odds.AmountOf(h.given).Times(h.price.Amount)
		heat.Low, heat.Middle, heat.High = heat.Low+bill.Low, heat.Middle+bill.Middle, heat.High+bill.High
	}
	for _, n := range c.plan.ToGet {
		mix += n.Cost
	}
	for _, b := range c.batches {
		if !b.inBed() {
			pots += b.count
		}
	}
	exactly(&c.Report, "currency", "cost", c.brief.Given.Prices.Currency, got.Currency)
	c.spread("heat", "cost", heat, got.HeatSpread, exact, cent)
	c.within("heat", "cost", got.HeatSpread.Middle, got.Heat, cent)
	c.light(got.Light)
	c.within("mix", "cost", mix, got.Mix, cent)
	c.within("work", "cost", c.brief.Given.Prices.Hand.Times(c.hired), got.Work, cent)
	c.within("hours", "cost", c.hours, got.WorkHours, cent)
	c.within("total", "cost", got.Heat+got.Light+got.Mix+got.Work, got.Total, cent)
	if pots > 0 {
		c.within("a pot", "cost", got.Total/float64(pots), got.PerPot, cent)
	}
}

// light holds the electricity of the lamps: from the first day on which something in a lit
// place is up to the last, by the middle of the years, and right within a day.
func (c *replay) light(got float64) {
	total, day := 0.0, 0.0
	for at, p := range c.brief.Given.Places {
		if p.Lit <= 0 {
			continue
		}
		var years []float64
		for year, course := range c.courses.of(at, c.settings[at]) {
			from, to := c.lampDays(at, year)
			years = append(years, sum(course.LampKWh[min(from, to):to]))
			day = max(day, slices.Max(course.LampKWh))
		}
		total += odds.Sorted(years).At(0.5)
	}
	price := c.brief.Given.Prices.Electricity
	c.within("light", "cost", price.Times(total), got, price.Times(day)+cent)
	if total > 0 && !price.Known {
		exactly(&c.Report, "unpriced", "electricity", true, slices.Contains(c.plan.Cost.Unpriced, "electricity"))
	}
}

// lampDays returns the days of a year on which the lamps of a place are on for the season.
func (c *replay) lampDays(at, year int) (from, to int) {
	from = never
	for _, b := range c.batches {
		r := b.years[year]
		_, leaves := c.stayIn(b, r, at)
		if up := dayOf(r.middle.up); up < leaves {
			from, to = min(from, up), max(to, leaves)
		}
	}
	return from, to
}
