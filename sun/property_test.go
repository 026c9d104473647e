package sun_test

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/sun"
)

func drawDay(t *rapid.T) civil.Date {
	return civil.MustOn(2024, 1, 1).AddDays(civil.Days(rapid.IntRange(0, 1500).Draw(t, "day")))
}

func drawLatitude(t *rapid.T) float64 { return rapid.Float64Range(-90, 90).Draw(t, "latitude") }

func TestHourSharesSumToTheDay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		latitude, day := drawLatitude(t), drawDay(t)
		light := sun.DayLength(latitude, day)
		for _, shares := range [][24]float64{sun.HourShares(latitude, day), sun.DiffuseHourShares(latitude, day)} {
			var sum float64
			for hour, share := range shares {
				sum += share
				fromNoon := math.Min(math.Abs(float64(hour-12)), math.Abs(float64(hour-11)))
				isNight := fromNoon >= light.Hours()/2
				if share < 0 || isNight && share != 0 {
					t.Fatalf("hour %d of a day of %v has share %g", hour, light, share)
				}
			}
			if light > 0 && math.Abs(sum-1) > 1e-9 || light == 0 && sum != 0 {
				t.Fatalf("the shares of a day of %v sum to %g", light, sum)
			}
		}
	})
}

func TestClearSkyIsTheMost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		site, day := sun.Site{Latitude: drawLatitude(t), Elevation: 100}, drawDay(t)
		apart := rapid.Float64Range(0, 40).Draw(t, "apart")
		got := sun.FromRange(0.19, quantity.Celsius(0), quantity.Celsius(apart), site, day)
		if got < 0 || got > sun.ClearSky(site, day) || sun.ClearSky(site, day) > sun.Extraterrestrial(site.Latitude, day) {
			t.Fatalf("%g MJ/m² on a day apart by %g", got.Megajoules(), apart)
		}
	})
}

func TestSplitKeepsTheWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := sun.Sky{Zenith: rapid.Float64Range(0, 120).Draw(t, "zenith")}
		level := quantity.Irradiance(rapid.Float64Range(0, 1200).Draw(t, "level"))
		beam, diffuse := sun.Split(level, s, drawDay(t))
		if diffuse < 0 || diffuse > level || beam < 0 {
			t.Fatalf("%g W/m² parted into beam %g, diffuse %g", level, beam, diffuse)
		}
		if whole := float64(beam)*s.Height() + float64(diffuse); math.Abs(whole-float64(level)) > 1e-9*(1+float64(level)) {
			t.Fatalf("%g W/m² became %g", level, whole)
		}
	})
}

// TestRiseIsWhereTheSunIs: at rise and set the sun's upper edge is on the horizon, at noon
// it stands on the meridian, and all three lie in order.
func TestRiseIsWhereTheSunIs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		site := sun.Site{
			Latitude:  rapid.Float64Range(-60, 60).Draw(t, "latitude"),
			Longitude: rapid.Float64Range(-180, 180).Draw(t, "longitude"),
		}
		zone := time.FixedZone("own", int(site.Longitude/15)*3600)
		day, err := sun.RiseSet(site, drawDay(t), zone)
		if err != nil {
			t.Fatal(err)
		}
		if !day.Rise.Before(day.Noon) || !day.Noon.Before(day.Set) || day.Length != day.Set.Sub(day.Rise) {
			t.Fatalf("out of order: %+v", day)
		}
		for _, edge := range []time.Time{day.Rise, day.Set} {
			s := sun.Position(site, edge)
			if below := s.Zenith + s.Refraction - 90; math.Abs(below-0.833) > 0.01 {
				t.Fatalf("at %v the sun stands %g degrees below the horizon", edge, below)
			}
		}
		if s := sun.Position(site, day.Noon); math.Abs(math.Remainder(s.Azimuth, 180))*math.Sin(s.Zenith*math.Pi/180) > 0.01 {
			t.Fatalf("at noon the sun's azimuth is %g", s.Azimuth)
		}
	})
}

// TestNoonLiesOnTheDayAsked, in every zone that fits the place, by summer time too.
func TestNoonLiesOnTheDayAsked(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		site := sun.Site{Longitude: rapid.Float64Range(-180, 180).Draw(t, "longitude")}
		ahead := rapid.IntRange(-3, 3).Draw(t, "hours ahead of the sun")
		zone := time.FixedZone("own", int(site.Longitude/15)*3600+ahead*3600)
		want := drawDay(t)
		day, err := sun.RiseSet(site, want, zone)
		if err != nil || civil.Of(day.Noon) != want {
			t.Fatalf("asked for %v, noon at %v (%v)", want, day.Noon, err)
		}
	})
}

// TestEveryPlaceHasAnAnswer: from pole to pole a day has a noon, and a rise and set or the
// reason why not.
func TestEveryPlaceHasAnAnswer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		site := sun.Site{Latitude: drawLatitude(t), Longitude: rapid.Float64Range(-180, 180).Draw(t, "longitude")}
		day, err := sun.RiseSet(site, drawDay(t), time.UTC)
		isPolar := err == sun.ErrPolarDay || err == sun.ErrPolarNight
		if day.Noon.IsZero() || isPolar != day.Rise.IsZero() || (err != nil) != isPolar {
			t.Fatalf("%+v: %+v, %v", site, day, err)
		}
		if day.Length < 0 || day.Length > 24*time.Hour {
			t.Fatalf("a day of %v", day.Length)
		}
	})
}
