package civil

import (
	"encoding/json"
	"errors"
	"fmt"
	"time"
)

// Date is a day of the calendar. Its zero value is no date at all, which is how
// "never" and "not known" are carried; IsZero tells. Dates compare with Before and After.
type Date struct{ n int32 } // days since 1 January 1600, plus one

// Days is a number of days, the distance between two dates.
type Days int

// Week is how long a week lasts.
const Week Days = 7

const firstYear, lastYear = 1600, 9999

var origin = time.Date(firstYear, 1, 1, 0, 0, 0, 0, time.UTC)

// ErrNoDate is returned for text or numbers that name no day of the calendar.
var ErrNoDate = errors.New("no such day")

// On returns the date of day d of month m in year y. It fails with ErrNoDate when
// the calendar has no such day or the year lies outside 1600 to 9999.
func On(y int, m time.Month, d int) (Date, error) {
	t := time.Date(y, m, d, 0, 0, 0, 0, time.UTC)
	if y < firstYear || y > lastYear || t.Year() != y || t.Month() != m || t.Day() != d {
		return Date{}, fmt.Errorf("%04d-%02d-%02d: %w", y, int(m), d, ErrNoDate)
	}
	return fromTime(t), nil
}

// MustOn is On for days known to exist; it panics on a programmer's mistake.
func MustOn(y int, m time.Month, d int) Date {
	date, err := On(y, m, d)
	if err != nil {
		panic(err)
	}
	return date
}

// Parse reads a date written YYYY-MM-DD.
func Parse(s string) (Date, error) {
	t, err := time.Parse(time.DateOnly, s)
	if err != nil || t.Year() < firstYear {
		return Date{}, fmt.Errorf("%q is not a date; write it as year-month-day, like 2027-03-14: %w", s, ErrNoDate)
	}
	return fromTime(t), nil
}

// Of returns the date that t shows in its own time zone.
func Of(t time.Time) Date {
	y, m, d := t.Date()
	return fromTime(time.Date(y, m, d, 0, 0, 0, 0, time.UTC))
}

func fromTime(t time.Time) Date { return Date{int32((t.Unix()-origin.Unix())/86400) + 1} }

// UTC returns midnight of d at Greenwich, for libraries that want a time.
func (d Date) UTC() time.Time { return origin.AddDate(0, 0, int(d.n)-1) }

// IsZero reports whether d is no date.
func (d Date) IsZero() bool { return d.n == 0 }

// Year returns the year of d.
func (d Date) Year() int { return d.UTC().Year() }

// Month returns the month of d.
func (d Date) Month() time.Month { return d.UTC().Month() }

// Day returns the day of the month.
func (d Date) Day() int { return d.UTC().Day() }

// YearDay returns the day of the year, 1 to 366.
func (d Date) YearDay() int { return d.UTC().YearDay() }

// Weekday returns the day of the week.
func (d Date) Weekday() time.Weekday { return d.UTC().Weekday() }

// AddDays returns the date n days after d.
func (d Date) AddDays(n Days) Date { return Date{d.n + int32(n)} }

// Sub returns how many days d lies after e.
func (d Date) Sub(e Date) Days { return Days(d.n - e.n) }

// Before reports whether d lies before e.
func (d Date) Before(e Date) bool { return d.n < e.n }

// After reports whether d lies after e.
func (d Date) After(e Date) bool { return d.n > e.n }

// Monday returns the Monday on or before d, which names its ISO week.
func (d Date) Monday() Date {
	return d.AddDays(-Days((int(d.Weekday()) + 6) % 7))
}

// String writes the date as YYYY-MM-DD, and no date as "none".
func (d Date) String() string {
	if d.IsZero() {
		return "none"
	}
	return d.UTC().Format(time.DateOnly)
}

// Short writes the date without its year, such as "12 Mar", and no date as "none".
func (d Date) Short() string {
	if d.IsZero() {
		return "none"
	}
	return d.UTC().Format("2 Jan")
}

// MarshalJSON writes the date as "YYYY-MM-DD", and no date as null.
func (d Date) MarshalJSON() ([]byte, error) {
	if d.IsZero() {
		return []byte("null"), nil
	}
	return json.Marshal(d.String())
}

// UnmarshalJSON reads "YYYY-MM-DD" or null.
func (d *Date) UnmarshalJSON(b []byte) error {
	var s *string
	if err := json.Unmarshal(b, &s); err != nil {
		return err
	}
	if s == nil {
		*d = Date{}
		return nil
	}
	var err error
	*d, err = Parse(*s)
	return err
}
