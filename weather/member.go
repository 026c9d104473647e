package weather

import (
	"fmt"

	"eyeup/civil"
)

// Member is one real year of weather placed on the days of a season. Its days are complete:
// gaps of up to three days are interpolated and counted, years with longer ones are left out
// and reported.
type Member struct {
	Year    int        // calendar year of the record in which the season's growing year falls
	Span    civil.Span // the season's days
	Days    []Day      // one for each day of Span, extremes known
	Bridged int        // days with an interpolated extreme
}

// LeftOut is a year of the record that can't be used, and why.
type LeftOut struct {
	Year int    `json:"year"`
	Why  string `json:"why"`
}

// Members places each year of the record from fromYear to toYear, inclusive, on the days of
// span. A member's year is the calendar year of the record that falls on the growing year: the
// calendar year with most of the span. Days match by month and day; a 29 February of the span
// uses the 28th if the record's year has none, and a 29 February of the record is dropped if
// the span has none.
//
// A year with a gap of more than three days, or that extends beyond the record, is left out
// and reported. Zero for fromYear or toYear means the first, or the last, year that the record
// covers completely; years without any day are skipped. An empty record, or a span that ends
// before it begins, gives no member.
func Members(r *Record, span civil.Span, fromYear, toYear int) ([]Member, []LeftOut) {
	if len(r.Days) == 0 || span.Days() == 0 {
		return nil, nil
	}
	growing := growingYear(span)
	first, last := wholeYears(r.Span(), span, growing)
	within := r.Span()
	if fromYear != 0 {
		first = max(fromYear, within.From.Year()-1)
	}
	if toYear != 0 {
		last = min(toYear, within.To.Year()+1)
	}
	whole := bridge(r)
	var members []Member
	var left []LeftOut
	for year := first; year <= last; year++ {
		m := Member{Year: year, Span: span}
		if why := m.fill(whole, year-growing); why != "" {
			left = append(left, LeftOut{year, why})
			continue
		}
		members = append(members, m)
	}
	return members, left
}

// growingYear returns the calendar year with most days of the span, the later of two equal
// ones.
func growingYear(span civil.Span) int {
	best, most := 0, civil.Days(0)
	for year := span.From.Year(); year <= span.To.Year(); year++ {
		part := civil.Span{
			From: later(span.From, civil.MustOn(year, 1, 1)),
			To:   earlier(span.To, civil.MustOn(year, 12, 31)),
		}
		if part.Days() >= most {
			best, most = year, part.Days()
		}
	}
	return best
}

// wholeYears returns the first and last year whose season lies within the record.
func wholeYears(record, span civil.Span, growing int) (first, last int) {
	first = growing + record.From.Year() - span.From.Year()
	if span.From.MonthDay().In(record.From.Year()).Before(record.From) {
		first++
	}
	last = growing + record.To.Year() - span.To.Year()
	if span.To.MonthDay().In(record.To.Year()).After(record.To) {
		last--
	}
	return first, last
}

// fill copies the member's days from the record, shift calendar years from the season's. It
// returns why it could not, or an empty string.
func (m *Member) fill(whole *bridged, shift int) string {
	m.Days = make([]Day, m.Span.Days())
	for i := range m.Days {
		planned := m.Span.From.AddDays(civil.Days(i))
		d := planned.MonthDay().In(planned.Year() + shift)
		j := int(d.Sub(whole.from))
		if j < 0 || j >= len(whole.days) {
			return fmt.Sprintf("the season needs %s, which the record does not reach", d)
		}
		if !whole.days[j].HasExtremes() {
			return whole.why(j)
		}
		m.Days[i] = whole.days[j]
		if whole.drawn[j] {
			m.Bridged++
		}
	}
	return ""
}

func earlier(a, b civil.Date) civil.Date {
	if b.Before(a) {
		return b
	}
	return a
}

func later(a, b civil.Date) civil.Date {
	if b.After(a) {
		return b
	}
	return a
}
