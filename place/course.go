package place

import (
	"eyeup/civil"
	"eyeup/quantity"
)

// Course is what it was like inside, hour by hour and day by day of its span. The slices
// are plain numbers because they are read in hot loops. Hour i covers the time from i to
// i+1 by the sun's clock, so that day d holds hours 24d to 24d+23.
type Course struct {
	Span civil.Span

	Air  []float64 // hourly mean of the air, °C
	Root []float64 // hourly: the mix in a pot on the bench, or open soil at 10 cm, °C
	// WarmRoot is Root on the warm bench; nil where there is none.
	WarmRoot []float64

	Light     []float64 // daily: sun through the cover and lamps, on the plants, mol/m²
	DayLength []float64 // daily: hours that are light, lamps counted; 0 in the dark

	// AskedKWh is the heat that a heater without limit would have used to hold the level:
	// the house is run beside itself with such a heater, so that the figure depends on
	// the house, the weather and the setting alone. GivenKWh is what the heater there is
	// can give. Both are daily, heat and not fuel; the warm bench and lamps are apart.
	AskedKWh, GivenKWh []float64
	LampKWh            []float64 // daily, electricity
	WarmBenchKWh       []float64 // daily, electricity

	// HoursShort counts the hours of the day in which the air was more than 0.5 K below
	// the level; those in which a new level was still being reached are excused.
	// WorstShort is by how many kelvin at worst, 0 on a day without.
	HoursShort, WorstShort []float64
	Hot                    []float64 // daily hours above 30 °C

	// HeldBack counts the daily hours in which an unheated cover was reckoned warmer on a
	// frost night than covers have been measured to be, and Air was held to that.
	HeldBack []float64
	// Unlogged counts the days that a logger's series did not cover, for which the
	// monthly temperatures served.
	Unlogged int
}

// hotAbove is the temperature above which an hour is counted as hot, °C.
const hotAbove = 30

// shortBelow is how far below its level the air must be for an hour to be short, K.
const shortBelow = 0.5

// newCourse returns an empty course of the span.
func newCourse(span civil.Span) *Course {
	days := int(span.Days())
	hourly := make([]float64, 2*24*days)
	daily := make([]float64, 10*days)
	take := func() []float64 {
		part := daily[:days:days]
		daily = daily[days:]
		return part
	}
	return &Course{
		Span: span,
		Air:  hourly[: 24*days : 24*days], Root: hourly[24*days:],
		Light: take(), DayLength: take(), AskedKWh: take(), GivenKWh: take(), LampKWh: take(),
		WarmBenchKWh: take(), HoursShort: take(), WorstShort: take(), Hot: take(), HeldBack: take(),
	}
}

// Within returns the days of the course that lie in the span, as indices from and to of
// its daily slices: from is the first, to is one past the last.
func (c *Course) Within(s civil.Span) (from, to int) {
	days := len(c.Light)
	from = min(max(int(s.From.Sub(c.Span.From)), 0), days)
	to = min(max(int(s.To.Sub(c.Span.From))+1, from), days)
	return from, to
}

// Coldest returns the lowest hourly air temperature in the span, and whether the course
// has any hour in it.
func (c *Course) Coldest(s civil.Span) (quantity.Temperature, bool) {
	from, to := c.Within(s)
	if from == to {
		return quantity.Temperature{}, false
	}
	lowest := c.Air[24*from]
	for _, t := range c.Air[24*from : 24*to] {
		lowest = min(lowest, t)
	}
	return quantity.Celsius(lowest), true
}

// Sum returns the sum of one of the course's daily slices over the span.
func (c *Course) Sum(daily []float64, s civil.Span) float64 {
	from, to := c.Within(s)
	var sum float64
	for _, x := range daily[from:to] {
		sum += x
	}
	return sum
}

// count notes the air temperature t of an hour of a day: whether it was hot, and, where
// the level is to be held, whether it was short of it.
func (c *Course) count(day int, t, level float64) {
	if t > hotAbove {
		c.Hot[day]++
	}
	if short := level - t; short > shortBelow {
		c.HoursShort[day]++
		c.WorstShort[day] = max(c.WorstShort[day], short)
	}
}
