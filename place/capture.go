package place

import (
	"math"

	"eyeup/civil"
	"eyeup/sun"
)

// LowSun returns the area of the cover as seen from the sun, divided by the shadow of the
// floor alone: 1 for open ground, more where walls and roof catch low sun. It is the mean over
// a clear day, weighted by the sun on level ground, and over all directions of the ridge.
func (c Covered) LowSun(latitude float64, d civil.Date) float64 {
	long, short := float64(c.Length), float64(c.Width)
	floor := long * short
	var caught, fallen float64
	for past := range 12 { // from noon on: the morning mirrors the afternoon
		s := sun.AtHour(latitude, d, 12.5+float64(past))
		height := s.Height()
		if height <= 0 {
			break
		}
		weight := float64(sun.Haurwitz(s))
		caught += weight * c.shadow(height) / (floor * height)
		fallen += weight
	}
	if fallen == 0 {
		return 1
	}
	return caught / fallen
}

// captures returns the factor by which the sun in the house exceeds that on its floor, for
// each day of the span: 1 + Capture·(LowSun − 1). It is computed every fortnight and
// interpolated linearly, since the sun's path changes slowly.
func (c Covered) captures(span civil.Span, latitude float64) []float64 {
	const every = 15
	share := c.body().Capture
	at := func(day int) float64 {
		return 1 + share*(c.LowSun(latitude, span.From.AddDays(civil.Days(day)))-1)
	}
	all := make([]float64, span.Days())
	from, to := at(0), at(every)
	for day := range all {
		part := day % every
		if part == 0 && day > 0 {
			from, to = to, at(day+every)
		}
		all[day] = from + (to-from)*float64(part)/every
	}
	return all
}

// shadow returns the projected area of the house for a sun whose elevation has the given sine,
// averaged over all directions of the ridge.
func (c Covered) shadow(height float64) float64 {
	across := math.Sqrt(1 - height*height) // horizontal part of the beam
	long, wide := float64(c.Length), float64(c.Width)
	rise, run := float64(c.Ridge-c.Eaves), wide/2
	gables := wide*float64(c.Eaves) + wide*rise/2
	var sum float64
	const ways = 4
	for i := range ways {
		turn := (float64(i) + 0.5) * math.Pi / (2 * ways)
		sideways, lengthways := across*math.Sin(turn), across*math.Cos(turn)
		sum += long*float64(c.Eaves)*sideways + gables*lengthways
		sum += long * (run*height + rise*sideways)          // the roof side facing the sun
		sum += long * math.Max(run*height-rise*sideways, 0) // the other
	}
	return sum / ways
}
