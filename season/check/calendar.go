package check

import (
	"math"
	"time"

	"eyeup/civil"
	"eyeup/odds"
	"eyeup/season"
)

// never is the hour, or day, of what does not come to pass.
const never = math.MaxInt32

// calendar counts the days of a season's span from 0, and its weeks from the first Monday.
type calendar struct {
	span                civil.Span
	days, weeks         int
	firstMonday         int
	turn, split, nowDay int // end of deep winter; midsummer; the Monday of this week
}

func calendarOf(b *season.Brief) calendar {
	c := calendar{span: b.Given.Span, days: int(b.Given.Span.Days())}
	south := b.Given.Site.IsSouthern()
	turn, split := civil.MustOn(b.Given.Span.To.Year(), time.January, 1), civil.MustOn(b.Given.Span.To.Year(), time.July, 15)
	if south {
		turn, split = civil.MustOn(b.Given.Span.From.Year(), time.July, 1), civil.MustOn(b.Given.Span.To.Year(), time.January, 15)
	}
	c.turn, c.split, c.nowDay = c.day(turn), c.day(split), c.day(b.Given.Today.Monday())
	for c.span.From.AddDays(civil.Days(c.firstMonday)).Weekday() != time.Monday {
		c.firstMonday++
	}
	for c.firstMonday+7*c.weeks < c.days {
		c.weeks++
	}
	return c
}

// day returns the day of the span on which d falls.
func (c *calendar) day(d civil.Date) int { return int(d.Sub(c.span.From)) }

// date returns the date of a day, none for never.
func (c *calendar) date(day int) civil.Date {
	if day == never {
		return civil.Date{}
	}
	return c.span.From.AddDays(civil.Days(day))
}

// monday returns the first Monday on or after a day.
func (c *calendar) monday(day int) int {
	d := c.date(day)
	if d.Monday() == d {
		return day
	}
	return c.day(d.Monday()) + 7
}

func (c *calendar) isMonday(day int) bool { return c.date(day).Weekday() == time.Monday }

// week returns the first day of a week.
func (c *calendar) week(w int) int { return c.firstMonday + 7*w }

// pastMidsummer is how many days after midsummer a day of the year may lie and be one of this spring:
// a last freeze may come so late.
const pastMidsummer = 28

// spring returns the day of this season's spring on which a day of the year falls.
func (c *calendar) spring(m civil.MonthDay) int {
	split := c.date(c.split)
	d := m.In(split.Year())
	if d.Sub(split) > pastMidsummer {
		d = m.In(split.Year() - 1)
	}
	return c.day(d)
}

// quantile returns the day at a share of years, infinite for never.
func quantile(days []int, share float64) float64 {
	figures := make([]float64, len(days))
	for i, d := range days {
		figures[i] = float64(d)
		if d == never {
			figures[i] = math.Inf(1)
		}
	}
	return odds.Sorted(figures).At(share)
}

// dateAt returns the date at a share of years, none for never.
func (c *calendar) dateAt(days []int, share float64) civil.Date {
	return c.dateOf(quantile(days, share))
}

// dateOf returns the date of a day that may lie between two, none for never.
func (c *calendar) dateOf(q float64) civil.Date {
	if math.IsInf(q, 0) || math.IsNaN(q) {
		return civil.Date{}
	}
	return c.date(int(math.Round(q)))
}

// when returns the dates at one in ten, even odds and nine in ten.
func (c *calendar) when(days []int) civil.When {
	return civil.When{Early: c.dateAt(days, 0.1), Middle: c.dateAt(days, 0.5), Late: c.dateAt(days, 0.9)}
}
