package desk

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"eyeup/quantity"
	"eyeup/season"
)

// batches lists the plan that is followed, or the usual one, like batches together under the way
// they go.
func (a *SeasonAnswer) batches(p *page, units quantity.System) {
	plan, _ := a.followed()
	p.line(capital(plan.Name) + ": middle dates; of first flower one in ten before / after")
	p.line(fmt.Sprintf("%-25s%5s %-8s%-8s%-8s%-17s%6s", "", "count", "start", "up", "out", "first flower", "weeks"))
	route := ""
	for _, g := range grouped(plan.Batches) {
		b := g[0]
		if b.Starts[0].Route != route {
			route = b.Starts[0].Route
			p.line(route)
		}
		p.line(fmt.Sprintf("  %-23s%5d %-8s%-8s%-8s%-17s%6s", groupName(g), total(g), shortDate(b.Dates.Start), shortDate(b.Dates.Up.Middle), outWord(b),
			shortDate(b.Dates.FirstFlower.Early)+" / "+shortDate(b.Dates.FirstFlower.Late), signed(b.Gain.Middle)))
		if b.NoRoom != nil {
			p.wrap("    ", NoRoomWords(b.NoRoom, units, shortDate(b.NoRoom.Week)))
		}
	}
}

// outWord says when a batch is planted out; what stays under cover for good is not.
func outWord(b season.BatchPlan) string {
	if strings.Contains(b.Starts[0].Route, ", for good") {
		return "stays"
	}
	return shortDate(b.Dates.PlantOut.Middle)
}

// grouped puts batches together that are of one kind and do the same on the same days.
func grouped(batches []season.BatchPlan) [][]season.BatchPlan {
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

func groupName(g []season.BatchPlan) string {
	b := g[0]
	if len(g) == 1 {
		return clipped(b.Variety+", "+b.Kind, 23)
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
	return clipped(name, 23)
}

func spaced(s string) string {
	if s == "" {
		return ""
	}
	return s + ", "
}

func total(g []season.BatchPlan) int {
	n := 0
	for _, b := range g {
		n += b.Count
	}
	return n
}
