package check

import (
	"fmt"

	"eyeup/place"
	"eyeup/season"
)

// courses are the places of a garden run hour by hour through every year, each setting once,
// and what becomes of plants that are raised in one way.
type courses struct {
	brief *season.Brief
	run   map[courseKey][]*place.Course
	lives map[string][]raised
}

type courseKey struct {
	place   int
	setting string
}

func newCourses(b *season.Brief) *courses {
	return &courses{brief: b, run: map[courseKey][]*place.Course{}, lives: map[string][]raised{}}
}

// whole reports whether the brief has all that a replay asks for.
func (c *courses) whole() bool {
	b := c.brief
	for _, h := range b.Given.Weather {
		if h.Span != b.Given.Span || len(h.Air) != 24*int(b.Given.Span.Days()) {
			return false
		}
	}
	for _, p := range b.Given.Places {
		if p.Model == nil {
			return false
		}
	}
	return len(b.Given.Weather) > 0 && b.Given.Span.Days() >= leastDays && b.Given.Kinds != nil && c.ground() >= 0
}

// leastDays is the shortest span that is a season.
const leastDays = 300

// of returns a place at a setting in every year.
func (c *courses) of(at int, s place.Setting) []*place.Course {
	key := courseKey{at, written(s)}
	if c.run[key] == nil {
		for _, hours := range c.brief.Given.Weather {
			c.run[key] = append(c.run[key], c.brief.Given.Places[at].Model.Run(hours, c.brief.Given.Site, s))
		}
	}
	return c.run[key]
}

// written distinguishes settings to the last digit.
func written(s place.Setting) string {
	text := ""
	for _, step := range s.Steps {
		text += fmt.Sprintf("%v %g %v;", step.From, step.Level.Celsius(), step.Off)
	}
	return text
}

// ground returns the place of planting out, -1 where there is none.
func (c *courses) ground() int {
	for i, p := range c.brief.Given.Places {
		if p.Sort == season.Ground {
			return i
		}
	}
	return -1
}

// firstFreeze returns the day after midsummer on which it first freezes, else the end.
func firstFreeze(c *place.Course, split int) int {
	for hour := 24 * split; hour < len(c.Air); hour++ {
		if c.Air[hour] <= 0 {
			return hour / 24
		}
	}
	return len(c.Air) / 24
}

// lastHour returns the day of the last hour before a day's end that is colder than allowed
// says, 0 for none.
func lastHour(air []float64, split int, tooCold func(celsius float64) bool) int {
	for hour := min(24*split+23, len(air)-1); hour >= 24; hour-- {
		if tooCold(air[hour]) {
			return hour / 24
		}
	}
	return 0
}
