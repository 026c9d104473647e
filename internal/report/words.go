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

func Capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// RoundedAmount rounds each part of an amount to so many decimals.
func RoundedAmount(a odds.Amount, decimals int) odds.Amount {
	return odds.Amount{Low: *Rounded(a.Low, decimals), Middle: *Rounded(a.Middle, decimals), High: *Rounded(a.High, decimals)}
}

func AddOnce(all []string, one string) []string {
	if slices.Contains(all, one) {
		return all
	}
	return append(all, one)
}

// ShortDate writes a date as a report shows it.
func ShortDate(d civil.Date) string {
	if d.IsZero() {
		return "never"
	}
	return fmt.Sprintf("%d %s", d.Day(), d.Month().String()[:3])
}

func ShortDay(m civil.MonthDay) string {
	if m.IsZero() {
		return "none"
	}
	return fmt.Sprintf("%d %s", m.Day, m.Month.String()[:3])
}

// Clipped shortens a name that would break a column.
func Clipped(s string, n int) string {
	if utf8.RuneCountInString(s) < n {
		return s
	}
	return string([]rune(s)[:n-2]) + "…"
}

// Rounded returns x to so many decimals, since more of them would say nothing.
func Rounded(x float64, decimals int) *float64 {
	scale := math.Pow10(decimals)
	x = math.Round(x*scale) / scale
	return &x
}
