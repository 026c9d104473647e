package place

import (
	"eyeup/sun"
	"eyeup/weather"
)

// OnBench is the warm bench of a house as a place of its own: the air and the light are those
// of the house, the roots as warm as the bench makes them. Its setting is that of the house.
// The heat it asks for and gets is the bench's electricity. It is never short of its level,
// because its thermostat measures the roots. Without a warm bench it is the house itself.
type OnBench struct{ House Covered }

// Run returns the conditions on the bench. See Place.
func (b OnBench) Run(h *weather.Hours, site sun.Site, s Setting) *Course {
	house := b.House.Run(h, site, s)
	if house.WarmRoot == nil {
		return house
	}
	return house.OnBench()
}

// OnBench returns the course of the warm bench in a house with course c. It shares the air and
// light slices of c. The house must have a warm bench.
func (c *Course) OnBench() *Course {
	on := newCourse(c.Span)
	on.Air, on.Root, on.Light, on.DayLength = c.Air, c.WarmRoot, c.Light, c.DayLength
	on.AskedKWh, on.GivenKWh = c.WarmBenchKWh, c.WarmBenchKWh
	return on
}
