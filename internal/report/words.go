package report

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode/utf8"

	"eyeup/civil"
	"eyeup/odds"
)

// Capital returns s with its first letter in upper case. s must begin with an ASCII letter.
func Capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// RoundedAmount rounds each part of an amount to a number of decimals.
func RoundedAmount(a odds.Amount, decimals int) odds.Amount {
	return odds.Amount{Low: *Rounded(a.Low, decimals), Middle: *Rounded(a.Middle, decimals), High: *Rounded(a.High, decimals)}
}

// AddOnce appends one to all unless it is there already.
func AddOnce(all []string, one string) []string {
	if slices.Contains(all, one) {
		return all
	}
	return append(all, one)
}

// ShortDate writes a date as day and short month, such as 9 May, and the zero date as never.
func ShortDate(d civil.Date) string {
	if d.IsZero() {
		return "never"
	}
	return fmt.Sprintf("%d %s", d.Day(), d.Month().String()[:3])
}

// ShortDay writes a day of the year as day and short month, and the zero day as none.
func ShortDay(m civil.MonthDay) string {
	if m.IsZero() {
		return "none"
	}
	return fmt.Sprintf("%d %s", m.Day, m.Month.String()[:3])
}

// Clipped cuts a name of n characters or more to n-1, the last of them an ellipsis, so that it fits a
// column of width n.
func Clipped(s string, n int) string {
	if utf8.RuneCountInString(s) < n {
		return s
	}
	return string([]rune(s)[:n-2]) + "…"
}

// Rounded returns x rounded to a number of decimals, as a pointer for optional JSON fields.
func Rounded(x float64, decimals int) *float64 {
	scale := math.Pow10(decimals)
	x = math.Round(x*scale) / scale
	return &x
}
