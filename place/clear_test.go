package place

import (
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/odds"
	"eyeup/quantity"
	"eyeup/sun"
	"eyeup/weather"
)

// clearDays is twenty like days up to the given one, at 95 % of a clear sky's sun, so that
// the last is a steady cycle.
func clearDays(last civil.Date, low, high float64, site sun.Site) *weather.Hours {
	m := weather.Member{Span: civil.Span{From: last.AddDays(-19), To: last}}
	for range 20 {
		m.Days = append(m.Days, weather.Day{
			Low: quantity.Celsius(low), High: quantity.Celsius(high), DewPoint: quantity.Celsius(low),
			Sun: 0.95 * sun.ClearSky(site, last),
		})
	}
	return m.Hours(site, weather.Sky{})
}

// warmest returns the highest air of the last day in a house held at 10 °C.
func warmest(c Covered, last civil.Date, low, high float64) float64 {
	c.Heater = &Heater{Power: 50 * quantity.Kilowatt}
	k := c.Run(clearDays(last, low, high, fortyFour), fortyFour, Steadily(quantity.Celsius(10)))
	top := -100.0
	for _, t := range k.Air[19*24:] {
		top = max(top, t)
	}
	return top
}

// Common practice: glass set at 50 °F on a clear mid-February day with 33 °F outside at
// 44.5° N drifts to 55–60 °F. Neither the cover nor the night before is told with it; the
// small twin-wall house, after a night of 18 °F, comes to 61 °F, and two degrees above the
// band are allowed.
func TestGlassSetAt50FOnAClearFebruaryDay(t *testing.T) {
	top := quantity.Celsius(warmest(smallHouse(), civil.MustOn(2027, time.February, 15), -8, quantity.Fahrenheit(33).Celsius()))
	t.Logf("drifts to %.1f °F", top.Fahrenheit())
	if top.Fahrenheit() < 55 || top.Fahrenheit() > 62 {
		t.Errorf("drifts to %.1f °F; growers see 55 to 60", top.Fahrenheit())
	}
}

// Highest air at 10 °C on a clear day of −8 to 1 °C at 44.5° N in mid-January, mid-February
// and mid-March, as reckoned by another program written apart from this one.
func TestClearDaysAgainstAnotherProgram(t *testing.T) {
	film := smallHouse()
	film.Cover, _ = CoverNamed("single-film")
	film.AirChanges = 1.5
	glass := smallHouse()
	glass.Cover = Cover{Name: "own", U: 6.5, Light: 0.8, FrostLift: 2}
	glass.Body = UsualBody()
	glass.Body.Sensible, glass.Body.Coupling = 0.6, 4
	for _, c := range []struct {
		what string
		c    Covered
		want [3]float64
	}{
		{"twin-wall", smallHouse(), [3]float64{13.2, 16.5, 19.8}},
		{"single film", film, [3]float64{10.0, 10.1, 12.0}},
		{"single glass, more sun felt", glass, [3]float64{11.2, 14.0, 16.8}},
	} {
		for i, want := range c.want {
			day := civil.MustOn(2027, time.Month(i+1), 15)
			near(t, c.what+" in "+day.Month().String(), warmest(c.c, day, -8, 1), want, 0.7)
		}
	}
}

// The small house by hand: 37.1 m² of walls, 3.2 of gables and 29.4 of roof; 2.15 m high in
// the mean. Cover 244, air 19, edge 27 and ground 13 W/K.
func TestLossOfTheSmallHouse(t *testing.T) {
	c := smallHouse()
	near(t, "cover in m²", float64(c.CoverArea()), 37.1+3.2+29.4, 0.05)
	near(t, "volume in m³", float64(c.Volume()), 3.6*7.3*2.15, 1e-9)
	near(t, "loss in W/K", float64(c.Loss()), 244+19+27+13, 1)
}

// How much larger the small house looks from a low sun than the shadow of its floor, on a
// clear day in mid-month, by another program (which pointed the ridge one way, where here
// the mean over all ways is taken).
func TestLowSun(t *testing.T) {
	c := smallHouse()
	for _, w := range []struct {
		latitude float64
		month    time.Month
		want     float64
	}{
		{44.5, 1, 2.6}, {44.5, 2, 2.2}, {44.5, 3, 1.8}, {44.5, 4, 1.6}, {44.5, 6, 1.4},
		{53.5, 2, 2.6}, {53.5, 3, 2.1},
	} {
		near(t, w.month.String(), c.LowSun(w.latitude, civil.MustOn(2027, w.month, 15)), w.want, 0.2)
	}
	near(t, "in the polar night", c.LowSun(80, civil.MustOn(2027, time.January, 1)), 1, 0)
	flat := Covered{Length: 5, Width: 5}
	near(t, "a pane on the ground", flat.LowSun(44.5, civil.MustOn(2027, time.April, 15)), 1, 1e-9)
}

// frostLifts returns by how much the night's low inside was above that outside on the frost
// nights of April and May.
func (y years) frostLifts(c Covered) odds.Amount {
	c.Heater = nil
	var lifts []float64
	for _, h := range y.hours {
		k := c.Run(h, y.site, Off())
		from, to := k.Within(civil.Span{From: civil.MustOn(2027, time.April, 1), To: civil.MustOn(2027, time.May, 31)})
		for d := from; d < to; d++ {
			out, in := 100.0, 100.0
			for i := 24 * d; i < 24*d+12; i++ {
				out, in = min(out, h.Air[i]), min(in, k.Air[i])
			}
			if out <= 0 {
				lifts = append(lifts, in-out)
			}
		}
	}
	return odds.AmountOf(lifts)
}

// By how much unheated covers keep off frost in April and May at Waterville: 2.0 to 4.1 K
// for tight twin-wall, 1.0 to 2.3 for film, by another program. Film was measured at 1.3
// (Savage 1980, Agrochemophysica 12:5); of twin-wall there is no measurement.
func TestUnheatedCoversOnFrostNights(t *testing.T) {
	y := waterville(t)
	twin, film := smallHouse(), smallHouse()
	film.Cover, _ = CoverNamed("single-film")
	film.AirChanges = 1.5
	promised := film.Cover.FrostLift
	twin.Cover.FrostLift, film.Cover.FrostLift = 100, 100 // as reckoned, nothing held back
	nearAmount(t, "twin-wall", y.frostLifts(twin), 2.0, 3.0, 4.1, 0, 0.25)
	nearAmount(t, "film", y.frostLifts(film), 1.0, 1.6, 2.3, 0, 0.25)
	near(t, "film, middle, against what was measured", y.frostLifts(film).Middle, 1.3, 0.5)

	// What is promised is no more than was measured, and the course says when it was held.
	film.Cover.FrostLift = promised
	for _, c := range []Covered{smallHouse(), film, Frame(6)} {
		c.Heater = nil
		h := y.hours[0]
		k := c.Run(h, y.site, Off())
		held := 0.0
		for i, in := range k.Air {
			if h.Sun[i] <= 0 && h.Air[i] <= 0 && in > h.Air[i]+float64(c.Cover.FrostLift)+1e-9 {
				t.Fatalf("%s: %.2f °C is promised when it is %.2f outside", c.Cover.Name, in, h.Air[i])
			}
			held += k.HeldBack[i/24] / 24
		}
		if held == 0 {
			t.Errorf("%s: nothing was held back in a whole year", c.Cover.Name)
		}
	}
}
