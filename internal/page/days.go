package page

import (
	"fmt"
	"time"

	"eyeup/civil"
)

func (t display) date(d civil.Date) string {
	switch {
	case d.IsZero():
		return "never"
	case t.ISO:
		return d.String()
	}
	return d.UTC().Format("2 January 2006")
}

func (t display) day(d civil.Date) string {
	switch {
	case d.IsZero():
		return "never"
	case t.ISO:
		return d.String()
	}
	return d.Short()
}

func (t display) monthDay(m civil.MonthDay) string {
	switch {
	case m.IsZero():
		return "none"
	case t.ISO:
		return m.String()
	}
	return m.Short()
}

// when says a date with its spread.
func (t display) when(w civil.When) string {
	if w.Early == w.Late { // the same in every year
		return t.day(w.Middle)
	}
	return fmt.Sprintf("%s (%s to %s)", t.day(w.Middle), t.day(w.Early), t.day(w.Late))
}

// month says a month of a year, written 2027-01.
func (t display) month(m string) string {
	at, err := time.Parse("2006-01", m)
	if err != nil || t.ISO {
		return m
	}
	return at.Format("January 2006")
}

// years says a date with its spread, which may lie years ahead. Nothing is calculated beyond
// two years.
func (t display) years(w civil.When) string {
	if w.Late.IsZero() {
		return fmt.Sprintf("%s (%s to more than two years from now)", t.date(w.Middle), t.date(w.Early))
	}
	return fmt.Sprintf("%s (%s to %s)", t.date(w.Middle), t.date(w.Early), t.date(w.Late))
}
