package reading

import (
	"fmt"
	"math"
	"time"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/sun"
	"eyeup/weather"
)

// Year is a year hour by hour, by the clock of standard time, as files of typical years
// give it. Sample i is stamped i+1 hours after the first midnight. Temperatures are those
// at the stamp; sun is the mean of the hour before it. What was not measured is NaN.
type Year struct {
	Station  weather.Station
	Zone     float64     // hours that the clock is ahead of Greenwich
	Span     civil.Span  // whole days
	Air      []float64   // °C at the stamp
	DewPoint []float64   // °C at the stamp
	Sun      []float64   // W/m² on the level ground, mean of the hour before the stamp
	Drawn    map[int]int // for a year put together from others: which year each month (1 to 12) is of
	Findings []weather.Finding
}

// PlainYear is the year on whose days a year put together from others is laid. It has
// 365 days, as those have.
const PlainYear = 2001

// Record returns the days of the year: extremes of the 24 stamps of each, sum of the sun,
// mean dew point. A day with an hour missing lacks what was missing in it.
func (y *Year) Record() *weather.Record {
	r := &weather.Record{Station: y.Station, From: y.Span.From, Findings: y.Findings}
	for i := 0; i < len(y.Air); i += 24 {
		low, high := math.Inf(1), math.Inf(-1)
		var dew, total float64
		for h := i; h < i+24; h++ {
			low, high = min(low, y.Air[h]), max(high, y.Air[h]) // NaN stays NaN
			dew += y.DewPoint[h] / 24
			total += y.Sun[h] * time.Hour.Seconds()
		}
		r.Days = append(r.Days, weather.Day{
			Low: quantity.Celsius(low), High: quantity.Celsius(high),
			Sun: quantity.Insolation(total), DewPoint: quantity.Celsius(dew), Soil: quantity.Unknown(),
		})
	}
	return r
}

// BySun returns the year by the sun's clock. Each hour is the mean over the clock hours that
// it overlaps, the year closing upon itself; the air of a clock hour is the mean of its
// two stamps. The shift is that of the true noon of each day. It fails where the station's
// whereabouts are not known.
func (y *Year) BySun() (*weather.Hours, error) {
	site := sun.Site{Latitude: y.Station.Latitude, Longitude: y.Station.Longitude, Elevation: y.Station.Elevation}
	if err := site.Check(); err != nil {
		return nil, fmt.Errorf("the year can't be put on the sun's clock: %w", err)
	}
	n := len(y.Air)
	h := &weather.Hours{Span: y.Span, Air: make([]float64, n), DewPoint: make([]float64, n), Sun: make([]float64, n), Days: y.Record().Days}
	for day := range n / 24 {
		late := y.noon(site, y.Span.From.AddDays(civil.Days(day))) - 12
		whole := math.Floor(late)
		share := late - whole
		for hour := range 24 {
			i := 24*day + hour
			a := ((i+int(whole))%n + n) % n // the first clock hour that overlaps
			b := (a + 1) % n
			h.Air[i] = (1-share)*y.mean(y.Air, a) + share*y.mean(y.Air, b)
			h.DewPoint[i] = (1-share)*y.mean(y.DewPoint, a) + share*y.mean(y.DewPoint, b)
			h.Sun[i] = (1-share)*y.Sun[a] + share*y.Sun[b]
		}
	}
	return h, nil
}

// mean returns the mean of clock hour i from the stamps at its ends.
func (y *Year) mean(stamps []float64, i int) float64 {
	return (stamps[(i+len(stamps)-1)%len(stamps)] + stamps[i]) / 2
}

// noon returns when the sun stands highest, in hours of the clock.
func (y *Year) noon(site sun.Site, d civil.Date) float64 {
	zone := time.FixedZone("", int(y.Zone*3600))
	day, _ := sun.RiseSet(site, d, zone) // noon is there in the polar night too
	noon := day.Noon.In(zone)
	return float64(noon.Hour()) + float64(noon.Minute())/60 + float64(noon.Second())/3600
}
