package check

import (
	"cmp"
	"fmt"
	"slices"

	"eyeup/season"
)

// lastDigits is what a sum of areas may exceed a bench by, and suffice, m².
const lastDigits = 1e-6

// crowding is the room that lacks on a bench in a week of a year, m².
type crowding struct {
	year, bench, week int
	short             float64
}

// fits holds in how many years every bench and lamp suffices in every week, in how many they were to,
// and where and when most lacks in the worst of the others.
func (c *replay) fits() {
	asked, fitting := 0, 0
	for float64(asked) < float64(c.brief.Asked.Fits)*float64(len(c.ends))-1e-9 {
		asked++
	}
	var all []crowding
	for year := range c.ends {
		lacking := c.crowded(year)
		if len(lacking) == 0 {
			fitting++
		}
		all = append(all, lacking...)
	}
	exactly(&c.Report, "years asked", "plan", asked, c.plan.Asked)
	exactly(&c.Report, "years in which it fits", "plan", fitting, c.plan.FitsYears)
	c.worst(all)
}

// crowded lists where and when room lacks in a year.
func (c *replay) crowded(year int) (all []crowding) {
	for week := range c.calendar.weeks {
		for bench := range 2 * len(c.brief.Given.Places) {
			at := bench % len(c.brief.Given.Places)
			room := c.brief.Given.Places[at].Room
			if bench != at {
				room = c.brief.Given.Places[at].Lit
			}
			used := c.growing(at, week, bench != at)
			for _, b := range c.batches {
				used += float64(b.count) * b.fill[bench][week][year]
			}
			if short := used - float64(room); short > lastDigits && c.brief.Given.Places[at].Sort != season.Ground {
				all = append(all, crowding{year, bench, week, short})
			}
		}
	}
	return all
}

// worst holds that the plan names a week in which as much lacks as in any.
func (c *replay) worst(all []crowding) {
	got := c.plan.Worst
	if got == nil || len(all) == 0 {
		exactly(&c.Report, "worst year told", "plan", len(all) > 0, got != nil)
		return
	}
	most := slices.MaxFunc(all, func(a, b crowding) int { return cmp.Compare(a.short, b.short) })
	c.within("short in the worst year", "plan", most.short, got.ShortM2, 0.01+lastDigits) // it is rounded up
	told := slices.ContainsFunc(all, func(l crowding) bool {
		return c.brief.Given.Years[l.year] == got.Year && c.benchName(l.bench) == got.Place && c.calendar.date(c.calendar.week(l.week)) == got.Week && l.short > most.short-lastDigits
	})
	if !told {
		c.add("worst year", "plan", fmt.Sprintf("%d, %s, the week of %v", c.brief.Given.Years[most.year], c.benchName(most.bench), c.calendar.date(c.calendar.week(most.week))),
			fmt.Sprintf("%d, %s, the week of %v", got.Year, got.Place, got.Week))
	}
}

// benchName is what the plan calls a bench, or the lit part of one.
func (c *replay) benchName(bench int) string {
	if places := len(c.brief.Given.Places); bench >= places {
		return c.brief.Given.Places[bench-places].Name + " under lamps"
	}
	return c.brief.Given.Places[bench].Name
}
