package season

import (
	"time"

	"eyeup/civil"
	"eyeup/sun"
)

// Span returns the days of the season whose planting out falls in plantYear: from the
// autumn before to the end of the year in the north, and half a year later in the south.
func Span(plantYear int, site sun.Site) civil.Span {
	if site.IsSouthern() {
		return civil.Span{From: civil.MustOn(plantYear, time.March, 1), To: civil.MustOn(plantYear+1, time.June, 30)}
	}
	return civil.Span{From: civil.MustOn(plantYear-1, time.September, 1), To: civil.MustOn(plantYear, time.December, 31)}
}

// midsummer returns the day that parts the spring frosts of a season from the autumn ones.
func midsummer(span civil.Span, site sun.Site) civil.Date {
	if site.IsSouthern() {
		return civil.MustOn(span.To.Year(), time.January, 15)
	}
	return civil.MustOn(span.To.Year(), time.July, 15)
}

// newYear returns the turn of winter, before which tubers are in deep rest: 1 January,
// and 1 July in the south.
func newYear(span civil.Span, site sun.Site) civil.Date {
	if site.IsSouthern() {
		return civil.MustOn(span.From.Year(), time.July, 1)
	}
	return civil.MustOn(span.To.Year(), time.January, 1)
}
