package sun

import (
	"math"

	"eyeup/civil"
)

// HourShares returns what share of a day's sun falls in each hour at a latitude of -90 to
// 90 degrees north, by the sun's clock: hour 12 begins when the sun stands highest. The
// shares sum to 1, or to nothing on a day when the sun does not rise. Each is the formula's
// integral over the part of the hour between sunrise and sunset, so that days shorter than
// an hour come out right; the sum is then brought to 1.
// Source: Collares-Pereira & Rabl 1979, Solar Energy 22:155.
func HourShares(latitude float64, d civil.Date) [24]float64 {
	return shares(latitude, d, totalCurve)
}

// DiffuseHourShares is HourShares for the light that comes from the sky and not straight
// from the sun. Source: Liu & Jordan 1960, Solar Energy 4:1.
func DiffuseHourShares(latitude float64, d civil.Date) [24]float64 {
	return shares(latitude, d, diffuseCurve)
}

// curve gives a and b of (a + b cos w)(cos w - cos ws), the course of the sun over a day,
// from the hour angle of sunset ws.
type curve func(sunset float64) (a, b float64)

func totalCurve(sunset float64) (a, b float64) {
	s := sunset - radians(60)
	return 0.409 + 0.5016*math.Sin(s), 0.6609 - 0.4767*math.Sin(s)
}

func diffuseCurve(float64) (a, b float64) { return 1, 0 }

// rate returns the share of the day's sun that an hour around hour angle w would have if
// the sun held still.
func (c curve) rate(w, sunset float64) float64 {
	a, b := c(sunset)
	return math.Pi / 24 * (a + b*math.Cos(w)) * (math.Cos(w) - math.Cos(sunset)) /
		(math.Sin(sunset) - sunset*math.Cos(sunset))
}

// upTo returns the integral from noon to hour angle w of (a + b cos w)(cos w - cos ws).
func (c curve) upTo(w, sunset float64) float64 {
	a, b := c(sunset)
	return (a-b*math.Cos(sunset))*math.Sin(w) + b*(w/2+math.Sin(2*w)/4) - a*w*math.Cos(sunset)
}

func shares(latitude float64, d civil.Date, c curve) [24]float64 {
	var all [24]float64
	declination, _ := orbit(d)
	sunset := sunsetAngle(radians(latitude), declination)
	if sunset == 0 {
		return all
	}
	within := func(w float64) float64 { return c.upTo(min(w, sunset), sunset) }
	whole := 2 * within(sunset)
	for i := range 12 {
		from, to := float64(i)*math.Pi/12, float64(i+1)*math.Pi/12
		share := max(0, (within(to)-within(from))/whole) // where the sun only grazes, rounding may go below nothing
		all[12+i], all[11-i] = share, share
	}
	return all
}
