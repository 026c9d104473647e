package frost

import (
	"fmt"
	"strings"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/sun"
	"eyeup/weather"
)

// tooManyMissing is how many days without a low, between a freeze and midsummer, leave
// a year untold: ten, the rule of the Utah Climate Center.
const tooManyMissing = 10

// lastDigit is half of the tenth of a kelvin to which records are kept: 28 °F is -2.22 °C
// and is written -2.2, and is yet a freeze of 28 °F.
const lastDigit quantity.Difference = 0.05

// Dates finds the freezes at threshold, a low at or below it, in the growing years from
// and to, both within; zero means the first, or the last, year whose midsummer the
// record holds; years far from the record are passed over. Each year's last freeze is sought back from midsummer to the midsummer
// before, its first onward to the next. Where ten or more days between the freeze and
// midsummer have no low, or in the whole search when no freeze is found, that half
// of the year is not valid. The site's latitude tells the hemisphere.
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

// farYears is how far from the record years are still named as untold; firstYear the
// first whose midsummer before is in the calendar.
const farYears, firstYear = 100, 1602

// spanYears returns the first and last growing year whose midsummer lies in the span.
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

// year finds what there is to know of one growing year.
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

// knows reports whether any low is known from one date to another, the second left out.
func (s search) knows(from, to civil.Date) bool {
	for d := from; d.Before(to); d = d.AddDays(1) {
		if s.record.On(d).Low.IsKnown() {
			return true
		}
	}
	return false
}

// halfYear is how far the search for the longest run goes from midsummer.
const halfYear civil.Days = 182

// first goes from one date to another, by steps of a day onward or back, to the first
// freeze. It returns no date when there is none, and how many days without a low it passed.
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

// longest returns the longest run of days without a freeze, from one date to another.
// Up to nine days without a low are borne within a run, as in the search for freezes; a
// longer lack within the run makes it untold.
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
