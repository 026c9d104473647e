package check

import (
	"fmt"
	"math"
	"slices"

	"eyeup/culture"
	"eyeup/season"
	"eyeup/stock"
)

// alike is how far room may differ and be the same, m².
const alike = 0.02

// handDays is how many days after coming up what waits to be handed on does without lamps.
var handDays = int(culture.Usual("lamps.wait"))

// stands returns where a batch stands on a day of a year, -1 for nowhere, and the room a
// plant of it takes there.
func (b *batch) stands(r raised, day int) (at int, area float64) {
	up, eyed := dayOf(r.middle.up), dayOf(r.middle.eyed)
	switch {
	case day < b.start || day >= dayOf(r.middle.died):
		return -1, 0
	case b.forGood && day > dayOf(r.middle.bloom)+b.cutFor:
		return -1, 0
	case b.forGood && (day >= r.handOn || b.route.first == b.route.on):
		return b.route.on, b.bed
	case day >= r.out:
		return b.route.ground, b.bed
	case b.direct:
		return -1, 0
	case day >= r.framed:
		at = b.route.frame
	case day >= r.handOn:
		at = b.route.on
	default:
		at = b.route.first
	}
	switch {
	case b.plan.How == string(season.Divided) && day > eyed && day <= up: // cut and potted
	case up == never || day <= up+b.prick:
		return at, b.tray
	case day >= dayOf(r.middle.meet):
		return at, b.spaced
	}
	if b.small != nil && day < r.potted && day < dayOf(r.middle.touch) {
		return at, b.small.Bench.Value
	}
	return at, b.tight
}

// underLamps reports whether a batch that stands in a place on a day wants its lamps.
func (b *batch) underLamps(r raised, at, day int) bool {
	up := dayOf(r.middle.up)
	wait := handDays
	if at == b.route.on {
		wait = 0
	}
	return at >= 0 && up != never && day > up+wait
}

// rooms is the most room a plant takes in a week: benches by place, then lit benches.
func (c *replay) rooms(b *batch, r raised, week int) []float64 {
	places := len(c.brief.Given.Places)
	most := make([]float64, 2*places)
	for day := c.calendar.week(week); day < c.calendar.week(week)+7; day++ {
		at, area := b.stands(r, day)
		if at < 0 {
			continue
		}
		most[at] = max(most[at], area)
		if c.brief.Given.Places[at].Lit > 0 && b.underLamps(r, at, day) {
			most[places+at] = max(most[places+at], area)
		}
	}
	return most
}

// filling is the room a batch's plants take: by place, week and year, m² each.
type filling [][][]float64

func (c *replay) fillingOf(b *batch) filling {
	f := make(filling, 2*len(c.brief.Given.Places))
	for at := range f {
		f[at] = make([][]float64, c.calendar.weeks)
	}
	for week := range c.calendar.weeks {
		for _, r := range b.years {
			for at, area := range c.rooms(b, r, week) {
				f[at][week] = append(f[at][week], area)
			}
		}
	}
	return f
}

// basis returns the room that suffices in the share of years the brief asks for.
func (c *replay) basis(years []float64) float64 {
	sorted := slices.Clone(years)
	slices.Sort(sorted)
	return sorted[max(0, int(math.Ceil(float64(c.brief.Asked.Fits)*float64(len(sorted))))-1)]
}

// benches adds up the room used in every place and week, and holds it to the room there is.
func (c *replay) benches() {
	used := make([][]float64, len(c.brief.Given.Places))
	for at := range used {
		used[at] = make([]float64, c.calendar.weeks)
		for week := range used[at] {
			used[at][week] = c.growing(at, week, false)
			for _, b := range c.batches {
				used[at][week] += c.planted(b, at) * c.basis(b.fill[at][week])
			}
		}
	}
	for at, p := range c.brief.Given.Places {
		for week := range used[at] {
			if p.Sort == season.Ground && c.calendar.week(week) > slices.Max(c.ends) {
				used[at][week] = 0 // frost has ended the season
			}
		}
		if plan := c.placePlan(p.Name); plan != nil {
			c.placeWeeks(p, plan, used[at])
		}
		c.overfull(p, used[at])
	}
}

// growing is the room of what was started before the plan: from its day until leafy plants go out,
// each a spaced pot, or its part of a tray, in the light as far as that reaches.
func (c *replay) growing(at, week int, lit bool) float64 {
	p, monday := c.brief.Given.Places[at], c.calendar.date(c.calendar.week(week))
	if p.Sort == season.Ground || monday.Before(c.brief.Given.Today.Monday()) || !monday.Before(c.plan.PlantOutFrom) {
		return 0
	}
	area := 0.0
	for _, g := range c.brief.Given.Growing {
		k, known := c.brief.Given.Kinds(g.Kind)
		if !known || g.Place != p.Name {
			continue
		}
		name := "bench.spaced"
		if g.Form == stock.Tray {
			name = "bench.tray"
		}
		if f, is := k.Figure(name); is {
			area += float64(g.Count) * f.Value
		}
	}
	if lit {
		return min(area, float64(p.Lit))
	}
	return area
}

// planted returns how many plants of a batch take room in a place: in the patch the reserve
// takes none.
func (c *replay) planted(b *batch, at int) float64 {
	if c.brief.Given.Places[at].Sort == season.Ground {
		return float64(b.count) * float64(b.holding.Plant) / float64(b.holding.Plant+b.holding.Reserve)
	}
	return float64(b.count)
}

func (c *replay) placeWeeks(p season.Place, plan *season.PlacePlan, used []float64) {
	exactly(&c.Report, "sort", p.Name, string(p.Sort), plan.Sort)
	exactly(&c.Report, "weeks", p.Name, c.calendar.weeks, len(plan.Weeks))
	for week, got := range plan.Weeks[:min(len(plan.Weeks), c.calendar.weeks)] {
		monday := c.calendar.date(c.calendar.week(week))
		where := fmt.Sprintf("%s in the week of %v", p.Name, monday)
		exactly(&c.Report, "week", where, monday, got.Week)
		c.within("room used", where, used[week], got.UsedM2, alike)
		c.within("room there is", where, float64(p.Room), got.RoomM2, alike)
	}
}

// overfull notes where a place is short of room in some week.
func (c *replay) overfull(p season.Place, used []float64) {
	room, most := float64(p.Room), slices.Max(used)
	if room <= 0 || most <= room+cent {
		return
	}
	week := slices.IndexFunc(used, func(u float64) bool { return u > room+cent })
	c.lacks(season.Shortfall{Of: "room", Place: p.Name, Wanted: most, There: room, Week: c.calendar.date(c.calendar.week(week))})
}
