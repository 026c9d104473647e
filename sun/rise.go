package sun

import (
	"errors"
	"fmt"
	"math"
	"time"

	"eyeup/civil"
)

// Day is the course of the sun over one day, by the clock.
type Day struct {
	Rise   time.Time     // upper edge of the sun on a level horizon; zero when it does not rise
	Noon   time.Time     // when the sun stands highest
	Set    time.Time     // zero when it does not set
	Length time.Duration // from Rise to Set; 0 in the polar night, 24 h in the polar day
}

// What RiseSet says of a day without sunrise or sunset.
var (
	ErrPolarNight = errors.New("the sun does not rise on this day")
	ErrPolarDay   = errors.New("the sun does not set on this day")
)

// horizon is the true elevation of the sun's middle when its upper edge is seen on a level
// horizon, in radians: 34' of refraction and 16' of half width. Source: Meeus 1998, chapter 15.
var horizon = radians(-50.0 / 60)

// RiseSet returns when the sun rises, stands highest and sets, within a minute between
// latitudes of 65 degrees for the years 1900 to 2100 and a level horizon; nearer the poles
// the sun grazes the horizon and the air decides. It is the daylight around that noon
// which lies nearest to twelve o'clock of d in the zone. Where the sun does not rise or set
// the error is ErrPolarNight or ErrPolarDay, and Noon and Length still hold. It refuses
// an impossible site, no date and no zone.
func RiseSet(site Site, d civil.Date, zone *time.Location) (Day, error) {
	if err := site.Check(); err != nil {
		return Day{}, err
	}
	if d.IsZero() || zone == nil {
		return Day{}, fmt.Errorf("sunrise needs a date and a time zone; give both")
	}
	twelve := time.Date(d.Year(), d.Month(), d.Day(), 12, 0, 0, 0, zone)
	noon, _ := site.cross(julianDay(twelve), func(apparent) (float64, error) { return 0, nil })
	day := Day{Noon: fromJulian(noon, zone)}
	rise, err := site.cross(noon, func(a apparent) (float64, error) {
		w, err := site.horizonAngle(a)
		return -w, err
	})
	if err != nil {
		return day.polar(err)
	}
	set, err := site.cross(noon, site.horizonAngle)
	if err != nil {
		return day.polar(err)
	}
	day.Rise, day.Set = fromJulian(rise, zone), fromJulian(set, zone)
	day.Length = day.Set.Sub(day.Rise)
	return day, nil
}

// polar is the day without rise and set.
func (d Day) polar(why error) (Day, error) {
	if errors.Is(why, ErrPolarDay) {
		d.Length = 24 * time.Hour
	}
	return d, why
}

// horizonAngle returns the hour angle at which the sun sets, were it to keep its declination.
func (s Site) horizonAngle(a apparent) (float64, error) {
	lat := radians(s.Latitude)
	c := (math.Sin(horizon) - math.Sin(lat)*math.Sin(a.declination)) / (math.Cos(lat) * math.Cos(a.declination))
	switch {
	case c > 1:
		return 0, ErrPolarNight
	case c < -1:
		return 0, ErrPolarDay
	}
	return math.Acos(c), nil
}

// cross returns the Julian day near the given one at which the sun stands at the hour angle
// asked for. Each step mends nearly all of what is left, so that six are plenty.
func (s Site) cross(near float64, angle func(apparent) (float64, error)) (float64, error) {
	day := near
	for range 6 {
		sun := seen(day)
		want, err := angle(sun)
		if err != nil {
			return day, err
		}
		day += (want - sun.hourAngle(s.Longitude)) / (2 * math.Pi)
	}
	return day, nil
}

// fromJulian returns the moment of a Julian day, to the millisecond.
func fromJulian(day float64, zone *time.Location) time.Time {
	return time.UnixMilli(int64(math.Round((day - 2440587.5) * 86400e3))).In(zone)
}
