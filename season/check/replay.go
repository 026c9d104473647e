package check

import (
	"slices"

	"eyeup/place"
	"eyeup/season"
)

// replay is a plan on its way through the years.
type replay struct {
	Report
	brief    *season.Brief
	plan     *season.Plan
	calendar calendar
	courses  *courses
	settings []place.Setting // by place, as the plan decides
	batches  []*batch
	ends     []int // day of the first autumn freeze, each year

	heats        []heatOf
	lacking      []season.Shortfall // that the plan must name
	hired, hours float64            // of work
}

// Plan replays a plan of the season that the brief asks for and reports every difference.
// A plan that can't be read, or a brief without weather, days or ground, is a difference too.
// It takes a second for a garden of forty lots and thirty years.
func Plan(b season.Brief, p *season.Plan) Report {
	return newCourses(&b).replay(p)
}

// replay replays one plan of the brief of the courses.
func (all *courses) replay(p *season.Plan) Report {
	b := all.brief
	c := &replay{brief: b, plan: p, courses: all, Report: Report{[]Difference{}}}
	if p == nil || !all.whole() {
		c.add("brief", "season", "a plan, a span, figures of kinds, weather for every hour and a place of planting out", "not all there")
		return c.Report
	}
	c.calendar = calendarOf(b)
	for _, ground := range c.courses.of(c.courses.ground(), place.Off()) {
		c.ends = append(c.ends, firstFreeze(ground, c.calendar.split))
	}
	c.readSettings()
	c.readBatches()
	c.raise()
	c.fixed()
	c.counts()
	c.dates()
	c.yearDates()
	c.gains()
	c.stays()
	c.benches()
	c.fits()
	c.heat()
	c.work()
	c.toGet()
	c.stored()
	c.dividing()
	c.cost()
	c.shortfalls()
	return c.Report
}

// fixed holds what is fixed beforehand: the years, and the day of planting out.
func (c *replay) fixed() {
	exactly(&c.Report, "years", "plan", len(c.brief.Given.Weather), c.plan.Years)
	safe, known := c.brief.Given.Freezes.SafeFrom(c.brief.Asked.FrostRisk)
	switch {
	case !c.brief.Asked.OutFrom.IsZero():
		exactly(&c.Report, "planting out from", "plan", c.brief.Asked.OutFrom, c.plan.PlantOutFrom)
	case !known:
		c.add("planting out from", "plan", "a day, which the record can't tell", c.plan.PlantOutFrom)
	case safe.IsZero():
		exactly(&c.Report, "planting out from", "plan", c.calendar.date(c.calendar.turn), c.plan.PlantOutFrom)
	default:
		exactly(&c.Report, "planting out from", "plan", c.calendar.date(c.calendar.monday(c.calendar.spring(safe))), c.plan.PlantOutFrom)
	}
}

// outFrom returns the Monday before which a kind is not planted out: the plan's, but for hardy
// kinds the one after which no killing cold comes in all but the accepted share of years.
func (c *replay) outFrom(n *needs) int {
	from := c.calendar.day(c.plan.PlantOutFrom)
	if n.kill > hardy {
		return from
	}
	ground := c.courses.of(c.courses.ground(), place.Off())
	return min(from, c.calendar.monday(c.afterLast(ground, func(t float64) bool { return t <= n.kill })))
}

// safeFrom returns the day from which a place, held all the while at the highest of the
// plan's levels, is safe for the young leaves of a kind.
func (c *replay) safeFrom(at int, n *needs) int {
	held := place.Off()
	if steps := c.settings[at].Steps; len(steps) > 0 {
		level := steps[0].Level
		for _, s := range steps {
			if !s.Off && s.Level.Above(level) {
				level = s.Level
			}
		}
		held = place.Steadily(level)
	}
	return c.afterLast(c.courses.of(at, held), func(t float64) bool { return t <= n.harm-slack })
}

// framedFrom returns the day from which a way may go into a frame to harden: not before it
// can be planted out when it has, nor while frost may still kill it in the frame.
func (c *replay) framedFrom(at int, w *way) int {
	weeks := (w.harden + 6) / 7
	frost := c.afterLast(c.courses.of(at, place.Off()), func(t float64) bool { return t <= w.kill })
	return max(frost, w.outFrom-7*weeks)
}

// afterLast returns the day after the last, before midsummer, on which an hour is too
// cold, in all but the accepted share of years.
func (c *replay) afterLast(years []*place.Course, tooCold func(celsius float64) bool) int {
	var last []int
	for _, course := range years {
		last = append(last, lastHour(course.Air, c.calendar.split, tooCold))
	}
	slices.Sort(last)
	allowed := int(float64(c.brief.Asked.FrostRisk) * float64(len(last)))
	return last[max(len(last)-1-allowed, 0)] + 1
}

// readSettings reads the setting of every place from its level and its days of heat.
func (c *replay) readSettings() {
	c.settings = make([]place.Setting, len(c.brief.Given.Places))
	for i, p := range c.brief.Given.Places {
		c.settings[i] = place.Off()
		if len(p.Levels) > 0 {
			c.settings[i] = p.Levels[0]
		}
		plan := c.placePlan(p.Name)
		if plan == nil {
			c.add("place", p.Name, "a place of the plan", "missing")
			continue
		}
		if plan.HeatedFrom.IsZero() || p.Sort != season.Glass {
			continue
		}
		setting := settingOf(plan)
		if err := setting.Check(); err != nil {
			c.add("setting", p.Name, err, plan.Setting)
			continue
		}
		c.settings[i] = setting
		exactly(&c.Report, "setting", p.Name, setting.String(), plan.Setting)
	}
	for i, p := range c.brief.Given.Places {
		if p.Sort == season.Bench { // it stands in the air of its house
			c.settings[i] = c.settings[c.placeNamed(p.In)]
		}
	}
}

// settingOf is what the thermostat of a heated place is set to.
func settingOf(plan *season.PlacePlan) place.Setting {
	steps := []place.Step{{From: plan.HeatedFrom, Level: plan.Level}}
	if plan.Then != nil {
		steps = append(steps, place.Step{From: plan.Then.From, Level: plan.Then.Level})
	}
	return place.Setting{Steps: append(steps, place.Step{From: plan.HeatedTo, Off: true})}
}

func (c *replay) placePlan(name string) *season.PlacePlan {
	for i := range c.plan.Places {
		if c.plan.Places[i].Place == name {
			return &c.plan.Places[i]
		}
	}
	return nil
}
