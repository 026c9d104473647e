package reading

import (
	"fmt"
	"math"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/sun"
	"eyeup/weather"
)

// Coldest and Warmest bound the air temperatures, in °C, that a station can have
// measured. The extremes of the record are -89.2 °C at Vostok, 1983, and 56.7 °C at
// Furnace Creek, 1913 (World Meteorological Organization, archive of weather and climate extremes).
const Coldest, Warmest = -90.0, 60.0

// mostSun is above the highest daily sun on level ground anywhere, in J/m²: at the south pole
// in December FAO paper 56, equation 21, gives 48.5 MJ/m² above the atmosphere.
const mostSun = 49e6

// moonlight is what an instrument may show without sun, in J/m² a day.
const moonlight = 0.2e6

// sunOf returns the highest possible sun of a day at the station.
func (d *Draft) sunOf(date civil.Date) float64 {
	if lat := d.Station.Latitude; lat >= -90 && lat <= 90 {
		return float64(sun.Extraterrestrial(lat, date)) + moonlight
	}
	return mostSun
}

// lookOver removes, and reports, impossible values.
func (d *Draft) lookOver(days []weather.Day, lines []int32) {
	for i := range days {
		day, line := &days[i], int(lines[i])
		d.temperature(&day.Low, line, "low")
		d.temperature(&day.High, line, "high")
		d.temperature(&day.DewPoint, line, "dew point")
		d.temperature(&day.Soil, line, "soil temperature")
		if s := float64(day.Sun); s < 0 || s > 0 && s > d.sunOf(d.first.AddDays(civil.Days(i))) {
			d.Note(line, "negative sun, or more than above the atmosphere: taken as missing", fmt.Sprintf("%s, %.4g MJ/m²", d.first.AddDays(civil.Days(i)), s/1e6))
			day.Sun = quantity.Insolation(math.NaN())
		}
		if day.High.Below(day.Low) {
			d.Note(line, "a day's high is below its low: both taken as missing",
				fmt.Sprintf("%s, high %.4g, low %.4g °C", d.first.AddDays(civil.Days(i)), day.High.Celsius(), day.Low.Celsius()))
			day.High, day.Low = quantity.Unknown(), quantity.Unknown()
		}
	}
}

func (d *Draft) temperature(t *quantity.Temperature, line int, what string) {
	c := t.Celsius()
	if c < Coldest || c > Warmest {
		d.Note(line, fmt.Sprintf("a %s outside %g to %g °C: taken as missing", what, Coldest, Warmest), fmt.Sprintf("%g °C", c))
		*t = quantity.Unknown()
	}
}
