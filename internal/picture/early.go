package picture

import (
	"fmt"
	"strings"

	"eyeup/season"
)

// earlyTall is the height of the price-of-early chart with its words.
const earlyTall = 150.0

// early draws the price of early: what each level of heat costs, and the weeks it gains. If
// the best plans are known, it shows their total costs.
func (c *course) early(y float64) {
	c.text(left, y+12, "The price of early", "class", "head")
	c.text(left, y+26, fmt.Sprintf("weeks of flower gained a plant, against %s %s", c.Plan.Cost.Currency, c.costs()), "class", "small")
	top, foot := y+40, y+earlyTall-26
	from, to := left+24, right-70
	last := c.Early[len(c.Early)-1]
	gain := max(last.GainWeeks, 0.1)
	low := min(c.Early[0].GainWeeks, 0)
	across := func(money float64) float64 { return from + (to-from)*money/max(cost(last), 1) }
	up := func(weeks float64) float64 { return foot - (foot-top)*(weeks-low)/(gain-low) }
	c.tag("path", "class", "line", "d", fmt.Sprintf("M%s %sV%sH%s", number(from), number(top-4), number(foot), number(to)))
	var line strings.Builder
	used := foot + 100
	for i, p := range c.Early {
		x, at := across(cost(p)), up(p.GainWeeks)
		fmt.Fprintf(&line, "%s%s %s", []string{"M", "L"}[min(i, 1)], number(x), number(at))
		name := "no added heat"
		if len(p.Levels) > 0 {
			name = strings.Join(p.Levels, ", ")
		}
		r := 3.0
		if p.Plan != "" && len(p.Levels) > 0 {
			name, r = p.Plan+", "+name, 4.5
		}
		c.titled(fmt.Sprintf("%s: %.0f %s, %.1f weeks", name, cost(p), c.Plan.Cost.Currency, p.GainWeeks), func() {
			c.tag("circle", "class", "ink", "cx", x, "cy", at, "r", r)
		})
		if used-at >= labelTall { // a label that would overlap another is shown as a tooltip only
			c.text(x+6, at+8, fmt.Sprintf("%.0f: %.1f", cost(p), p.GainWeeks), "class", "small halo")
			used = at
		}
	}
	c.tag("path", "class", "line", "d", line.String())
	c.text(from-3, up(gain)+3, fmt.Sprintf("%.1f", gain), "class", "small end")
	c.text(from-3, foot+3, fmt.Sprintf("%.0f", low), "class", "small end")
	c.text(to, foot+12, fmt.Sprintf("%.0f", cost(last)), "class", "small end")
}

// cost returns the total cost of a point, or its heat if no more is known.
func cost(p season.EarlyPoint) float64 {
	if p.Proof != nil {
		return p.TotalCost
	}
	return p.HeatCost
}

// costs names what the points' cost includes.
func (c *course) costs() string {
	if c.Early[0].Proof != nil {
		return "in all"
	}
	return "of heat"
}
