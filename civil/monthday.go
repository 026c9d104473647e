package civil

import (
	"encoding/json"
	"fmt"
	"time"
)

// MonthDay is a day of any year, such as the last frost in an average spring.
// Its zero value is no day.
type MonthDay struct {
	Month time.Month
	Day   int
}

// ParseMonthDay reads a day of the year written MM-DD; 02-29 is a day.
func ParseMonthDay(s string) (MonthDay, error) {
	t, err := time.Parse(time.DateOnly, "2000-"+s)
	if err != nil {
		return MonthDay{}, fmt.Errorf("%q is not a day of the year; write month-day, like 05-22: %w", s, ErrNoDate)
	}
	return MonthDay{t.Month(), t.Day()}, nil
}

// MonthDay returns the day of the year on which d falls.
func (d Date) MonthDay() MonthDay {
	_, m, day := d.UTC().Date()
	return MonthDay{m, day}
}

// IsZero reports whether m is no day.
func (m MonthDay) IsZero() bool { return m == MonthDay{} }

// In returns m in year y; 29 February becomes 28 February where the year has none.
func (m MonthDay) In(y int) Date {
	if d, err := On(y, m.Month, m.Day); err == nil {
		return d
	}
	return MustOn(y, time.February, 28)
}

// String writes the day as MM-DD, and no day as "none".
func (m MonthDay) String() string {
	if m.IsZero() {
		return "none"
	}
	return fmt.Sprintf("%02d-%02d", int(m.Month), m.Day)
}

// Short writes the day such as "12 Mar", and no day as "none".
func (m MonthDay) Short() string {
	if m.IsZero() {
		return "none"
	}
	return m.In(2000).Short()
}

// MarshalJSON writes "MM-DD", and no day as null.
func (m MonthDay) MarshalJSON() ([]byte, error) {
	if m.IsZero() {
		return []byte("null"), nil
	}
	return json.Marshal(m.String())
}

// UnmarshalJSON reads "MM-DD" or null.
func (m *MonthDay) UnmarshalJSON(b []byte) error {
	var s *string
	if err := json.Unmarshal(b, &s); err != nil {
		return err
	}
	if s == nil {
		*m = MonthDay{}
		return nil
	}
	var err error
	*m, err = ParseMonthDay(*s)
	return err
}
