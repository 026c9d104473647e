package check

import (
	"math"
	"slices"

	"eyeup/civil"
	"eyeup/odds"
)

// oddOnes is the share of dates that may lie further off than a day, none of the middle
// ones among them, and strayed how many days those few may: hours summed another way can
// bring a plant up on Sunday or on Monday, and its move a week later.
const (
	oddOnes = 0.02
	strayed = 3
)

// dates holds every date of every batch.
func (c *replay) dates() {
	var odd []Difference
	compared := 0
	hold := func(what string, b *batch, want, got civil.When) {
		compared += 3
		odd = append(odd, c.hold(what, b.plan.ID, want, got)...)
	}
	for _, b := range c.batches {
		d, when := b.plan.Dates, c.calendar.when
		hold("eyes showing", b, when(b.each(func(p *plant) int { return p.eyed })), d.Eyed)
		hold("coming up", b, when(b.each(func(p *plant) int { return p.up })), d.Up)
		hold("planting out", b, when(b.middle(out)), d.PlantOut)
		hold("first flower", b, when(b.each(bloom)), d.FirstFlower)
		moves := civil.When{}
		if b.route.first != b.route.on {
			moves = when(b.middle(handOn))
		}
		hold("handing on", b, moves, d.HandOn)
		moves = civil.When{}
		if b.small != nil {
			moves = when(b.middle(pottedUp))
		}
		hold("potting up", b, moves, d.PotUp)
		moves = civil.When{}
		if b.route.frame >= 0 {
			moves = when(b.middle(framed))
		}
		hold("moving to the frame", b, moves, d.Frame)
		c.start(b)
	}
	if float64(len(odd)) > oddOnes*float64(compared) {
		c.Differences = append(c.Differences, odd...)
	}
}

// hold reports dates that are wrong, and returns those that are no more than odd.
func (c *replay) hold(what, where string, want, got civil.When) (odd []Difference) {
	for _, part := range []struct {
		name      string
		want, got civil.Date
		by        civil.Days
	}{{"early", want.Early, got.Early, strayed}, {"middle", want.Middle, got.Middle, 1}, {"late", want.Late, got.Late, strayed}} {
		d := Difference{what + " (" + part.name + ")", where, part.want.String(), part.got.String()}
		switch {
		case !near(part.want, part.got, part.by):
			c.Differences = append(c.Differences, d)
		case !near(part.want, part.got, 1):
			odd = append(odd, d)
		}
	}
	return odd
}

// start holds the week of starting: a Monday that has not gone by; for what goes straight
// into the ground the middle day of planting.
func (c *replay) start(b *batch) {
	week, stated := b.plan.Starts[0].Week, b.plan.Dates.Start
	if b.direct {
		if want := c.calendar.dateAt(b.middle(out), 0.5); !near(want, stated, 1) {
			c.add("start", b.plan.ID, want, stated)
		}
	} else {
		exactly(&c.Report, "start", b.plan.ID, week, stated)
		if b.start < c.calendar.nowDay && !c.plan.Held {
			c.add("start", b.plan.ID, "not before the week of "+c.brief.Given.Today.String(), week)
		}
	}
	if !stated.IsZero() {
		exactly(&c.Report, "start", b.plan.ID, stated.Monday(), week)
	}
}

// weeksOfFlower returns the weeks from first flower to the first autumn freeze, or to when it
// has flowered itself out.
func weeksOfFlower(r raised, end int) float64 {
	if r.middle.died != never {
		return 0
	}
	return max(0, float64(min(end, r.spent)-dayOf(r.middle.bloom))/7)
}

// aDay is a day's gain in weeks of flower, with the rounding of dates.
const aDay = 1.0/7 + 1e-9

// gains holds the weeks gained, the nights too cold, the years lost and those without flower.
func (c *replay) gains() {
	dahlias := false
	for _, b := range c.batches {
		dahlias = dahlias || b.plan.Kind == "dahlia"
	}
	every, chosen := c.newGained(), c.newGained()
	var first []int
	for _, b := range c.batches {
		gains := c.gain(b)
		c.spread("weeks gained", b.plan.ID, odds.AmountOf(gains), b.plan.Gain, 0, aDay)
		every.add(b.count, gains)
		if dahlias && b.plan.Kind != "dahlia" {
			continue
		}
		chosen.add(b.count, gains)
		for range b.count {
			first = append(first, b.each(bloom)...)
		}
	}
	c.spread("weeks gained", "plan", chosen.each(), c.plan.GainWeeks, 0, aDay)
	c.spread("weeks gained by all", "plan", every.each(), c.plan.GainAll, 0, aDay)
	c.Differences = append(c.Differences, c.hold("first flower", "plan", c.calendar.when(first), c.plan.FirstFlower)...)
}

// gained is what plants gain together in every year.
type gained struct {
	weeks  []float64
	plants int
}

func (c *replay) newGained() *gained { return &gained{weeks: make([]float64, len(c.ends))} }

func (s *gained) add(count int, gains []float64) {
	s.plants += count
	for year, g := range gains {
		s.weeks[year] += float64(count) * g
	}
}

// each returns what one plant gains, over the years.
func (s *gained) each() odds.Amount {
	all := slices.Clone(s.weeks)
	for year := range all {
		all[year] /= math.Max(float64(s.plants), 1)
	}
	return odds.AmountOf(all)
}

// gain returns the weeks of flower that a batch gains in every year.
func (c *replay) gain(b *batch) []float64 {
	var gains, nights, drawn []float64
	lost, without := 0, 0
	for year, end := range c.ends {
		r := b.years[year]
		gains = append(gains, weeksOfFlower(r, end)-weeksOfFlower(b.base[year], end))
		nights, drawn = append(nights, float64(r.middle.coldNights)), append(drawn, float64(r.middle.drawn))
		if dayOf(r.middle.died) < end {
			lost++
		}
		if dayOf(r.middle.bloom) >= end {
			without++
		}
	}
	few := math.Ceil(oddOnes * float64(len(c.ends)))
	c.within("years lost", b.plan.ID, float64(lost), float64(b.plan.Lost), few)
	c.within("years without flower", b.plan.ID, float64(without), float64(b.plan.NoFlower), few)
	c.spread("nights too cold", b.plan.ID, odds.AmountOf(nights), b.plan.ColdNights, 0, 1)
	c.spread("stretched days", b.plan.ID, odds.AmountOf(drawn), b.plan.Stretched, 0, 1)
	return gains
}
