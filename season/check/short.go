package check

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"eyeup/season"
)

// lacks notes something that there is too little of: the plan is to say so.
func (c *replay) lacks(s season.Shortfall) {
	s.Short = s.Wanted - s.There
	c.lacking = append(c.lacking, s)
}

// shortfalls holds that the plan says of all that there is too little of how much is wanted, there and
// short, and when first, and of nothing else.
func (c *replay) shortfalls() {
	told := slices.Clone(c.plan.Shortfalls)
	for _, want := range c.lacking {
		at := toldOf(told, want)
		if at < 0 {
			c.add("short of "+want.Of, whereOf(want), fmt.Sprintf("%.2f", want.Short), "nothing said")
			continue
		}
		got := told[at]
		told = slices.Delete(told, at, at+1)
		c.within("short of "+want.Of+" (wanted)", whereOf(want), want.Wanted, got.Wanted, cent)
		c.within("short of "+want.Of+" (there)", whereOf(want), want.There, got.There, cent)
		c.within("short of "+want.Of, whereOf(want), want.Short, got.Short, 2*cent)
		exactly(&c.Report, "short of "+want.Of+" (week)", whereOf(want), want.Week, got.Week)
	}
	for _, got := range told {
		c.add("short of "+got.Of, whereOf(got), "enough", fmt.Sprintf("%.2f", got.Short))
	}
}

// toldOf finds what the plan says of something that is short, -1 where it says nothing: of several lots of a
// variety what is nearest.
func toldOf(told []season.Shortfall, want season.Shortfall) int {
	at, off := -1, math.Inf(1)
	for i, s := range told {
		same := s.Of == want.Of && s.Place == want.Place && s.Variety == want.Variety && (s.Of != "hands" || s.Week == want.Week)
		if by := math.Abs(s.Short - want.Short); same && by < off {
			at, off = i, by
		}
	}
	return at
}

// whereOf says in words what of is short, or when.
func whereOf(s season.Shortfall) string { return cmp.Or(s.Place, s.Variety, s.Week.String()) }
