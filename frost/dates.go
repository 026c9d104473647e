package frost

import (
	"fmt"
	"strings"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/sun"
	"eyeup/weather"
)

// tooManyMissing is how many days without a low, between a freeze and midsummer, make a year
// invalid: ten, the rule of the Utah Climate Center.
const tooManyMissing = 10

// lastDigit is half of the 0.1 K resolution of records: 28 °F is -2.22 °C, recorded as -2.2,
// and must still count as a freeze at 28 °F.
const lastDigit quantity.Difference = 0.05

// Dates finds the freezes (a low at or below threshold) in the growing years from to to,
// inclusive. Zero means the first, or the last, year whose midsummer is in the record; years
// far from the record are skipped. The last freeze is searched back from midsummer to the
// previous midsummer, the first one forward to the next. That half of the year is invalid if
// ten or more days between the freeze and midsummer have no low, or, with no freeze, in the
// whole search. The site's latitude gives the hemisphere.
func Dates(r *weather.Record, site sun.Site, threshold quantity.Temperature, from, to int) Freezes {
	f := Freezes{Threshold: threshold, Southern: site.IsSouthern()}
	if len(r.Days) == 0 {
		return f
	}
	s := search{r, threshold.Add(lastDigit).Celsius()}
	first, last := spanYears(r.Span(), f.Southern)
	within := r.Span()
	if from != 0 {
		first = max(from, within.From.Year()-farYears, firstYear)
	}
	if to != 0 {
		last = min(to, within.To.Year()+farYears)
	}
	for year := first; year <= last; year++ {
		f.Years = append(f.Years, s.year(f.Southern, year))
	}
	return f
}

// farYears is how far from the record years are still reported as invalid; firstYear is the
// first year whose previous midsummer is in the calendar.
const farYears, firstYear = 100, 1602

// spanYears returns the first and last growing year whose midsummer is in the span.
func spanYears(span civil.Span, south bool) (first, last int) {
	first, last = span.From.Year()-1, span.To.Year()
	for midsummer(south, first).Before(span.From) {
		first++
	}
	for midsummer(south, last).After(span.To) {
		last--
	}
	return first, last
}

// search looks through a record for days at or below a limit, in °C.
type search struct {
	record *weather.Record
	limit  float64
}

// year evaluates one growing year.
func (s search) year(south bool, year int) Year {
	before, split, next := midsummer(south, year-1), midsummer(south, year), midsummer(south, year+1)
	y := Year{Year: year}
	if !s.knows(before, next) {
		y.Why = "the record has no lows for it"
		return y
	}
	var why []string
	var missing int
	y.Last, missing = s.first(split.AddDays(-1), before, -1)
	if y.SpringValid = missing < tooManyMissing; !y.SpringValid {
		y.Last = civil.Date{}
		why = append(why, fmt.Sprintf("spring: %d days without a low between the last freeze found and midsummer", missing))
	}
	y.First, missing = s.first(split, next.AddDays(-1), 1)
	if y.AutumnValid = missing < tooManyMissing; !y.AutumnValid {
		y.First = civil.Date{}
		why = append(why, fmt.Sprintf("autumn: %d days without a low between midsummer and the first freeze found", missing))
	}
	y.Longest, y.LongestValid = s.longest(split.AddDays(-halfYear), split.AddDays(halfYear-1))
	if !y.LongestValid {
		y.Longest = civil.Span{}
		why = append(why, "longest run: too many days without a low")
	}
	y.Why = strings.Join(why, "; ")
	return y
}

// knows reports whether any low is known from one date to another, the second excluded.
func (s search) knows(from, to civil.Date) bool {
	for d := from; d.Before(to); d = d.AddDays(1) {
		if s.record.On(d).Low.IsKnown() {
			return true
		}
	}
	return false
}

// halfYear is how far from midsummer the longest frost-free run is searched.
const halfYear civil.Days = 182

// first goes from one date to another, by steps of a day forward or back, to the first freeze.
// It returns the zero date if there is none, and how many days without a low it passed.
func (s search) first(from, to civil.Date, step civil.Days) (civil.Date, int) {
	missing := 0
	for d := from; d != to.AddDays(step); d = d.AddDays(step) {
		switch low := s.record.On(d).Low; {
		case !low.IsKnown():
			missing++
		case low.Celsius() <= s.limit:
			return d, missing
		}
	}
	return civil.Date{}, missing
}

// longest returns the longest run of days without a freeze from one date to another. Up to
// nine days without a low are tolerated within a run, as in the search for freezes; more make
// it unknown.
func (s search) longest(from, to civil.Date) (run civil.Span, told bool) {
	start, missing := from, 0
	for d := from; !d.After(to.AddDays(1)); d = d.AddDays(1) {
		low := s.record.On(d).Low
		ends := d.After(to) || (low.IsKnown() && low.Celsius() <= s.limit)
		if !ends {
			if !low.IsKnown() {
				missing++
			}
			continue
		}
		if here := (civil.Span{From: start, To: d.AddDays(-1)}); here.Days() > run.Days() {
			run, told = here, missing < tooManyMissing
		}
		start, missing = d.AddDays(1), 0
	}
	return run, told || run.Days() == 0
}
