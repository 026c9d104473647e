package frost

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/sun"
	"eyeup/weather"
)

var (
	north = sun.Site{Latitude: 45}
	south = sun.Site{Latitude: -41}
	zero  = quantity.Celsius(0)
)

// mild is a record of lows of 5 °C.
func mild(from, to civil.Date) *weather.Record {
	r := &weather.Record{From: from}
	for d := from; !d.After(to); d = d.AddDays(1) {
		day := weather.Unmeasured()
		day.Low, day.High = quantity.Celsius(5), quantity.Celsius(15)
		r.Days = append(r.Days, day)
	}
	return r
}

func low(r *weather.Record, celsius float64, y int, m time.Month, d int) {
	date := civil.MustOn(y, m, d)
	day := r.On(date)
	day.Low = quantity.Celsius(celsius)
	r.Put(date, day)
}

func lose(r *weather.Record, from civil.Date, days int) {
	for i := range days {
		r.Put(from.AddDays(civil.Days(i)), weather.Unmeasured())
	}
}

func year(t *testing.T, f Freezes, y int) Year {
	t.Helper()
	for _, year := range f.Years {
		if year.Year == y {
			return year
		}
	}
	t.Fatalf("no year %d among %d", y, len(f.Years))
	return Year{}
}

func TestLastAndFirst(t *testing.T) {
	r := mild(civil.MustOn(2000, 1, 1), civil.MustOn(2003, 12, 31))
	low(r, -1, 2001, time.March, 3)
	low(r, -0.1, 2001, time.May, 9)
	low(r, -2, 2001, time.October, 6)
	low(r, -4, 2001, time.November, 1)
	y := year(t, Dates(r, north, zero, 0, 0), 2001)
	if y.Last != civil.MustOn(2001, 5, 9) || y.First != civil.MustOn(2001, 10, 6) || y.Why != "" {
		t.Errorf("%+v", y)
	}
	if y.Longest != (civil.Span{From: civil.MustOn(2001, 5, 10), To: civil.MustOn(2001, 10, 5)}) {
		t.Errorf("longest run %v", y.Longest)
	}
}

// "Event" is a minimum at or below the threshold (readme of the US normals 1991-2020,
// National Centers for Environmental Information).
func TestAtTheThresholdIsAFreeze(t *testing.T) {
	for _, row := range []struct {
		threshold quantity.Temperature
		low       float64
		freezes   bool
	}{
		{quantity.Fahrenheit(32), 0, true},
		{quantity.Fahrenheit(32), 0.1, false},
		{quantity.Fahrenheit(28), -2.2, true}, // as 28 °F is written in tenths of °C
		{quantity.Fahrenheit(28), -2.1, false},
		{quantity.Fahrenheit(36), 2.2, true},
		{quantity.Fahrenheit(36), 2.3, false},
	} {
		r := mild(civil.MustOn(2000, 1, 1), civil.MustOn(2002, 12, 31))
		low(r, row.low, 2001, time.May, 1)
		if y := year(t, Dates(r, north, row.threshold, 0, 0), 2001); y.Last.IsZero() == row.freezes {
			t.Errorf("a low of %g at %.4f °C: %+v", row.low, row.threshold.Celsius(), y)
		}
	}
}

func TestTenMissingDaysLeaveAYearUntold(t *testing.T) {
	for missing := 8; missing <= 11; missing++ {
		r := mild(civil.MustOn(2000, 1, 1), civil.MustOn(2003, 12, 31))
		low(r, -1, 2001, time.May, 9)
		low(r, -1, 2001, time.October, 6)
		lose(r, civil.MustOn(2001, 6, 1), missing)
		lose(r, civil.MustOn(2001, 4, 1), 20) // before the last freeze: does no harm
		y := year(t, Dates(r, north, zero, 0, 0), 2001)
		if y.SpringValid != (missing < 10) || y.Last.IsZero() != (missing >= 10) || !y.AutumnValid {
			t.Errorf("%d days missing: %+v", missing, y)
		}
		if y.LongestValid != (missing < 10) {
			t.Errorf("%d days missing: longest run told: %v", missing, y.LongestValid)
		}
	}
}

