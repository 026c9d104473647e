package weather

import (
	"fmt"

	"eyeup/civil"
)

// Member is one real year of weather laid on the days of a season. Its days are
// complete: gaps of up to three days are bridged and counted, years with longer ones are
// left out and named.
type Member struct {
	Year    int        // calendar year of the record in which the season's growing year falls
	Span    civil.Span // the season's days
	Days    []Day      // one for each day of Span, extremes known
	Bridged int        // days with an extreme that was drawn between neighbours
}

// LeftOut is a year of the record that could not serve, and why.
type LeftOut struct {
	Year int    `json:"year"`
	Why  string `json:"why"`
}

// Members lays each year of the record from fromYear to toYear, both within, on the
// days of span. A member's year is the calendar year of the record that falls on the
// growing year: the calendar year which holds most of the span. Days go by month and
// day; a 29 February of the span takes the 28th where the record's year has none, and a
// 29 February of the record is dropped where the span has none.
//
// A year whose days have a gap of more than three, or reach outside the record, is left
// out and named. Zero for fromYear or toYear means from the first, or to the last, year
// that the record covers whole; years of which it has not a day are passed over. The record
// may be of any length; an empty one, or a span that ends before it begins, gives no
// member.
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

// growingYear returns the calendar year that holds most days of the span, the later of
// two that hold as many.
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

// fill takes the member's days from the record, shift calendar years away from the
// season's. It returns why it could not, or nothing.
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
