package picture

import (
	"fmt"
	"slices"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/season"
)

// benches returns the places with a bench of known size that is used.
func (c *course) benches() []season.PlacePlan {
	var all []season.PlacePlan
	for _, p := range c.Plan.Places {
		used := slices.ContainsFunc(p.Weeks, func(w season.PlaceWeek) bool { return w.UsedM2 > 0 })
		if used && p.Weeks[0].RoomM2 > 0 {
			all = append(all, p)
		}
	}
	return all
}

// fills draws how full each bench is, week by week.
func (c *course) fills(y float64, benches []season.PlacePlan) {
	c.text(left, y, "How full the benches are", "class", "head")
	y += 12
	for _, p := range benches {
		c.fill(y+14, p)
		y += benchTall + 16
	}
}

func (c *course) fill(y float64, p season.PlacePlan) {
	most := p.Weeks[0].RoomM2
	for _, w := range p.Weeks {
		most = max(most, w.UsedM2)
	}
	scale := (benchTall - 4) / most
	foot := y + benchTall - 4
	c.titled(p.Place, func() {
		for _, w := range p.Weeks {
			if w.UsedM2 == 0 || w.Week.Before(c.first) || w.Week.After(c.last) {
				continue
			}
			x, to := c.x(w.Week), c.x(w.Week.AddDays(civil.Week))
			within := min(w.UsedM2, w.RoomM2) * scale
			c.tag("rect", "class", "used", "x", x, "y", foot-within, "width", max(to-x-0.7, 0.7), "height", within)
			if over := (w.UsedM2 - w.RoomM2) * scale; over > 0 {
				c.tag("rect", "class", "over", "x", x, "y", foot-within-over, "width", max(to-x-0.7, 0.7), "height", over)
			}
		}
		top := foot - p.Weeks[0].RoomM2*scale
		c.tag("path", "class", "room", "d", fmt.Sprintf("M%s %sH%s", number(left), number(top), number(right)))
		c.tag("path", "class", "line", "d", fmt.Sprintf("M%s %sH%s", number(left), number(foot), number(right)))
	})
	fullest := slices.MaxFunc(p.Weeks, func(a, b season.PlaceWeek) int {
		switch {
		case a.UsedM2 < b.UsedM2:
			return -1
		case a.UsedM2 > b.UsedM2:
			return 1
		}
		return 0
	})
	words := fmt.Sprintf("%s: fullest in the week of %s, %s of %s", p.Place, day(fullest.Week),
		c.Units.Area(quantity.Area(fullest.UsedM2)), c.Units.Area(quantity.Area(fullest.RoomM2)))
	c.text(left, y-3, words, "class", "small halo")
}
