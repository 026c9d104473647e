package weather

import (
	"math"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/sun"
)

// Hours is the weather of a span hour by hour, by the sun's clock: noon is when the sun
// stands highest. The slices are as long as the span has hours and are in the units of
// the hot loops that read them; hour i covers the time from i to i+1.
type Hours struct {
	Span     civil.Span
	Air      []float64 // mean air temperature of the hour, °C
	DewPoint []float64 // mean dew point of the hour, °C
	Sun      []float64 // mean irradiance on the level ground, W/m²
	Days     []Day     // the days they were made from

	DewPointAssumed int // days without a measured dew point, for which the day's low stands in
	SunReckoned     int // days without measured sun, for which it was reckoned from low and high
}

// Hours makes hours of the member's days: the air by Parton & Logan (see DayHours), the
// sun from the record where it has it, else from the day's low and high under the given
// sky, shared over the day by sun.HourShares. Dew point is the record's, else the day's
// low (FAO Irrigation and Drainage Paper 56, eq. 48; in dry places the truth lies some
// kelvin lower), and never above the air itself. The season's first and last day stand in
// for the days beyond them.
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

// layAir joins the curves of the days.
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

// Beyond counts the days on which an hour lies more than by above the day's own high or
// below its own low: mostly evenings that fall towards a colder morning.
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
