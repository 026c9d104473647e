package weather

import (
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"eyeup/civil"
	"eyeup/quantity"
)

// numbered is a record in which each day's low is its day of the year and its high ten more.
func numbered(from, to civil.Date) *Record {
	r := &Record{From: from}
	for d := from; !d.After(to); d = d.AddDays(1) {
		day := Unmeasured()
		day.Low = quantity.Celsius(float64(d.YearDay()) / 10)
		day.High = day.Low.Add(10)
		r.Days = append(r.Days, day)
	}
	return r
}

func (r *Record) lose(from civil.Date, days int) {
	for i := range days {
		r.Put(from.AddDays(civil.Days(i)), Unmeasured())
	}
}

var north = civil.Span{From: civil.MustOn(2026, 9, 1), To: civil.MustOn(2027, 12, 31)}

func TestMembersLieOnTheGrowingYear(t *testing.T) {
	r := numbered(civil.MustOn(1980, 6, 1), civil.MustOn(1990, 12, 31))
	members, left := Members(r, north, 0, 0)
	if len(members) != 10 || len(left) != 0 {
		t.Fatalf("%d members, left out: %v", len(members), left)
	}
	if members[0].Year != 1981 || members[9].Year != 1990 {
		t.Errorf("years %d to %d, want 1981 to 1990", members[0].Year, members[9].Year)
	}
	if got, want := members[0].Days[0].Low, r.On(civil.MustOn(1980, 9, 1)).Low; got != want {
		t.Errorf("the season of 1981 begins with %v, want 1 September 1980: %v", got, want)
	}
	// South of the equator the season runs from March to the June after; the growing year
	// is the one in which it is planted.
	south := civil.Span{From: civil.MustOn(2027, 3, 1), To: civil.MustOn(2028, 6, 30)}
	members, _ = Members(r, south, 0, 0)
	if len(members) != 9 || members[0].Year != 1981 || members[8].Year != 1989 {
		t.Errorf("%d members south of the equator, the first %d", len(members), members[0].Year)
	}
}

func TestLeapDays(t *testing.T) {
	r := numbered(civil.MustOn(1983, 1, 1), civil.MustOn(1986, 12, 31))
	leap := civil.Span{From: civil.MustOn(2028, 1, 1), To: civil.MustOn(2028, 12, 31)}
	members, _ := Members(r, leap, 1983, 1984)
	feb28, feb29, mar1 := 58, 59, 60
	if d := members[0].Days; d[feb29].Low != d[feb28].Low || d[mar1].Low != quantity.Celsius(6.0) {
		t.Error("29 February of the plan should take the 28th of a year that has none")
	}
	if d := members[1].Days; d[feb29].Low != quantity.Celsius(6.0) || d[mar1].Low != quantity.Celsius(6.1) {
		t.Error("29 February of the plan should take that of a year that has one")
	}
	plain := civil.Span{From: civil.MustOn(2027, 1, 1), To: civil.MustOn(2027, 12, 31)}
	members, _ = Members(r, plain, 1984, 1984)
	if d := members[0].Days; len(d) != 365 || d[feb28].Low != quantity.Celsius(5.9) || d[59].Low != quantity.Celsius(6.1) {
		t.Error("29 February of the record should be dropped where the plan has none")
	}
}

func TestGapsOfThreeDaysAreBridged(t *testing.T) {
	r := numbered(civil.MustOn(1980, 1, 1), civil.MustOn(1982, 12, 31))
	r.lose(civil.MustOn(1981, 4, 10), 3)
	members, left := Members(r, north, 1981, 1982)
	if len(members) != 2 || members[0].Bridged != 3 || len(left) != 0 {
		t.Fatalf("%d members, %v left out", len(members), left)
	}
	at := civil.MustOn(2027, 4, 11).Sub(north.From)
	near(t, "the middle of the gap", members[0].Days[at].Low.Celsius(), 10.1, 1e-9)

	r.lose(civil.MustOn(1981, 4, 13), 1)
	members, left = Members(r, north, 1981, 1982)
	if len(members) != 1 || len(left) != 1 || left[0].Year != 1981 ||
		!strings.Contains(left[0].Why, "4 days from 1981-04-10") {
		t.Errorf("a gap of four days: %d members, left out %v", len(members), left)
	}
}

