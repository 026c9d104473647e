package check

import (
	"fmt"
	"math"
	"slices"

	"eyeup/civil"
	"eyeup/season"
	"eyeup/stock"
)

// task is one step that a batch asks for in one week.
type task struct {
	what, step string // as the plan's jobs call it, and the figures of work
	day        int
	where      int
}

// tasks lists the steps of a batch by the middle dates.
func (c *replay) tasks(b *batch) []task {
	leaves := quantile(b.middle(out), 0.5)
	var all []task
	add := func(what, step string, day float64, where int) {
		if !math.IsInf(day, 0) {
			all = append(all, task{what, step, int(day), where})
		}
	}
	if b.direct {
		add("plant", "plant", leaves, b.route.ground)
		return all
	}
	start := "start"
	if b.holding.Form == stock.Seed {
		start = "sow"
	}
	add(start, "start", float64(b.start), b.route.first)
	if b.route.first != b.route.on {
		add("hand on", "hand_on", quantile(b.middle(handOn), 0.5), b.route.on)
	}
	if b.prick > 0 {
		add("", "prick", quantile(b.middle(up), 0.5)+float64(b.prick), b.route.first)
	}
	add("harden", "harden", leaves-float64(b.harden), b.route.on)
	add("plant out", "plant", leaves, b.route.ground)
	return all
}

// work adds up the hours of every week, and holds that what is beyond own hands is said.
func (c *replay) work() {
	minutes := map[civil.Date]float64{}
	for _, b := range c.batches {
		for _, t := range c.tasks(b) {
			monday := c.calendar.date(t.day).Monday()
			each, known := b.kind.Work(t.step)
			if known && !monday.Before(c.calendar.date(c.calendar.firstMonday)) && !monday.After(c.brief.Span.To) {
				minutes[monday] += each * float64(b.count)
			}
		}
	}
	for _, w := range c.plan.Work {
		where := fmt.Sprintf("week of %v", w.Week)
		c.within("hours of work", where, minutes[w.Week]/60, w.Hours, cent)
		c.within("own hours", where, c.brief.HoursPerWeek, w.Own, 1e-9)
		delete(minutes, w.Week)
		c.hired += max(0, w.Hours-c.brief.HoursPerWeek)
		c.hours += w.Hours
		said := slices.ContainsFunc(c.plan.Shortfalls, func(s season.Shortfall) bool { return s.Of == "hands" && s.Week == w.Week })
		exactly(&c.Report, "too few hands", where, w.Hours > c.brief.HoursPerWeek, said)
	}
	for week, m := range minutes {
		if m > 0.3 { // rounds to no hundredth of an hour
			c.add("hours of work", fmt.Sprintf("week of %v", week), fmt.Sprintf("%.2f", m/60), "none")
		}
	}
}

// jobKey is what jobs of one week are put together by.
type jobKey struct {
	week              civil.Date
	what, kind, where string
}

// jobs adds up the plants and minutes of every job.
func (c *replay) jobs() {
	counts, minutes := map[jobKey]int{}, map[jobKey]float64{}
	for _, b := range c.batches {
		for _, t := range c.tasks(b) {
			if t.what == "" {
				continue
			}
			key := jobKey{c.calendar.date(t.day).Monday(), t.what, b.plan.Kind, c.brief.Places[t.where].Name}
			each, _ := b.kind.Work(t.step)
			counts[key] += b.count
			minutes[key] += each * float64(b.count)
		}
	}
	for _, j := range c.plan.Jobs {
		key := jobKey{j.Week, j.What, j.Kind, j.Where}
		where := fmt.Sprintf("%s %s in the week of %v", j.What, j.Kind, j.Week)
		exactly(&c.Report, "count of the job", where, counts[key], j.Count)
		c.within("minutes of the job", where, minutes[key], j.Minutes, 0.51)
		delete(counts, key)
	}
	for key, n := range counts {
		c.add("job", fmt.Sprintf("%s %s in the week of %v", key.what, key.kind, key.week), n, "none")
	}
}
