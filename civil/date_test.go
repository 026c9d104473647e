package civil

import (
	"encoding/json"
	"errors"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// anyDate draws a day from 1 January 1601 to the end of 9998.
func anyDate(t *rapid.T) Date {
	return MustOn(1601, time.January, 1).AddDays(Days(rapid.IntRange(0, 3_067_000).Draw(t, "day")))
}

// The Gregorian rule of leap years (ISO 8601-1:2019, 3.1.1.21): years that four divides,
// but for those of the centuries that 400 does not divide.
func TestLeapYearsFollowTheGregorianRule(t *testing.T) {
	for year := firstYear; year <= lastYear; year++ {
		_, err := On(year, time.February, 29)
		leap := year%4 == 0 && (year%100 != 0 || year%400 == 0)
		if leap != (err == nil) {
			t.Fatalf("29 February %d: %v", year, err)
		}
	}
}

func TestDaysThatAreNot(t *testing.T) {
	for _, d := range []struct {
		y int
		m time.Month
		d int
	}{{2027, 2, 29}, {2027, 4, 31}, {2027, 13, 1}, {2027, 0, 1}, {2027, 1, 0}, {1599, 12, 31}, {10000, 1, 1}, {2027, 1, -3}} {
		if date, err := On(d.y, d.m, d.d); !errors.Is(err, ErrNoDate) {
			t.Errorf("%v: got %v, %v", d, date, err)
		}
	}
	for _, s := range []string{"", "2027-2-1", "2027-02-30", "27-02-01", "2027/02/01", "2027-02-01 ", "0000-01-01", "1599-12-31"} {
		if date, err := Parse(s); !errors.Is(err, ErrNoDate) {
			t.Errorf("%q: got %v, %v", s, date, err)
		}
	}
}

func TestMustOnPanicsOnADayThatIsNot(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("30 February was taken")
		}
	}()
	MustOn(2027, time.February, 30)
}

func TestPartsAreThoseOfTheLibrary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anyDate(t)
		u := time.Date(d.Year(), d.Month(), d.Day(), 12, 0, 0, 0, time.UTC)
		if Of(u) != d || d.YearDay() != u.YearDay() || d.Weekday() != u.Weekday() || d.String() != u.Format("2006-01-02") {
			t.Fatalf("%v is not %v", d, u)
		}
		back, err := Parse(d.String())
		if err != nil || back != d {
			t.Fatalf("%v read back as %v, %v", d, back, err)
		}
	})
}

// The number of days between is that of the library's clock, 86400 s each.
func TestDistanceIsThatOfTheLibrary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := anyDate(t), anyDate(t)
		if want := Days((b.UTC().Unix() - a.UTC().Unix()) / 86400); b.Sub(a) != want {
			t.Fatalf("%v to %v: %d days, want %d", a, b, b.Sub(a), want)
		}
		if a.AddDays(b.Sub(a)) != b {
			t.Fatalf("%v and as many days as to %v", a, b)
		}
		if a.Before(b) != (b.Sub(a) > 0) || a.After(b) != b.Before(a) {
			t.Fatalf("%v against %v", a, b)
		}
	})
}

// A day and its Monday lie in the same ISO week, and no day of the week before does
// (time.ISOWeek follows ISO 8601).
func TestMondayNamesTheISOWeek(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anyDate(t)
		m := d.Monday()
		year, week := d.UTC().ISOWeek()
		mondaysYear, mondaysWeek := m.UTC().ISOWeek()
		beforeYear, beforeWeek := m.AddDays(-1).UTC().ISOWeek()
		if m.Weekday() != time.Monday || year != mondaysYear || week != mondaysWeek || year == beforeYear && week == beforeWeek {
			t.Fatalf("%v: Monday %v", d, m)
		}
	})
}

// Of shows the day where the clock hangs: half past eleven at night on Greenwich's 1 March
// is 2 March in a zone two hours east.
func TestOfTakesTheZonesOwnDay(t *testing.T) {
	east := time.FixedZone("two hours east", 2*3600)
	at := time.Date(2027, time.March, 1, 23, 30, 0, 0, time.UTC)
	if got := Of(at.In(east)); got != MustOn(2027, time.March, 2) {
		t.Errorf("got %v", got)
	}
}

func TestNoDate(t *testing.T) {
	var none Date
	if !none.IsZero() || none.String() != "none" || none.Short() != "none" {
		t.Errorf("no date shows as %v, %v", none, none.Short())
	}
	if MustOn(1600, time.January, 1).IsZero() {
		t.Error("the first day of the calendar is taken for no date")
	}
	if got, err := json.Marshal(none); err != nil || string(got) != "null" {
		t.Errorf("no date is written %s, %v", got, err)
	}
}

func TestShort(t *testing.T) {
	if got := MustOn(2027, time.March, 12).Short(); got != "12 Mar" {
		t.Errorf("got %q", got)
	}
	if got := (MonthDay{time.February, 29}).Short(); got != "29 Feb" {
		t.Errorf("got %q", got)
	}
}

func TestJSONRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		was := When{Early: anyDate(t), Middle: anyDate(t)} // and never, in the late years
		text, err := json.Marshal(was)
		if err != nil {
			t.Fatal(err)
		}
		var is When
		if err := json.Unmarshal(text, &is); err != nil || is != was {
			t.Fatalf("%s read back as %v, %v", text, is, err)
		}
	})
	var d Date
	for _, bad := range []string{`3`, `"2027-02-30"`, `{}`, `"`} {
		if err := json.Unmarshal([]byte(bad), &d); err == nil {
			t.Errorf("%s was taken for %v", bad, d)
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"2027-03-14", "2028-02-29", "0000-00-00", "９９９９-01-01", "-2027-01-01"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		d, err := Parse(s)
		if err == nil && d.String() != s {
			t.Errorf("%q read as %v", s, d)
		}
		if err != nil && !d.IsZero() {
			t.Errorf("%q refused and yet %v", s, d)
		}
	})
}
