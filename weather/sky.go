package weather

import (
	"fmt"
	"math"

	"eyeup/civil"
	"eyeup/sun"
)

// Sky relates sun to the daily temperature range at a place: the coefficient of Hargreaves &
// Samani (kRs, per root of a kelvin).
type Sky struct {
	Coefficient float64
	Fitted      bool   // from the record's own measured sun
	Why         string // source and reliability of the coefficient, in words
}

// Coefficients for records without sun. Inland is the value of FAO Irrigation and Drainage
// Paper 56 (ch. 3, eq. 50). The paper's 0.19 for coasts gives 1.35 times what was measured at
// Mullingar, Ireland, in 2009-2024, where 0.14 fits.
const (
	inlandSky   = 0.16
	maritimeSky = 0.14
)

// fewestSunnyDays is how many days with measured sun each calendar month needs for a fit.
const fewestSunnyDays = 28

// FitSky returns the sky over the record's station. If the record has measured sun in every
// month of the year, the coefficient is fitted to the total sun of the year. Otherwise it is
// 0.14 in the cloudy maritime north-west of Europe (48 to 63 degrees north, 11 degrees west to
// 5 degrees east), and 0.16 elsewhere.
func FitSky(r *Record, site sun.Site) Sky {
	var measured, possible float64
	var days [13]int
	for i, day := range r.Days {
		if !day.HasExtremes() || math.IsNaN(float64(day.Sun)) {
			continue
		}
		d := r.From.AddDays(civil.Days(i))
		spread := float64(day.High.Sub(day.Low))
		measured += day.Sun.Megajoules()
		possible += math.Sqrt(spread) * sun.Extraterrestrial(site.Latitude, d).Megajoules()
		days[d.Month()]++
	}
	fewest := days[1]
	for _, n := range days[1:] {
		fewest = min(fewest, n)
	}
	if fewest >= fewestSunnyDays && possible > 0 {
		return Sky{measured / possible, true, fmt.Sprintf("sun of single days estimated from low and high, fitted to this record's own measured sun: %.3f", measured/possible)}
	}
	if inMaritimeEurope(site) {
		return Sky{maritimeSky, false, "no sun was measured: estimated from low and high with 0.14, for the cloudy north-west of Europe; within some 15 %"}
	}
	return Sky{inlandSky, false, "no sun was measured: estimated from low and high with 0.16; within some 15 %, less reliable near a coast"}
}

func inMaritimeEurope(s sun.Site) bool {
	return s.Latitude >= 48 && s.Latitude <= 63 && s.Longitude >= -11 && s.Longitude <= 5
}
