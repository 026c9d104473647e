package weather

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/sun"
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.8g, want %.8g ± %g", what, got, want, tolerance)
	}
}

// Parton & Logan's day and night with the coefficients of Wann et al. 1985 (α 2.59, β 1.55, γ 2.2), as the
// tests of the R package TrenchR (trenchproject/TrenchR @ca58d440) have them: lows and
// highs 10 and 30 °C, sun from 6 to 18.
func TestPublishedRhythm(t *testing.T) {
	c := rhythm{highLag: 2.59, lowLag: 1.55, decay: 2.2}.between(10, 30, 6, 18)
	near(t, "11 h", c.byDay(11), 23.91954, 1e-5)
	length := 24 - c.set + c.lowTime
	night := func(sinceSet float64) float64 { return c.low + (c.atSet-c.low)*c.cooled(sinceSet, length) }
	near(t, "20 h", night(2), 20.46866, 1e-5)
	near(t, "3 h", night(9), 13.35971, 1e-5)
}

// anyDay draws a day's low and high.
func anyDay(t *rapid.T, name string) Day {
	d := Unmeasured()
	low := rapid.Float64Range(-40, 35).Draw(t, name+" low")
	d.Low = quantity.Celsius(low)
	d.High = quantity.Celsius(low + rapid.Float64Range(0, 30).Draw(t, name+" range"))
	return d
}

func anyDate(t *rapid.T) civil.Date {
	return civil.MustOn(2027, 1, 1).AddDays(civil.Days(rapid.IntRange(0, 364).Draw(t, "day")))
}

func TestHoursStayWithinTheDaysAround(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		before, day, after := anyDay(t, "before"), anyDay(t, "day"), anyDay(t, "after")
		latitude := rapid.Float64Range(-90, 90).Draw(t, "latitude")
		low := min(before.Low.Celsius(), day.Low.Celsius(), after.Low.Celsius())
		high := max(before.High.Celsius(), day.High.Celsius(), after.High.Celsius())
		for i, x := range DayHours(before, day, after, latitude, anyDate(t)) {
			if !(x >= low-1e-9 && x <= high+1e-9) {
				t.Fatalf("hour %d is %g, outside %g to %g", i, x, low, high)
			}
		}
	})
}

func TestDayAndNightJoin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		latitude := rapid.Float64Range(-90, 90).Draw(t, "latitude")
		date := anyDate(t)
		today := air.of(anyDay(t, "today"), latitude, date)
		next := air.of(anyDay(t, "next"), latitude, date.AddDays(1))
		same := func(what string, a, b float64) {
			if math.Abs(a-b) > 1e-9 {
				t.Fatalf("%s: %g and %g do not join", what, a, b)
			}
		}
		same("sunset", today.byDay(today.set), today.byNight(0, next))
		same("the next low", today.byNight(24-today.set+next.lowTime, next), next.byDay(next.lowTime))
		same("the low", today.byDay(today.lowTime), today.low)
		same("the high", today.byDay(12+today.highLag), today.high)
	})
}

// Midnight is nothing special: the last minute of one day and the first of the next are
// on one curve.
func TestMidnightIsContinuous(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		latitude := rapid.Float64Range(-65, 65).Draw(t, "latitude")
		date := anyDate(t)
		a, b, c, d := anyDay(t, "a"), anyDay(t, "b"), anyDay(t, "c"), anyDay(t, "d")
		evening := DayHours(a, b, c, latitude, date)
		night := DayHours(b, c, d, latitude, date.AddDays(1))
		// An exponential fall changes by less from hour to hour as it goes on.
		step, before := math.Abs(night[0]-evening[23]), math.Abs(evening[23]-evening[22])
		if step > before+1e-9 {
			t.Fatalf("the step over midnight is %g K, after one of %g K", step, before)
		}
	})
}

func TestWarmestHourIsTwoPastNoon(t *testing.T) {
	day := Unmeasured()
	day.Low, day.High = quantity.Celsius(5), quantity.Celsius(20)
	hours := DayHours(day, day, day, 44.5, civil.MustOn(2027, 4, 1))
	warmest := 0
	for i, x := range hours {
		if x > hours[warmest] {
			warmest = i
		}
	}
	if warmest != 13 && warmest != 14 { // the hours on either side of 14:00
		t.Errorf("the warmest hour begins at %d", warmest)
	}
	near(t, "warmest hour", hours[14], 20, 0.1)
	near(t, "coldest hour", min(hours[5], hours[6]), 5, 0.4)
}

// A member's hours are those of its days, one after another.
func TestHoursOfAMember(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		from := anyDate(t)
		site := sun.Site{Latitude: rapid.Float64Range(-60, 60).Draw(t, "latitude")}
		days := []Day{anyDay(t, "a"), anyDay(t, "b"), anyDay(t, "c")}
		days[1].Sun = 12 * quantity.MegajoulePerSquareMetre
		days[2].DewPoint = quantity.Celsius(-50)
		m := Member{Span: civil.Span{From: from, To: from.AddDays(2)}, Days: days}
		h := m.Hours(site, Sky{Coefficient: 0.16})
		for i, x := range DayHours(days[0], days[1], days[2], site.Latitude, from.AddDays(1)) {
			if h.Air[24+i] != x {
				t.Fatalf("hour %d: %g in the season, %g by itself", i, h.Air[24+i], x)
			}
			if h.DewPoint[24+i] > x {
				t.Fatalf("hour %d has its dew point above its air", i)
			}
		}
		var joules float64
		for _, watts := range h.Sun[24:48] {
			joules += watts * 3600
		}
		if math.Abs(joules-12e6) > 1e-3 {
			t.Fatalf("the measured sun of 12 MJ came out as %g J", joules)
		}
		if h.SunReckoned != 2 || h.DewPointAssumed != 2 || h.DewPoint[48] != -50 {
			t.Fatalf("%d days of sun reckoned, %d dew points assumed", h.SunReckoned, h.DewPointAssumed)
		}
	})
}

func TestHoursOfNoDays(t *testing.T) {
	if h := (Member{}).Hours(sun.Site{}, Sky{}); len(h.Air) != 0 {
		t.Error("a member without days has hours")
	}
}