func TestReversedDayIsMissing(t *testing.T) {
	r := numbered(civil.MustOn(1980, 1, 1), civil.MustOn(1982, 12, 31))
	d := civil.MustOn(1981, 4, 10)
	day := r.On(d)
	day.Low, day.High = day.High, day.Low
	r.Put(d, day)
	members, _ := Members(r, north, 1981, 1981)
	got := members[0].Days[civil.MustOn(2027, 4, 10).Sub(north.From)]
	if members[0].Bridged != 1 {
		t.Fatalf("%d days bridged", members[0].Bridged)
	}
	near(t, "low", got.Low.Celsius(), 10, 1e-9)
	near(t, "high", got.High.Celsius(), 20, 1e-9)
}

// An extreme that was measured stays where the one that was drawn does not contradict it.
func TestMeasuredExtremeIsKept(t *testing.T) {
	r := numbered(civil.MustOn(1980, 1, 1), civil.MustOn(1982, 12, 31))
	high := Unmeasured()
	high.High = quantity.Celsius(31)
	below := Unmeasured()
	below.High = quantity.Celsius(-5)
	low := Unmeasured()
	low.Low = quantity.Celsius(-3)
	r.Put(civil.MustOn(1981, 4, 10), high)
	r.Put(civil.MustOn(1981, 5, 10), below)
	r.Put(civil.MustOn(1981, 6, 10), low)
	members, _ := Members(r, north, 1981, 1981)
	on := func(month time.Month) Day { return members[0].Days[civil.MustOn(2027, month, 10).Sub(north.From)] }
	near(t, "kept high", on(4).High.Celsius(), 31, 1e-9)
	near(t, "drawn low", on(4).Low.Celsius(), 10, 1e-9)
	near(t, "contradicted high", on(5).High.Celsius(), 23, 1e-9)
	near(t, "kept low", on(6).Low.Celsius(), -3, 1e-9)
	if members[0].Bridged != 3 {
		t.Errorf("%d days bridged, want 3", members[0].Bridged)
	}
}

func TestYearsBeyondTheRecord(t *testing.T) {
	r := numbered(civil.MustOn(1981, 1, 1), civil.MustOn(1983, 12, 31))
	members, left := Members(r, north, 1981, 1984)
	if len(members) != 2 || len(left) != 2 {
		t.Fatalf("%d members, left out %v", len(members), left)
	}
	if left[0].Year != 1981 || !strings.Contains(left[0].Why, "1980-09-01") || left[1].Year != 1984 {
		t.Errorf("left out: %v", left)
	}
	if m, l := Members(&Record{}, north, 1981, 1984); m != nil || l != nil {
		t.Error("an empty record has members")
	}
	for _, beyond := range [][2]int{{1, 5}, {-4000, 9}, {20000, 90000}, {1990, 1980}} {
		if m, _ := Members(r, north, beyond[0], beyond[1]); len(m) != 0 {
			t.Errorf("years %v have members", beyond)
		}
	}
	r.lose(civil.MustOn(1983, 12, 30), 2)
	if _, left := Members(r, north, 1983, 1983); len(left) != 1 || !strings.Contains(left[0].Why, "edge of the record") {
		t.Errorf("a gap at the end can't be bridged: %v", left)
	}
}

// Whatever is missing, a member is whole and each year is either there or named.
func TestEveryYearIsAccountedFor(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := numbered(civil.MustOn(1980, 1, 1), civil.MustOn(1984, 12, 31))
		for range rapid.IntRange(0, 20).Draw(t, "gaps") {
			r.lose(r.From.AddDays(civil.Days(rapid.IntRange(0, 1800).Draw(t, "at"))), rapid.IntRange(1, 5).Draw(t, "days"))
		}
		members, left := Members(r, north, 1981, 1984)
		if len(members)+len(left) != 4 {
			t.Fatalf("%d members and %d left out of 4 years", len(members), len(left))
		}
		for _, m := range members {
			for i, d := range m.Days {
				if !d.HasExtremes() {
					t.Fatalf("day %d of %d has no extremes", i, m.Year)
				}
			}
		}
	})
}
