package place

import (
	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/sun"
	"eyeup/weather"
)

// fillLight fills the light, day length and lamps of a course. share is the share of the
// outside light that enters; 0 is dark.
func fillLight(c *Course, h *weather.Hours, site sun.Site, share float64, lamps *Lamps) {
	underLamps, drawn := lamps.daily(), lamps.kilowattHours()
	for day := range c.Light {
		var shine float64
		for _, w := range h.Sun[24*day : 24*day+24] {
			shine += w
		}
		outside := sun.Light(quantity.Insolation(shine * hour))
		c.Light[day] = float64(outside)*share + underLamps
		c.LampKWh[day] = drawn
		var sunny float64
		if share > 0 {
			sunny = sun.DayLength(site.Latitude, c.Span.From.AddDays(civil.Days(day))).Hours()
		}
		c.DayLength[day] = lamps.dayLength(sunny)
	}
}
