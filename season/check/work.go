package check

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"eyeup/civil"
	"eyeup/season"
)

// task is one step of the work on a batch.
type task struct {
	step string // as the figures of work call it
	day  float64
	each float64 // how many it is done to
}

// tasks lists the steps of a batch by the middle dates; those that never come are infinite.
func (c *replay) tasks(b *batch) []task {
	plants, leaves := float64(b.count), quantile(b.middle(out), 0.5)
	all := []task{{"plant", leaves, plants}}
	if b.direct {
		return all
	}
	if b.route.frame >= 0 {
		all = append(all, task{"hand_on", quantile(b.middle(framed), 0.5), plants})
	} else {
		all = append(all, task{"harden", leaves - float64(b.harden), plants})
	}
	switch begin := float64(b.start); {
	case b.plan.How == string(season.Divided): // potted when it is cut
		clumps, cut := c.clumps(b), quantile(b.middle(eyed), 0.5)
		all = append(all, task{"wake", begin, clumps}, task{"divide", cut, clumps}, task{"start", cut, plants})
	case b.inTray:
		all = append(all, task{"wake", begin, plants}, task{"start", quantile(b.middle(up), 0.5), plants})
	default:
		all = append(all, task{"start", begin, plants})
	}
	if b.potsUp() {
		all = append(all, task{"pot_up", quantile(b.middle(pottedUp), 0.5), plants})
	}
	if b.prick > 0 {
		all = append(all, task{"prick", quantile(b.middle(up), 0.5) + float64(b.prick), plants})
	}
	if b.route.first != b.route.on {
		all = append(all, task{"hand_on", quantile(b.middle(handOn), 0.5), plants})
	}
	return all
}

// clumps returns how many of the clumps that are divided fall to a batch, by its share of
// the plants of all that is raised from them.
func (c *replay) clumps(b *batch) float64 {
	all := 0
	for _, other := range c.batches {
		if other.plan.How == b.plan.How && nameOf(other.holding) == nameOf(b.holding) {
			all += other.count
		}
	}
	return float64(b.plan.Parents) * float64(b.count) / float64(all)
}

// work adds up the hours of every week, and notes what is beyond own hands.
func (c *replay) work() {
	minutes := map[civil.Date]float64{}
	for _, b := range c.batches {
		for _, t := range c.tasks(b) {
			each, known := b.kind.Work(t.step)
			if !known || math.IsInf(t.day, 0) || t.day < float64(c.calendar.firstMonday) {
				continue
			}
			minutes[c.calendar.date(int(t.day)).Monday()] += each * t.each
		}
	}
	for _, w := range c.plan.Work {
		where := fmt.Sprintf("week of %v", w.Week)
		c.within("hours of work", where, minutes[w.Week]/60, w.Hours, cent)
		c.within("own hours", where, c.brief.Given.HoursPerWeek, w.Own, 1e-9)
		delete(minutes, w.Week)
		c.hired += max(0, w.Hours-c.brief.Given.HoursPerWeek)
		c.hours += w.Hours
		if w.Hours > c.brief.Given.HoursPerWeek {
			c.lacks(season.Shortfall{Of: "hands", Wanted: w.Hours, There: c.brief.Given.HoursPerWeek, Week: w.Week})
		}
	}
	for _, week := range slices.SortedFunc(maps.Keys(minutes), func(a, b civil.Date) int { return int(a.Sub(b)) }) {
		if minutes[week] > 0 {
			c.add("hours of work", fmt.Sprintf("week of %v", week), fmt.Sprintf("%.2f", minutes[week]/60), "none")
		}
	}
}
