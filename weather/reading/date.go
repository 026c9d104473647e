package reading

import (
	"fmt"
	"strings"
	"time"

	"eyeup/civil"
)

// months are the short names of the months, as in 14-mar-2027.
var months = []string{"jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"}

// Date reads an unambiguous date: 2027-03-14, 2027/03/14, 20270314 or 14-mar-2027. A date such
// as 3/4/2027 is refused.
func Date(b []byte) (civil.Date, error) {
	switch {
	case len(b) == 8:
		return date(b, b[:4], b[4:6], b[6:])
	case len(b) == 10 && b[4] == b[7] && (b[4] == '-' || b[4] == '/'):
		return date(b, b[:4], b[5:7], b[8:])
	case len(b) == 11 && b[2] == '-' && b[6] == '-':
		for i, name := range months {
			if strings.EqualFold(name, string(b[3:6])) {
				return date(b, b[7:], fmt.Appendf(nil, "%02d", i+1), b[:2])
			}
		}
	}
	return civil.Date{}, fmt.Errorf("%s is not a date in a known form", Shown(b))
}

func date(whole, year, month, day []byte) (civil.Date, error) {
	y, ok1 := digits(year)
	m, ok2 := digits(month)
	d, ok3 := digits(day)
	if !ok1 || !ok2 || !ok3 {
		return civil.Date{}, fmt.Errorf("%s is not a date in a known form", Shown(whole))
	}
	when, err := civil.On(y, time.Month(m), d)
	if err != nil {
		return when, fmt.Errorf("%s is not a day of the calendar", Shown(whole))
	}
	return when, nil
}

// digits reads a number that consists of digits only.
func digits(b []byte) (int, bool) {
	if b[0] < '0' || b[0] > '9' {
		return 0, false
	}
	return Whole(b)
}
