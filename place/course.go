package place

import (
	"eyeup/civil"
	"eyeup/quantity"
)

// Course is the conditions inside, hour by hour and day by day of its span. The slices hold
// plain numbers because they are read in hot loops. Hour i is the time from i to i+1 in solar
// time, so day d has the hours 24d to 24d+23.
type Course struct {
	Span civil.Span

	Air  []float64 // hourly mean of the air, °C
	Root []float64 // hourly: mix in a pot on the bench, or open soil at 10 cm, °C
	// WarmRoot is Root on the warm bench; nil if there is none.
	WarmRoot []float64

	Light     []float64 // daily light on the plants, from sun and lamps, mol/m²
	DayLength []float64 // daily hours of light, including lamps; 0 in the dark

	// AskedKWh is the heat that a heater of unlimited power would use to hold the level. It
	// comes from a second run with such a heater, so it depends on the house, the weather and
	// the setting alone. GivenKWh is what the actual heater gives. Both are daily useful heat,
	// not fuel, without the warm bench and the lamps.
	AskedKWh, GivenKWh []float64
	LampKWh            []float64 // daily, electricity
	WarmBenchKWh       []float64 // daily, electricity

	// HoursShort counts the hours of the day in which the air was more than 0.5 K below the
	// level, except while it was still warming up to a new level. WorstShort is the largest
	// such shortfall in K, 0 on a day without.
	HoursShort, WorstShort []float64
	Hot                    []float64 // daily hours above 30 °C

	// HeldBack counts the hours of the day in which the model made an unheated cover warmer on
	// a frost night than any cover has been measured; Air was then limited to the measured
	// lift.
	HeldBack []float64
	// Unlogged counts the days without a logger's record, for which the monthly temperatures
	// were used.
	Unlogged int
}

// hotAbove is the air temperature above which an hour counts as hot, °C.
const hotAbove = 30

// shortBelow is how far below its level the air must be for an hour to count as short, K.
const shortBelow = 0.5

// newCourse returns an empty course over the span.
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

// Within returns the days of the course in the span, as indices into its daily slices: from is
// the first, to is one past the last.
func (c *Course) Within(s civil.Span) (from, to int) {
	days := len(c.Light)
	from = min(max(int(s.From.Sub(c.Span.From)), 0), days)
	to = min(max(int(s.To.Sub(c.Span.From))+1, from), days)
	return from, to
}

// Coldest returns the lowest hourly air temperature in the span; false if the course has no
// hour in it.
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

// count records the air temperature t of an hour: whether it was hot and, if a level is to be
// held, whether it was short of it.
func (c *Course) count(day int, t, level float64) {
	if t > hotAbove {
		c.Hot[day]++
	}
	if short := level - t; short > shortBelow {
		c.HoursShort[day]++
		c.WorstShort[day] = max(c.WorstShort[day], short)
	}
}
