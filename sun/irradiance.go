package sun

import (
	"math"

	"eyeup/civil"
	"eyeup/quantity"
)

// Beyond returns the sun's power above the air on a surface turned towards it.
// Source: Spencer 1971 for the distance; solar constant 1366.1 W/m², ASTM E490.
func Beyond(d civil.Date) quantity.Irradiance {
	b := 2 * math.Pi * float64(d.YearDay()-1) / 365
	return quantity.Irradiance(1366.1 * (1.00011 + 0.034221*math.Cos(b) + 0.00128*math.Sin(b) +
		0.000719*math.Cos(2*b) + 7.7e-5*math.Sin(2*b)))
}

// Haurwitz returns the sun on level ground under a cloudless sky; 0 when it is down.
// Source: Haurwitz 1945, Journal of Meteorology 2:154.
func Haurwitz(s Sky) quantity.Irradiance {
	c := s.Height()
	if c <= 0 {
		return 0
	}
	return quantity.Irradiance(1098 * c * math.Exp(-0.059/c))
}

// lowest is the sine of elevation below which the clearness of an hour is reckoned as if
// the sun stood there, since the quotient of two small numbers says nothing: 3.7 degrees.
const lowest = 0.065

// Clearness returns an hour's sun on level ground as a share of what it would be without
// air, at most 1; 0 when the sun is down.
func Clearness(level quantity.Irradiance, s Sky, d civil.Date) quantity.Share {
	if s.Height() <= 0 {
		return 0
	}
	return min(1, quantity.Share(float64(level/Beyond(d))/max(s.Height(), lowest)))
}

// DiffuseShare returns what share of an hour's sun comes from the whole sky and not
// straight from the sun, from the hour's clearness.
// Source: Erbs, Klein & Duffie 1982, Solar Energy 28:293.
func DiffuseShare(clearness quantity.Share) quantity.Share {
	k := clearness
	switch {
	case k <= 0.22:
		return 1 - 0.09*k
	case k <= 0.80:
		return 0.9511 + k*(-0.1604+k*(4.388+k*(-16.638+k*12.336)))
	}
	return 0.165
}

// DiffuseShareOfDay is DiffuseShare for a whole day: level is the day's sun on the ground.
// 1 on a day when the sun does not rise. Source: Erbs, Klein & Duffie 1982.
func DiffuseShareOfDay(level quantity.Insolation, latitude float64, d civil.Date) quantity.Share {
	declination, _ := orbit(d)
	most := Extraterrestrial(latitude, d)
	if most <= 0 {
		return 1
	}
	return diffuseOfDay(float64(level/most), sunsetAngle(radians(latitude), declination))
}

func diffuseOfDay(k, sunset float64) quantity.Share {
	isWinter := sunset < radians(81.4)
	switch {
	case isWinter && k < 0.715:
		return quantity.Share(1 + k*(-0.2727+k*(2.4495+k*(-11.9514+k*9.3879))))
	case isWinter:
		return 0.143
	case k < 0.722:
		return quantity.Share(1 + k*(0.2832+k*(-2.5557+k*0.8448)))
	}
	return 0.175
}

// grazing is the zenith in degrees beyond which the sun's beam is no longer told apart from
// the light of the sky: the division by its height would make much of nothing.
const grazing = 87

// Split parts an hour's sun on level ground into the beam on a surface turned towards the
// sun and the light of the sky on level ground. With the sun within 3 degrees of the
// horizon all is light of the sky. Source: Erbs, Klein & Duffie 1982.
func Split(level quantity.Irradiance, s Sky, d civil.Date) (beam, diffuse quantity.Irradiance) {
	if s.Zenith > grazing {
		return 0, level
	}
	diffuse = level * quantity.Irradiance(DiffuseShare(Clearness(level, s, d)))
	return (level - diffuse) / quantity.Irradiance(s.Height()), diffuse
}
