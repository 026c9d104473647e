package weather

import (
	"math"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/sun"
)

// Hours is the hourly weather of a span in solar time: noon is when the sun is highest. The
// slices have one value per hour, in the units of the hot loops that read them; hour i is the
// time from i to i+1.
type Hours struct {
	Span     civil.Span
	Air      []float64 // mean air temperature of the hour, °C
	DewPoint []float64 // mean dew point of the hour, °C
	Sun      []float64 // mean irradiance on level ground, W/m²
	Days     []Day     // the days they were made from

	DewPointAssumed int // days without a measured dew point, where the day's low is used
	SunReckoned     int // days without measured sun, where it is estimated from low and high
}

// Hours computes hours from the member's days. Air is by Parton & Logan (see DayHours). Sun is
// the record's, or estimated from the day's low and high under the given sky, and distributed
// over the day by sun.HourShares. Dew point is the record's, or the day's low (FAO Irrigation
// and Drainage Paper 56, eq. 48; in dry places some kelvin too high), and never above the air.
// The first and last day of the season stand in for the days beyond.
func (m Member) Hours(site sun.Site, sky Sky) *Hours {
	n := len(m.Days)
	h := &Hours{Span: m.Span, Days: m.Days}
	h.Air, h.DewPoint, h.Sun = make([]float64, 24*n), make([]float64, 24*n), make([]float64, 24*n)
	if n == 0 {
		return h
	}
	h.layAir(site.Latitude)
	for i, day := range m.Days {
		h.layDewPoint(i, day)
		h.laySun(i, day, site, sky)
	}
	return h
}

// layAir computes the air from the curves of the days.
func (h *Hours) layAir(latitude float64) {
	curves := make([]curve, len(h.Days)+2)
	last := len(h.Days) - 1
	for i := range curves {
		day := h.Days[min(max(i-1, 0), last)]
		curves[i] = air.of(day, latitude, h.Span.From.AddDays(civil.Days(i-1)))
	}
	for i := range h.Days {
		join(curves[i], curves[i+1], curves[i+2], (*[24]float64)(h.Air[24*i:]))
	}
}

func (h *Hours) layDewPoint(i int, day Day) {
	dew := day.DewPoint.Celsius()
	if !day.DewPoint.IsKnown() {
		dew = day.Low.Celsius()
		h.DewPointAssumed++
	}
	for j := 24 * i; j < 24*(i+1); j++ {
		h.DewPoint[j] = dew
		if h.Air[j] < dew {
			h.DewPoint[j] = h.Air[j]
		}
	}
}

func (h *Hours) laySun(i int, day Day, site sun.Site, sky Sky) {
	date := h.Span.From.AddDays(civil.Days(i))
	total := float64(day.Sun)
	if math.IsNaN(total) {
		total = float64(sun.FromRange(sky.Coefficient, day.Low, day.High, site, date))
		h.SunReckoned++
	}
	for j, share := range sun.HourShares(site.Latitude, date) {
		h.Sun[24*i+j] = total * share / 3600
	}
}

// Beyond counts the days with an hour more than by above the day's own high or below its own
// low: mostly evenings before a colder morning.
func (h *Hours) Beyond(by quantity.Difference) int {
	count := 0
	for i, day := range h.Days {
		low, high := day.Low.Celsius()-float64(by), day.High.Celsius()+float64(by)
		for _, t := range h.Air[24*i : 24*(i+1)] {
			if t < low || t > high {
				count++
				break
			}
		}
	}
	return count
}
