package place

import (
	"eyeup/sun"
	"eyeup/weather"
)

// OnBench is the warm bench of a house as a place of its own: the air and the light of the
// house, and roots as warm as the bench makes them. Its setting is that of the house. What
// it asks and is given is the electricity of the bench, and it is never short, as its
// thermostat stands among the roots. Without a warm bench it is the house itself.
type OnBench struct{ House Covered }

// Run returns what it is like on the bench. See Place.
func (b OnBench) Run(h *weather.Hours, site sun.Site, s Setting) *Course {
	house := b.House.Run(h, site, s)
	if house.WarmRoot == nil {
		return house
	}
	return house.OnBench()
}

// OnBench returns the course of the warm bench in a house whose course c is. It shares the
// air and the light of c. The house must have a warm bench.
func (c *Course) OnBench() *Course {
	on := newCourse(c.Span)
	on.Air, on.Root, on.Light, on.DayLength = c.Air, c.WarmRoot, c.Light, c.DayLength
	on.AskedKWh, on.GivenKWh = c.WarmBenchKWh, c.WarmBenchKWh
	return on
}
