package civil

import (
	"encoding/json"
	"errors"
	"testing"
	"time"

	"pgregory.net/rapid"
)

func TestSpanCountsBothEnds(t *testing.T) {
	year := Span{MustOn(2028, time.January, 1), MustOn(2028, time.December, 31)}
	if year.Days() != 366 {
		t.Errorf("the leap year 2028 has %d days", year.Days())
	}
	if one := (Span{year.From, year.From}); one.Days() != 1 || !one.Holds(year.From) {
		t.Errorf("a span of one day has %d", one.Days())
	}
	if turned := (Span{year.To, year.From}); turned.Days() != 0 || len(turned.Mondays()) != 0 {
		t.Errorf("a span that ends before it begins has %d days", turned.Days())
	}
}

// Every day of a span lies in the week of exactly one of its Mondays.
func TestMondaysCoverTheSpanOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		from := anyDate(t)
		s := Span{from, from.AddDays(Days(rapid.IntRange(0, 500).Draw(t, "length")))}
		mondays := s.Mondays()
		if mondays[0] != s.From.Monday() || mondays[len(mondays)-1] != s.To.Monday() {
			t.Fatalf("%v: %v", s, mondays)
		}
		for i := 1; i < len(mondays); i++ {
			if mondays[i].Sub(mondays[i-1]) != Week {
				t.Fatalf("%v: %v", s, mondays)
			}
		}
		inside := 0
		for d := from.AddDays(-3); !d.After(s.To.AddDays(3)); d = d.AddDays(1) {
			if s.Holds(d) {
				inside++
			}
		}
		if Days(inside) != s.Days() {
			t.Fatalf("%v holds %d days, counts %d", s, inside, s.Days())
		}
	})
}

func TestMonthDay(t *testing.T) {
	last := MonthDay{time.February, 29}
	for year, want := range map[int]Date{
		2027: MustOn(2027, time.February, 28),
		2028: MustOn(2028, time.February, 29),
		2100: MustOn(2100, time.February, 28),
	} {
		if got := last.In(year); got != want {
			t.Errorf("29 February in %d is %v", year, got)
		}
	}
	for _, s := range []string{"", "13-01", "02-30", "00-10", "5-22", "2027-05-22", "05-22x"} {
		if m, err := ParseMonthDay(s); !errors.Is(err, ErrNoDate) {
			t.Errorf("%q: got %v, %v", s, m, err)
		}
	}
	var none MonthDay
	if !none.IsZero() || none.String() != "none" || none.Short() != "none" {
		t.Errorf("no day shows as %v", none)
	}
}

func TestMonthDayRoundTrips(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anyDate(t)
		m := d.MonthDay()
		if m.In(d.Year()) != d {
			t.Fatalf("%v in its own year is %v", m, m.In(d.Year()))
		}
		back, err := ParseMonthDay(m.String())
		if err != nil || back != m {
			t.Fatalf("%v read back as %v, %v", m, back, err)
		}
		was := WhenInYear{Early: m, Late: MonthDay{}}
		text, err := json.Marshal(was)
		if err != nil {
			t.Fatal(err)
		}
		var is WhenInYear
		if err := json.Unmarshal(text, &is); err != nil || is != was {
			t.Fatalf("%s read back as %v, %v", text, is, err)
		}
	})
	var m MonthDay
	if err := json.Unmarshal([]byte(`"02-31"`), &m); err == nil {
		t.Errorf("31 February was taken for %v", m)
	}
}
