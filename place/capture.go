package place

import (
	"math"

	"eyeup/civil"
	"eyeup/sun"
)

// LowSun returns how large the cover looks from where the sun stands, against the shadow
// of the floor alone: 1 for a floor that lies open, more where walls and roof catch low
// sun. It is the mean over a clear day, weighted by the sun on level ground, and over the
// ways the ridge may point.
func (c Covered) LowSun(latitude float64, d civil.Date) float64 {
	long, short := float64(c.Length), float64(c.Width)
	floor := long * short
	var caught, fallen float64
	for past := range 12 { // noon: the morning is the afternoon's mirror
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

// captures returns by how much the sun warms the house beyond what falls on its floor, for
// every day of the span: 1 + Capture·(LowSun − 1). The sun's path changes slowly, so it is
// reckoned every fortnight and drawn straight between.
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

// shadow returns the area that the house shows to a sun of the given height (the sine of
// its elevation), as the mean over the ways it may point.
func (c Covered) shadow(height float64) float64 {
	across := math.Sqrt(1 - height*height) // of the beam, along the level
	long, wide := float64(c.Length), float64(c.Width)
	rise, run := float64(c.Ridge-c.Eaves), wide/2
	gables := wide*float64(c.Eaves) + wide*rise/2
	var sum float64
	const ways = 4
	for i := range ways {
		turn := (float64(i) + 0.5) * math.Pi / (2 * ways)
		sideways, lengthways := across*math.Sin(turn), across*math.Cos(turn)
		sum += long*float64(c.Eaves)*sideways + gables*lengthways
		sum += long * (run*height + rise*sideways)          // the side of the roof that looks to the sun
		sum += long * math.Max(run*height-rise*sideways, 0) // the other
	}
	return sum / ways
}
