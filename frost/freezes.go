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

// Year is one growing year: the spring and the autumn on either side of a midsummer.
// North of the equator both fall in the calendar year; south of it the spring does, and the autumn
// comes in the next.
type Year struct {
	Year         int
	Last         civil.Date // last freeze before midsummer; no date: none came since the midsummer before
	First        civil.Date // first freeze after it; no date: none came until the next midsummer
	SpringValid  bool       // the record can tell about the spring
	AutumnValid  bool       // the record can tell about the autumn
	Longest      civil.Span // the longest run of days without a freeze
	LongestValid bool       // the record can tell about the run
	Why          string     // what it cannot tell and why not; empty when all is valid
}

// Spring returns the spread of the last freeze in spring over the years. A part that is
// no day says that it does not freeze in that many springs.
func (f Freezes) Spring() civil.WhenInYear { return f.when(f.springs()) }

// Autumn returns the spread of the first freeze in autumn over the years. A part that
// is no day says that in so many autumns it does not freeze.
func (f Freezes) Autumn() civil.WhenInYear { return f.when(f.autumns()) }

// SeasonDays returns the spread of the days between the last freeze and the first,
// neither counted; infinite in years that lack one of them.
func (f Freezes) SeasonDays() odds.Amount { return odds.AmountOf(f.seasons()) }

// LongestRun returns the spread of the longest run of days without a freeze, which may
// be shorter or longer than the season where midsummer itself may freeze.
func (f Freezes) LongestRun() odds.Amount {
	var days []float64
	for _, y := range f.Years {
		if y.LongestValid {
			days = append(days, float64(y.Longest.Days()))
		}
	}
	return odds.AmountOf(days)
}

// Valid returns how many years the record can tell about, in spring and in autumn.
func (f Freezes) Valid() (springs, autumns int) { return len(f.springs()), len(f.autumns()) }

// springs returns the last freezes in days from midsummer, -Inf where none came.
func (f Freezes) springs() odds.Sample {
	var days []float64
	for _, y := range f.Years {
		if y.SpringValid {
			days = append(days, f.position(y, y.Last, math.Inf(-1)))
		}
	}
	return odds.Sorted(days)
}

// autumns returns the first freezes in days from midsummer, +Inf where none came.
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