func TestYearWithoutFreezeIsAYear(t *testing.T) {
	r := mild(civil.MustOn(2000, 1, 1), civil.MustOn(2003, 12, 31))
	f := Dates(r, north, zero, 0, 0)
	y := year(t, f, 2001)
	if !y.SpringValid || !y.AutumnValid || !y.Last.IsZero() || !y.First.IsZero() {
		t.Errorf("%+v", y)
	}
	if springs, _ := f.Valid(); springs != 3 { // 2000 does not reach back to midsummer 1999
		t.Errorf("%d springs, want 3", springs)
	}
	if !math.IsInf(f.SeasonDays().Middle, 1) {
		t.Errorf("the season has %g days", f.SeasonDays().Middle)
	}
	if !f.Spring().Middle.IsZero() || !f.Autumn().Late.IsZero() {
		t.Errorf("%v, %v", f.Spring(), f.Autumn())
	}
	if d, ok := f.SafeFrom(0.5); !ok || !d.IsZero() {
		t.Errorf("safe from %v, %v", d, ok)
	}
}

func TestSouthOfTheEquator(t *testing.T) {
	r := mild(civil.MustOn(1999, 1, 1), civil.MustOn(2004, 12, 31))
	low(r, -1, 2000, time.July, 9)
	low(r, -1, 2000, time.October, 20)
	low(r, -1, 2001, time.April, 28)
	f := Dates(r, south, zero, 0, 0)
	y := year(t, f, 2000)
	if y.Last != civil.MustOn(2000, 10, 20) || y.First != civil.MustOn(2001, 4, 28) {
		t.Errorf("%+v", y)
	}
	f.Years = []Year{y}
	if f.Spring().Middle != (civil.MonthDay{Month: time.October, Day: 20}) ||
		f.Autumn().Middle != (civil.MonthDay{Month: time.April, Day: 28}) || f.SeasonDays().Middle != 189 {
		t.Errorf("%v, %v, %g", f.Spring(), f.Autumn(), f.SeasonDays().Middle)
	}
	if o := f.OddsAfter(civil.MonthDay{Month: time.October, Day: 19}); o.Later != 1 {
		t.Errorf("after 19 October: %+v", o)
	}
	if o := f.OddsAfter(civil.MonthDay{Month: time.January, Day: 5}); o.Later != 0 {
		t.Errorf("after 5 January: %+v", o)
	}
}

// A day of the calendar is the same day in every year, leap or not.
func TestLeapYearsMoveNothing(t *testing.T) {
	r := mild(civil.MustOn(2003, 1, 1), civil.MustOn(2005, 12, 31))
	low(r, -1, 2004, time.May, 9)
	low(r, -1, 2005, time.May, 9)
	f := Dates(r, north, zero, 2004, 2005)
	if w := f.Spring(); w.Early != w.Late || w.Middle != (civil.MonthDay{Month: time.May, Day: 9}) {
		t.Errorf("%v", w)
	}
}

func TestYearsTheRecordLacks(t *testing.T) {
	r := mild(civil.MustOn(2000, 1, 1), civil.MustOn(2003, 12, 31))
	f := Dates(r, north, zero, 1990, 1991)
	if springs, autumns := f.Valid(); springs+autumns != 0 || len(f.Years) != 2 || f.Years[0].Why == "" {
		t.Errorf("%+v", f)
	}
	for _, beyond := range [][2]int{{1, 5}, {-4000, 9}, {20000, 90000}, {2001, 2000}} {
		if f := Dates(r, south, zero, beyond[0], beyond[1]); len(f.Years) != 0 {
			t.Errorf("years %v: %d are told", beyond, len(f.Years))
		}
	}
	if f := Dates(&weather.Record{}, north, zero, 0, 0); len(f.Years) != 0 {
		t.Errorf("an empty record has years: %+v", f)
	}
}

// A lower threshold is never passed later in spring, nor sooner in autumn.
func TestHarderFreezesComeWithin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := mild(civil.MustOn(2000, 1, 1), civil.MustOn(2002, 12, 31))
		for range rapid.IntRange(0, 40).Draw(t, "freezes") {
			d := r.From.AddDays(civil.Days(rapid.IntRange(0, 1090).Draw(t, "at")))
			low(r, rapid.Float64Range(-10, 4).Draw(t, "low"), d.Year(), d.Month(), d.Day())
		}
		site := rapid.SampledFrom([]sun.Site{north, south}).Draw(t, "site")
		light := Dates(r, site, zero, 2001, 2001).Years[0]
		hard := Dates(r, site, quantity.Celsius(-3), 2001, 2001).Years[0]
		if hard.SpringValid && light.SpringValid && hard.Last.After(light.Last) {
			t.Fatalf("last: hard %v, light %v", hard.Last, light.Last)
		}
		if hard.AutumnValid && light.AutumnValid && !hard.First.IsZero() && hard.First.Before(light.First) {
			t.Fatalf("first: hard %v, light %v", hard.First, light.First)
		}
		if hard.LongestValid && light.LongestValid && hard.Longest.Days() < light.Longest.Days() {
			t.Fatalf("longest: hard %v, light %v", hard.Longest, light.Longest)
		}
	})
}
