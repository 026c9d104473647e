package sun

import (
	"math"
	"time"

	"eyeup/civil"
	"eyeup/quantity"
)

// The formulas of this file are those of FAO Irrigation and Drainage Paper 56 (Allen and
// others 1998). They reckon by the day, with the sun a point on a flat horizon and no air
// to bend its light, so that their days are 6 to 12 minutes shorter than those of RiseSet.

// solarConstant is the sun's power above the air at the mean distance as FAO 56 has it,
// in J/m² and day: 0.0820 MJ/m² and minute.
const solarConstant = 0.0820e6 * 24 * 60

// orbit returns the declination in radians (equation 24) and the inverse relative distance
// of the sun (equation 23).
func orbit(d civil.Date) (declination, nearness float64) {
	j := 2 * math.Pi * float64(d.YearDay()) / 365
	return 0.409 * math.Sin(j-1.39), 1 + 0.033*math.Cos(j)
}

// sunsetAngle returns the hour angle of sunset in radians (equation 25): 0 when the sun
// stays below the horizon, pi when it stays above.
func sunsetAngle(latitude, declination float64) float64 {
	c := -math.Tan(latitude) * math.Tan(declination)
	switch {
	case c >= 1:
		return 0
	case c <= -1:
		return math.Pi
	}
	return math.Acos(c)
}

// DayLength returns how long the sun is up, 0 to 24 hours, at a latitude of -90 to 90
// degrees north. Source: FAO 56, equation 34.
func DayLength(latitude float64, d civil.Date) time.Duration {
	declination, _ := orbit(d)
	hours := 24 / math.Pi * sunsetAngle(radians(latitude), declination)
	return time.Duration(hours * float64(time.Hour))
}

// Extraterrestrial returns the day's sun above the air on a level surface, at a latitude
// of -90 to 90 degrees north. Source: FAO 56, equation 21.
func Extraterrestrial(latitude float64, d civil.Date) quantity.Insolation {
	declination, nearness := orbit(d)
	lat := radians(latitude)
	w := sunsetAngle(lat, declination)
	return quantity.Insolation(solarConstant / math.Pi * nearness *
		(w*math.Sin(lat)*math.Sin(declination) + math.Cos(lat)*math.Cos(declination)*math.Sin(w)))
}

// ClearSky returns the sun that reaches the ground on a cloudless day.
// Source: FAO 56, equation 37.
func ClearSky(site Site, d civil.Date) quantity.Insolation {
	share := 0.75 + 2e-5*float64(site.Elevation)
	return quantity.Insolation(share) * Extraterrestrial(site.Latitude, d)
}

// FromSunshine returns the sun that reaches the ground on a day with the given hours of
// bright sunshine. On a day without any daylight it is nothing; NaN when the sun is said
// to have shone for less than nothing or longer than the day.
// Source: FAO 56, equation 35, with its coefficients for where none were fitted.
func FromSunshine(sunshine time.Duration, latitude float64, d civil.Date) quantity.Insolation {
	day := DayLength(latitude, d)
	switch {
	case sunshine < 0 || sunshine > day:
		return quantity.Insolation(math.NaN())
	case day == 0:
		return 0
	}
	return quantity.Insolation(0.25+0.5*sunshine.Hours()/day.Hours()) * Extraterrestrial(latitude, d)
}

// FromRange returns the sun that reaches the ground, judged by how far the day's lowest and
// highest temperature lie apart, and never more than on a cloudless day. The coefficient
// kRs is about 0.16 inland and 0.19 on the coast, per square root of a kelvin; expect 15 %
// of error. NaN where an extreme is not known or they are reversed.
// Source: Hargreaves & Samani, as FAO 56, equation 50.
func FromRange(kRs float64, low, high quantity.Temperature, site Site, d civil.Date) quantity.Insolation {
	sun := quantity.Insolation(kRs*math.Sqrt(float64(high.Sub(low)))) * Extraterrestrial(site.Latitude, d)
	return min(sun, ClearSky(site, d))
}

func radians(degrees float64) float64 { return degrees * math.Pi / 180 }

func degrees(radians float64) float64 { return radians * 180 / math.Pi }
