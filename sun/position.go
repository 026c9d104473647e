package sun

import (
	"math"
	"time"

	"eyeup/civil"
	"eyeup/quantity"
)

// Sky is where the sun stands, as seen from a place.
type Sky struct {
	Zenith     float64 // degrees from straight overhead, as seen: 90 and more is below the horizon
	Azimuth    float64 // degrees clockwise from north, 0 to 360
	Refraction float64 // degrees by which the air lifts the sun; Zenith + Refraction is without air
}

// Height returns the sine of the sun's elevation: the share of a straight beam that falls
// on level ground, below nothing when the sun is down.
func (s Sky) Height() float64 { return math.Cos(radians(s.Zenith)) }

// apparent is the sun seen from the middle of the Earth.
type apparent struct {
	ascension, declination float64 // radians
	sidereal               float64 // apparent sidereal time at Greenwich, radians
	distance               float64 // astronomical units
}

// terrestrialLead is how far the even clock of the planets runs ahead of UTC, in days: the
// 69.184 s that have held since 2017 (IERS Bulletin C 52). Over 1900 to 2100 it differs by
// up to some two minutes, in which the sun moves less than 0.0015 degrees.
const terrestrialLead = 69.184 / 86400

// julianDay returns the Julian day, with its fraction, of t in UTC.
func julianDay(t time.Time) float64 {
	const unixEpoch = 2440587.5
	return unixEpoch + float64(t.Unix())/86400 + float64(t.Nanosecond())/86400e9
}

// seen returns the sun at a Julian day. Source: J. Meeus, Astronomical Algorithms, 2nd
// edition 1998: chapter 25 (lower accuracy, 0.01 degree), 12 for the sidereal time and 22
// for the tilt of the Earth's axis.
func seen(day float64) apparent {
	const epoch, century = 2451545.0, 36525.0
	t := (day + terrestrialLead - epoch) / century
	meanLongitude := 280.46646 + t*(36000.76983+t*0.0003032)     // (25.2)
	anomaly := radians(357.52911 + t*(35999.05029-t*0.0001537))  // (25.3)
	eccentricity := 0.016708634 - t*(0.000042037+t*0.0000001267) // (25.4)
	centre := (1.914602-t*(0.004817+t*0.000014))*math.Sin(anomaly) +
		(0.019993-t*0.000101)*math.Sin(2*anomaly) + 0.000289*math.Sin(3*anomaly)
	distance := 1.000001018 * (1 - eccentricity*eccentricity) /
		(1 + eccentricity*math.Cos(anomaly+radians(centre))) // (25.5)
	node := radians(125.04 - 1934.136*t)
	nutation := -0.00478 * math.Sin(node)
	longitude := radians(meanLongitude + centre - 0.00569 + nutation)
	tilt := radians(23.4392911 - t*(0.0130042+t*(1.64e-7-t*5.04e-7)) + 0.00256*math.Cos(node)) // (22.2), (25.8)

	u := (day - epoch) / century
	sidereal := 280.46061837 + 360.98564736629*(day-epoch) + u*u*(0.000387933-u/38710000) // (12.4)
	return apparent{
		ascension:   math.Atan2(math.Cos(tilt)*math.Sin(longitude), math.Cos(longitude)), // (25.6)
		declination: math.Asin(math.Sin(tilt) * math.Sin(longitude)),                     // (25.7)
		sidereal:    radians(math.Mod(sidereal+nutation*math.Cos(tilt), 360)),
		distance:    distance,
	}
}

// hourAngle returns how far the sun has passed the meridian of a longitude, in radians
// from -pi to pi.
func (a apparent) hourAngle(longitude float64) float64 {
	return math.Remainder(a.sidereal+radians(longitude)-a.ascension, 2*math.Pi)
}

// Position returns where the sun stands at a moment between 1900 and 2100, to 0.01 degree,
// with parallax, and lifted by air of the standard pressure of the site at 10 °C.
func Position(site Site, at time.Time) Sky {
	sun := seen(julianDay(at))
	s := overhead(radians(site.Latitude), sun.declination, sun.hourAngle(site.Longitude))
	s.Zenith += parallax / sun.distance * math.Sin(radians(s.Zenith))
	s.Refraction = refraction(90-s.Zenith, site.Elevation)
	s.Zenith -= s.Refraction
	return s
}

// parallax is the sun's horizontal parallax at the mean distance, in degrees: 8.794 seconds
// of arc. Source: Meeus 1998, chapter 40.
const parallax = 8.794 / 3600

// AtHour returns where the sun stands by the sun's clock, hour 0 to 24 and 12 when it
// stands highest, at a latitude of -90 to 90 degrees north. It has the declination of FAO
// 56 and no refraction, in keeping with DayLength and HourShares.
func AtHour(latitude float64, d civil.Date, hour float64) Sky {
	declination, _ := orbit(d)
	return overhead(radians(latitude), declination, (hour-12)*math.Pi/12)
}

// overhead turns latitude, declination and hour angle, in radians, into zenith and azimuth.
func overhead(latitude, declination, hourAngle float64) Sky {
	up := math.Sin(latitude)*math.Sin(declination) +
		math.Cos(latitude)*math.Cos(declination)*math.Cos(hourAngle)
	south := math.Cos(hourAngle)*math.Sin(latitude)*math.Cos(declination) -
		math.Sin(declination)*math.Cos(latitude)
	west := math.Sin(hourAngle) * math.Cos(declination)
	azimuth := math.Mod(degrees(math.Atan2(west, south))+180, 360)
	return Sky{Zenith: degrees(math.Atan2(math.Hypot(south, west), up)), Azimuth: azimuth}
}

// refraction returns by how many degrees the air lifts the sun from its true elevation, in
// degrees; nothing for a sun that is wholly below the horizon.
// Source: Saemundsson 1986, as Meeus 1998, formula 16.4, scaled by the site's pressure.
func refraction(elevation float64, height quantity.Length) float64 {
	if elevation < -0.8333 {
		return 0
	}
	thinning := math.Pow(1-2.25577e-5*float64(height), 5.2559) // pressure over that at sea level
	return thinning * 1.02 / 60 / math.Tan(radians(elevation+10.3/(elevation+5.11)))
}
