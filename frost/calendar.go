package frost

import (
	"math"
	"time"

	"eyeup/civil"
	"eyeup/odds"
)

// Midsummer separates spring from autumn: 24 July north of the equator and 24 January south of
// it, as at the Utah Climate Center.
var (
	northern = civil.MonthDay{Month: time.July, Day: 24}
	southern = civil.MonthDay{Month: time.January, Day: 24}
)

// midsummer returns the first day that counts as autumn in the growing year.
func midsummer(south bool, year int) civil.Date {
	if south {
		return southern.In(year + 1)
	}
	return northern.In(year)
}

// plainYear has no 29 February, nor has the next year; days of the year are counted in these
// two.
const plainYear = 2001

// position returns how many days d is after midsummer of its growing year, with 28 days in
// every February, so that a calendar day has the same position in all years. It returns none
// for the zero date.
func (f Freezes) position(y Year, d civil.Date, none float64) float64 {
	if d.IsZero() {
		return none
	}
	same := d.MonthDay().In(plainYear + d.Year() - y.Year)
	return float64(same.Sub(midsummer(f.Southern, plainYear)))
}

// monthDay returns the calendar day at a whole position; the zero day for an infinite one.
func (f Freezes) monthDay(position float64) civil.MonthDay {
	if math.IsInf(position, 0) || math.IsNaN(position) {
		return civil.MonthDay{}
	}
	return midsummer(f.Southern, plainYear).AddDays(civil.Days(position)).MonthDay()
}

// when summarises positions: the early day rounded down, the late one up and half days towards
// midsummer, so that no date claims more than the record supports.
func (f Freezes) when(s odds.Sample) civil.WhenInYear {
	return civil.WhenInYear{
		Early:  f.monthDay(down(s.At(0.1))),
		Middle: f.monthDay(inward(s.At(0.5))),
		Late:   f.monthDay(up(s.At(0.9))),
	}
}

// rounding is the tolerance for sums of binary fractions that should be whole.
const rounding = 1e-9

func down(x float64) float64 { return math.Floor(x + rounding) }
func up(x float64) float64   { return math.Ceil(x - rounding) }

// inward rounds to the nearest day, half a day towards midsummer.
func inward(x float64) float64 { return math.Copysign(math.Ceil(math.Abs(x)-0.5-rounding), x) }
