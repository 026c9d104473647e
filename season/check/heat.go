package check

import (
	"fmt"
	"math"
	"slices"

	"eyeup/civil"
	"eyeup/culture"
	"eyeup/odds"
	"eyeup/place"
	"eyeup/season"
)

// exact is how far heat and what follows from it may be off, as a share.
const exact = 0.001

// cent is the rounding of money, and of other figures that are given to a hundredth.
const cent = 0.0051

// burnt is the heat of one place, by year: kWh and hours.
type burnt struct {
	asked, given, short []float64
	weekly              [][]float64 // given, by week
	worst, coldest      float64
	freezing, belowFive int
}

// heat holds what every heated place asks, is given and costs.
func (c *replay) heat() {
	for at, p := range c.brief.Given.Places {
		plan := c.placePlan(p.Name)
		if plan == nil {
			continue
		}
		heated := !plan.HeatedFrom.IsZero()
		exactly(&c.Report, "heated", p.Name, heated, plan.Heat != nil)
		c.inUse(at, plan)
		if !heated || plan.Heat == nil {
			continue
		}
		h := c.burn(at, plan)
		c.heats = append(c.heats, heatOf{p.Energy, h})
		c.holdHeat(p.Name, h, plan.Heat)
		c.holdCosts(p, h, plan)
	}
}

// heatOf is the heat of a place with its price.
type heatOf struct {
	price season.Price
	*burnt
}

// burn runs a place through its days of heat. In use it is from some days later: so long a house
// is warmed before its first plants.
func (c *replay) burn(at int, plan *season.PlacePlan) *burnt {
	from := min(max(c.calendar.day(plan.HeatedFrom), 0), c.calendar.days)
	to := max(from, min(c.calendar.day(plan.HeatedTo), c.calendar.days))
	use := min(max(c.calendar.day(plan.HeatedFrom)+warmed, from), to)
	h := &burnt{coldest: math.Inf(1), weekly: make([][]float64, c.calendar.weeks)}
	for year, course := range c.courses.of(at, c.settings[at]) {
		if c.brief.Given.Places[at].Sort == season.Bench {
			course = c.underTrays(course, at, year)
		}
		h.asked = append(h.asked, sum(course.AskedKWh[from:to]))
		h.given = append(h.given, sum(course.GivenKWh[from:to]))
		h.short = append(h.short, sum(course.HoursShort[use:to]))
		h.cold(course, use, to)
		for week := range h.weekly {
			a, b := max(c.calendar.week(week), from), min(c.calendar.week(week)+7, to)
			h.weekly[week] = append(h.weekly[week], sum(course.GivenKWh[min(a, b):b]))
		}
	}
	return h
}

// underTrays is the course of a warm bench whose mats are on under what stands on it alone:
// the electricity of a day goes by the share of the bench that is taken.
func (c *replay) underTrays(course *place.Course, at, year int) *place.Course {
	taken := *course
	taken.GivenKWh = make([]float64, len(course.GivenKWh))
	for day, kWh := range course.GivenKWh {
		for _, b := range c.batches {
			if stood, area := b.stands(b.years[year], day); stood == at {
				taken.GivenKWh[day] += kWh * float64(b.count) * area / float64(c.brief.Given.Places[at].Room)
			}
		}
	}
	taken.AskedKWh = taken.GivenKWh
	return &taken
}

// warmed is how many days a house is heated before its first plants.
var warmed = int(culture.Usual("house.ahead"))

// chilly is the air, °C, below which the plan counts the years.
const chilly = 5

func (h *burnt) cold(course *place.Course, from, to int) {
	if from >= to {
		return
	}
	h.worst = max(h.worst, slices.Max(course.WorstShort[from:to]))
	low := slices.Min(course.Air[24*from : 24*to])
	h.coldest = min(h.coldest, low)
	if low < 0 {
		h.freezing++
	}
	if low < chilly {
		h.belowFive++
	}
}

func (c *replay) holdHeat(name string, h *burnt, got *season.PlaceHeat) {
	c.spread("heat asked", name, odds.AmountOf(h.asked), got.AskedKWh, exact, 1e-6)
	c.spread("heat given", name, odds.AmountOf(h.given), got.GivenKWh, exact, 1e-6)
	c.spread("hours short", name, odds.AmountOf(h.short), got.HoursShort, exact, 1e-6)
	c.within("worst short", name, h.worst, got.WorstShortK, 0.01)
	c.within("coldest", name, h.coldest, got.ColdestC, 0.01)
	exactly(&c.Report, "years below freezing", name, h.freezing, got.YearsFreezing)
	exactly(&c.Report, "years below 5 °C", name, h.belowFive, got.YearsBelowFive)
}

// holdCosts holds the heat bill of every week.
func (c *replay) holdCosts(p season.Place, h *burnt, plan *season.PlacePlan) {
	for week, got := range plan.Weeks[:min(len(plan.Weeks), len(h.weekly))] {
		where := fmt.Sprintf("%s in the week of %v", p.Name, got.Week)
		switch {
		case got.Cost == nil && p.Energy.Known:
			c.add("heat bill", where, "a cost", "none")
		case got.Cost != nil:
			c.spread("heat bill", where, odds.AmountOf(h.weekly[week]).Times(p.Energy.Amount), *got.Cost, exact, cent)
		}
	}
}

// inUse holds that a heated place is heated while plants stand in it, but for odd years.
func (c *replay) inUse(at int, plan *season.PlacePlan) {
	if plan.HeatedFrom.IsZero() {
		return
	}
	stays, outside := 0, 0
	first, last := civil.Date{}, civil.Date{}
	for _, b := range c.batches {
		for _, r := range b.years {
			from, to := c.stayIn(b, r, at)
			if from >= to {
				continue
			}
			stays++
			a, z := c.calendar.date(from), c.calendar.date(to)
			if first.IsZero() || a.Before(first) {
				first = a
			}
			if z.After(last) {
				last = z
			}
			if a.Before(plan.HeatedFrom.AddDays(civil.Days(warmed))) || z.After(plan.HeatedTo) {
				outside++
			}
		}
	}
	if float64(outside) > oddOnes*float64(stays) {
		c.add("days of heat", plan.Place, fmt.Sprintf("%v to %v", first.AddDays(civil.Days(-warmed)), last), fmt.Sprintf("%v to %v", plan.HeatedFrom, plan.HeatedTo))
	}
}

// stayIn returns the days that a batch spends in a place before it is planted out; to is
// the day after the last.
func (c *replay) stayIn(b *batch, r raised, at int) (from, to int) {
	if b.direct || at < 0 {
		return 0, 0
	}
	if at == b.route.frame {
		return r.framed, min(r.out, dayOf(r.middle.died), c.calendar.days)
	}
	leaves := min(r.framed, r.out, dayOf(r.middle.died), c.calendar.days)
	if b.forGood {
		leaves = min(leaves, dayOf(r.middle.bloom)+b.cutFor)
	}
	switch {
	case at == b.route.first && at == b.route.on:
		return b.start, leaves
	case at == b.route.first:
		return b.start, min(r.handOn, leaves)
	case at == b.route.on:
		if c.brief.Given.Places[b.route.first].In == c.brief.Given.Places[at].Name { // on the bench of this house
			return b.start, leaves
		}
		return r.handOn, leaves
	}
	return 0, 0
}

func sum(x []float64) float64 {
	total := 0.0
	for _, v := range x {
		total += v
	}
	return total
}
