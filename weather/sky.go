package weather

import (
	"fmt"
	"math"

	"eyeup/civil"
	"eyeup/sun"
)

// Sky says how much sun goes with a day's range of temperature at a place: the
// coefficient of Hargreaves & Samani (kRs, per root of a kelvin).
type Sky struct {
	Coefficient float64
	Fitted      bool   // from the record's own measured sun
	Why         string // where the coefficient comes from and how sure it is, in words
}

// Coefficients for records without sun. Inland is the value of FAO Irrigation and Drainage Paper 56
// (ch. 3, eq. 50). The paper's 0.19 for coasts reads 1.35 times what was measured at
// Mullingar, Ireland, in 2009-2024, where 0.14 fits.
const (
	inlandSky   = 0.16
	maritimeSky = 0.14
)

// fewestSunnyDays is how many days of measured sun each calendar month must have for
// a coefficient to be fitted.
const fewestSunnyDays = 28

// FitSky returns the sky over the record's station. Where the record holds measured sun
// in every month of the year the coefficient is fitted to it, so that the sun of the
// whole year comes out right. Else it is 0.14 in the cloudy maritime north-west of
// Europe, taken as 48 to 63 degrees north and 11 degrees west to 5 degrees east, and
// 0.16 elsewhere.
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
		return Sky{measured / possible, true, fmt.Sprintf("sun of single days reckoned from low and high, fitted to this record's own measured sun: %.3f", measured/possible)}
	}
	if inMaritimeEurope(site) {
		return Sky{maritimeSky, false, "no sun was measured: reckoned from low and high with 0.14, for the cloudy north-west of Europe; right within some 15 %"}
	}
	return Sky{inlandSky, false, "no sun was measured: reckoned from low and high with 0.16; right within some 15 %, less near a coast"}
}

func inMaritimeEurope(s sun.Site) bool {
	return s.Latitude >= 48 && s.Latitude <= 63 && s.Longitude >= -11 && s.Longitude <= 5
}
