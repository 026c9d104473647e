package weather

import (
	"math"

	"eyeup/civil"
	"eyeup/sun"
)

// rhythm is the daily course of air temperature after Parton & Logan 1981 (Agricultural
// Meteorology 23:205): a sine by day, an exponential fall by night.
type rhythm struct {
	highLag float64 // hours from noon to the day's high (α)
	lowLag  float64 // hours from sunrise to the day's low (β)
	decay   float64 // how fast the night cools (γ)
}

// air is the rhythm in a thermometer screen: α 2.0, β 1.0, γ 2.2. Of four published sets it
// came closest to a year measured in an orchard at Winters, California (mean absolute error
// 1.1 K); the tests compare it with two typical meteorological years.
var air = rhythm{highLag: 2.0, lowLag: 1.0, decay: 2.2}

// curve is one day's sine, in °C and hours of solar time.
type curve struct {
	rhythm
	low, high   float64
	rise, set   float64
	lowTime     float64 // when the low is reached
	atSet       float64 // temperature at sunset
	stepsPerDay float64 // π over the length of the half wave
}

// of returns the curve of a day. A day shorter than 2α hours (only beyond some 64 degrees of
// latitude) is treated as that long, so that its high comes before sunset.
func (r rhythm) of(day Day, latitude float64, d civil.Date) curve {
	length := max(sun.DayLength(latitude, d).Hours(), 2*r.highLag)
	return r.between(day.Low.Celsius(), day.High.Celsius(), 12-length/2, 12+length/2)
}

// between returns the curve of a day with sunrise and sunset at the given hours.
func (r rhythm) between(low, high, rise, set float64) curve {
	c := curve{rhythm: r, low: low, high: high, rise: rise, set: set, lowTime: rise + r.lowLag}
	c.stepsPerDay = math.Pi / (set - rise + 2*(r.highLag-r.lowLag))
	c.atSet = c.byDay(set)
	return c
}

// byDay returns the temperature at hour t from the low in the morning to sunset.
func (c curve) byDay(t float64) float64 {
	return c.low + (c.high-c.low)*math.Sin(c.stepsPerDay*(t-c.lowTime))
}

// cooled returns the share of the night's fall that remains t hours after sunset, in a night
// of length hours up to its low: 1 at first, e^-γ at its end.
func (r rhythm) cooled(t, length float64) float64 {
	return math.Exp(-r.decay * t / length)
}

// byNight returns the temperature t hours after c's sunset on the way to the low of the next
// day. The published fall stops short of the low by e^-γ of the way; here it is scaled to end
// there, so that day and night join.
func (c curve) byNight(t float64, next curve) float64 {
	length := 24 - c.set + next.lowTime
	end := math.Exp(-c.decay)
	share := (c.cooled(t, length) - end) / (1 - end)
	return next.low + (c.atSet-next.low)*share
}

// join writes the temperature at the middle of each of today's 24 hours, given the days around
// it.
func join(before, today, after curve, hours *[24]float64) {
	for i := range hours {
		t := float64(i) + 0.5
		switch {
		case t < today.lowTime:
			hours[i] = before.byNight(24-before.set+t, today)
		case t <= today.set:
			hours[i] = today.byDay(t)
		default:
			hours[i] = today.byNight(t-today.set, after)
		}
	}
}

// DayHours returns the air temperature, in °C, at the middle of the 24 hours of a day in solar
// time, from the known lows and highs of the day and its neighbours. It is continuous at
// sunset and midnight and stays within the extremes of the three days. Before a colder morning
// the evening may fall below the day's own low, as in real weather; Hours.Beyond counts such
// days.
func DayHours(before, day, after Day, latitude float64, d civil.Date) [24]float64 {
	var hours [24]float64
	join(air.of(before, latitude, d.AddDays(-1)), air.of(day, latitude, d), air.of(after, latitude, d.AddDays(1)), &hours)
	return hours
}
