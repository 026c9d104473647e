package plans

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"eyeup/internal/report"
	"eyeup/quantity"
	"eyeup/season"
)

// batches prints the batches of the plan that is followed, or of the usual one. Batches that do the
// same share a line, and lines stand under their route.
func (a *SeasonAnswer) batches(p *report.Page, units quantity.System) {
	plan, _ := a.PlanFollowed()
	p.Line(report.Capital(plan.Name) + ": middle dates; of first flower, 8 in 10 lie between")
	p.Line(fmt.Sprintf("%-25s%5s %-8s%-8s%-8s%-17s%6s", "", "count", "start", "up", "out", "first flower", "weeks"))
	route := ""
	for _, g := range Grouped(plan.Batches) {
		b := g[0]
		if b.Starts[0].Route != route {
			route = b.Starts[0].Route
			p.Line(route)
		}
		p.Line(fmt.Sprintf("  %-23s%5d %-8s%-8s%-8s%-17s%6s", GroupName(g), Total(g), report.ShortDate(b.Dates.Start), report.ShortDate(b.Dates.Up.Middle), outWord(b),
			report.ShortDate(b.Dates.FirstFlower.Early)+" / "+report.ShortDate(b.Dates.FirstFlower.Late), signed(b.Gain.Middle)))
		if b.NoRoom != nil {
			p.Wrap("    ", NoRoomWords(b.NoRoom, units, report.ShortDate(b.NoRoom.Week)))
		}
	}
}

// outWord says when a batch is planted out, or that it stays under cover for good.
func outWord(b season.BatchPlan) string {
	if strings.Contains(b.Starts[0].Route, ", for good") {
		return "stays"
	}
	return report.ShortDate(b.Dates.PlantOut.Middle)
}

// Grouped puts together the batches of one kind that have the same dates and the same route. Groups
// are in the order of route, start and kind.
func Grouped(batches []season.BatchPlan) [][]season.BatchPlan {
	var groups [][]season.BatchPlan
	for _, b := range batches {
		at := slices.IndexFunc(groups, func(g []season.BatchPlan) bool {
			h := g[0]
			return h.Kind == b.Kind && h.Dates == b.Dates && h.Starts[0].Route == b.Starts[0].Route
		})
		if at < 0 {
			groups = append(groups, nil)
			at = len(groups) - 1
		}
		groups[at] = append(groups[at], b)
	}
	slices.SortStableFunc(groups, func(a, b []season.BatchPlan) int {
		return cmp.Or(cmp.Compare(a[0].Starts[0].Route, b[0].Starts[0].Route), cmp.Compare(a[0].Dates.Start.String(), b[0].Dates.Start.String()), cmp.Compare(a[0].Kind, b[0].Kind))
	})
	return groups
}

// GroupName names a group in at most 23 characters: its variety where there is one, or the number of sorts.
func GroupName(g []season.BatchPlan) string {
	b := g[0]
	if len(g) == 1 {
		return report.Clipped(b.Variety+", "+b.Kind, 23)
	}
	sorts, timing := map[string]bool{}, b.Timing
	for _, one := range g {
		sorts[one.Variety] = true
		if one.Timing != timing {
			timing = ""
		}
	}
	name := fmt.Sprintf("%s, %s%d sorts", b.Kind, spaced(timing), len(sorts))
	if len(sorts) == 1 {
		name = b.Variety + ", " + b.Kind
	}
	return report.Clipped(name, 23)
}

func spaced(s string) string {
	if s == "" {
		return ""
	}
	return s + ", "
}

// Total is the number of plants in a group.
func Total(g []season.BatchPlan) int {
	n := 0
	for _, b := range g {
		n += b.Count
	}
	return n
}
