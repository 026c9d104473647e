package frost

import (
	"math"

	"eyeup/civil"
	"eyeup/odds"
	"eyeup/quantity"
)

// Freezes holds the freezes of a record at one threshold, year by year.
type Freezes struct {
	Threshold quantity.Temperature
	Southern  bool // the seasons are those of the southern hemisphere
	Years     []Year
}

// Year is one growing year: the spring and the autumn on either side of a midsummer. North of
// the equator both are in the calendar year; south of it the spring is, and the autumn is in
// the next.
type Year struct {
	Year         int
	Last         civil.Date // last freeze before midsummer; zero: none since the previous midsummer
	First        civil.Date // first freeze after it; zero: none until the next midsummer
	SpringValid  bool       // the record suffices for the spring
	AutumnValid  bool       // the record suffices for the autumn
	Longest      civil.Span // the longest run of days without a freeze
	LongestValid bool       // the record suffices for the run
	Why          string     // what is unknown and why; empty if all is valid
}

// Spring returns the spread of the last freeze of spring over the years. A zero day means that
// there is no freeze in that share of springs.
func (f Freezes) Spring() civil.WhenInYear { return f.when(f.springs()) }

// Autumn returns the spread of the first freeze of autumn over the years. A zero day means
// that there is no freeze in that share of autumns.
func (f Freezes) Autumn() civil.WhenInYear { return f.when(f.autumns()) }

// SeasonDays returns the spread of the days between the last freeze and the first, both
// excluded; infinite in years without one of them.
func (f Freezes) SeasonDays() odds.Amount { return odds.AmountOf(f.seasons()) }

// LongestRun returns the spread of the longest run of days without a freeze. It may be shorter
// or longer than the season where it can freeze at midsummer.
func (f Freezes) LongestRun() odds.Amount {
	var days []float64
	for _, y := range f.Years {
		if y.LongestValid {
			days = append(days, float64(y.Longest.Days()))
		}
	}
	return odds.AmountOf(days)
}

// Valid returns in how many years the record suffices, for spring and for autumn.
func (f Freezes) Valid() (springs, autumns int) { return len(f.springs()), len(f.autumns()) }

// springs returns the last freezes in days from midsummer, -Inf where there was none.
func (f Freezes) springs() odds.Sample {
	var days []float64
	for _, y := range f.Years {
		if y.SpringValid {
			days = append(days, f.position(y, y.Last, math.Inf(-1)))
		}
	}
	return odds.Sorted(days)
}

// autumns returns the first freezes in days from midsummer, +Inf where there was none.
func (f Freezes) autumns() odds.Sample {
	var days []float64
	for _, y := range f.Years {
		if y.AutumnValid {
			days = append(days, f.position(y, y.First, math.Inf(1)))
		}
	}
	return odds.Sorted(days)
}

func (f Freezes) seasons() []float64 {
	var days []float64
	for _, y := range f.Years {
		switch {
		case !y.SpringValid || !y.AutumnValid:
		case y.Last.IsZero() || y.First.IsZero():
			days = append(days, math.Inf(1))
		default:
			days = append(days, float64(y.First.Sub(y.Last)-1))
		}
	}
	return days
}
