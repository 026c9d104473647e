package crosscheck

import (
	"errors"
	"fmt"
	"math"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/sun"
)

type place struct {
	Latitude  float64 `json:"latitude"`
	Longitude float64 `json:"longitude"`
}

func (p place) site() sun.Site { return sun.Site{Latitude: p.Latitude, Longitude: p.Longitude} }

// gardens lie at sea level from the equator to the polar circles, both sides of Greenwich.
var gardens = []place{
	{0, 0}, {20, 120}, {-35, 175}, {42.3, -71.1}, {44.55, -69.63}, {-50, -73}, {53.5, -7.3}, {60, 25}, {-65, 140}, {65, -18}, {78, 16},
}

type moment struct {
	Site place     `json:"site"`
	At   time.Time `json:"at"`
}

type noonOf struct {
	Site place     `json:"site"`
	Noon time.Time `json:"noon"`
}

type sunQuestion struct {
	Positions []moment `json:"positions"`
	Days      []noonOf `json:"days"`
}

type sunAnswer struct {
	Positions []struct{ Zenith, Airless, Azimuth float64 }
	Days      []struct{ Rise, Set float64 }
}

// century returns moments from 1950 to 2050, each 97 days and some hours after the last, so
// that every hour of the day and every season is met.
func century() []time.Time {
	var all []time.Time
	for t := time.Date(1950, 1, 1, 0, 0, 0, 0, time.UTC); t.Year() < 2050; t = t.Add(97*24*time.Hour + 37*time.Minute + 5*time.Hour) {
		all = append(all, t)
	}
	return all
}

// TestSunOverACentury compares position, sunrise and sunset with astronomy-engine 2.1.19,
// whose sun is good to an arc minute and better. Position is promised to 0.01 degree; rise
// and set to a minute up to latitudes of 65 degrees.
func TestSunOverACentury(t *testing.T) {
	question, ours := questions(t)
	var theirs sunAnswer
	ask(t, "sun.js", question, &theirs)

	var airless, zenith, across worst
	for i, q := range question.Positions {
		s, where := sun.Position(q.Site.site(), q.At), fmt.Sprint(q)
		want := theirs.Positions[i]
		airless.show(math.Abs(s.Zenith+s.Refraction-want.Airless), where)
		turn := math.Remainder(s.Azimuth-want.Azimuth, 360)
		across.show(math.Abs(turn)*math.Sin(s.Zenith*math.Pi/180), where)
		if want.Zenith < 90 { // below the horizon each has a way of its own to lift the sun
			zenith.show(math.Abs(s.Zenith-want.Zenith), where)
		}
	}
	airless.hold(t, "zenith without air, degrees", 0.01)
	zenith.hold(t, "zenith as seen above the horizon, degrees", 0.01)
	across.hold(t, "azimuth across the line of sight, degrees", 0.01)

	var rise, set worst
	for i, q := range question.Days {
		where, want := fmt.Sprint(q), theirs.Days[i]
		rise.show(math.Abs(seconds(ours[i].Rise)-want.Rise), where)
		set.show(math.Abs(seconds(ours[i].Set)-want.Set), where)
	}
	rise.hold(t, "sunrise, s", 60)
	set.hold(t, "sunset, s", 60)
}

func seconds(t time.Time) float64 { return float64(t.UnixMilli()) / 1000 }

// questions lists what is asked, and our own days; days without sunrise and days beyond 65
// degrees are left out of the rises.
func questions(t *testing.T) (q sunQuestion, ours []sun.Day) {
	for _, at := range century() {
		for _, g := range gardens {
			q.Positions = append(q.Positions, moment{g, at})
			if math.Abs(g.Latitude) > 65 {
				continue
			}
			day, err := sun.RiseSet(g.site(), civil.Of(at), time.UTC)
			switch {
			case errors.Is(err, sun.ErrPolarDay), errors.Is(err, sun.ErrPolarNight):
				continue
			case err != nil:
				t.Fatal(err)
			}
			q.Days, ours = append(q.Days, noonOf{g, day.Noon}), append(ours, day)
		}
	}
	return q, ours
}
