package civil

// Span is an unbroken run of days, its first and its last both within.
type Span struct {
	From Date `json:"from"`
	To   Date `json:"to"`
}

// Days returns how many days the span holds; 0 when it ends before it begins.
func (s Span) Days() Days {
	if s.To.Before(s.From) {
		return 0
	}
	return s.To.Sub(s.From) + 1
}

// Holds reports whether d lies within the span.
func (s Span) Holds(d Date) bool { return !d.Before(s.From) && !d.After(s.To) }

// Mondays returns the first day of every ISO week that the span touches, in order.
func (s Span) Mondays() []Date {
	var all []Date
	for m := s.From.Monday(); !m.After(s.To); m = m.AddDays(Week) {
		all = append(all, m)
	}
	return all
}

// When says a date with its spread over the years: one year in ten earlier than
// Early, even odds at Middle, one year in ten later than Late. A part that is no
// date says that it does not come to pass in that many years.
type When struct {
	Early  Date `json:"early"`
	Middle Date `json:"middle"`
	Late   Date `json:"late"`
}

// WhenInYear is When without a year.
type WhenInYear struct {
	Early  MonthDay `json:"early"`
	Middle MonthDay `json:"middle"`
	Late   MonthDay `json:"late"`
}
