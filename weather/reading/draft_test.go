package reading

import (
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"eyeup/civil"
)

func draft(t *testing.T) (*Drafts, *Draft) {
	t.Helper()
	all := NewDrafts()
	d, err := all.Of(1, "HILL")
	if err != nil {
		t.Fatal(err)
	}
	return all, d
}

// TestDraftKeepsEveryDay sets days in any order and finds each again, and nothing else.
func TestDraftKeepsEveryDay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		origin := civil.MustOn(1990, time.March, 1)
		offsets := rapid.SliceOfNDistinct(rapid.IntRange(-4000, 4000), 1, 30, rapid.ID[int]).Draw(t, "days")
		all := NewDrafts()
		d, _ := all.Of(1, "HILL")
		for i, n := range offsets {
			if err := d.Set(i+1, origin.AddDays(civil.Days(n)), Low, float64(n)/100); err != nil {
				t.Fatal(err)
			}
		}
		records, err := all.Records()
		if err != nil {
			t.Fatal(err)
		}
		r, known := records[0], 0
		for i, day := range r.Days {
			if day.Low.IsKnown() {
				known++
				if n := int(r.From.AddDays(civil.Days(i)).Sub(origin)); day.Low.Celsius() != float64(n)/100 {
					t.Errorf("day %d has %v", n, day.Low)
				}
			}
		}
		if known != len(offsets) {
			t.Errorf("%d days known of %d", known, len(offsets))
		}
		first, last := r.Days[0], r.Days[len(r.Days)-1]
		if !first.Low.IsKnown() || !last.Low.IsKnown() {
			t.Errorf("the record %v begins or ends with a day that was never told of", r.Span())
		}
	})
}

func TestDraftReports(t *testing.T) {
	all, d := draft(t)
	day := civil.MustOn(2020, time.May, 1)
	type told struct {
		line, day int
		e         Element
		v         float64
	}
	for _, x := range []told{
		{1, 0, Low, 5}, {1, 0, High, 4}, // reversed
		{2, 1, Low, 1}, {3, 1, Low, 2}, {4, 1, Low, 1}, // unlike, and a third
		{5, 2, Low, 3}, {6, 2, Low, 3}, // the same again
		{7, 3, High, 276.7}, {8, 4, High, -91}, // cannot be
		{9, 5, Sun, 50e6}, // more than anywhere
	} {
		if err := d.Set(x.line, day.AddDays(civil.Days(x.day)), x.e, x.v); err != nil {
			t.Fatal(err)
		}
	}
	records, err := all.Records()
	if err != nil {
		t.Fatal(err)
	}
	r := records[0]
	want := []struct {
		line, count int
		what        string
	}{{1, 1, "a day's high is below its low"}, {3, 1, "two different values"}, {7, 2, "a high outside -90 to 60 °C"}, {9, 1, "negative sun, or more"}}
	if len(r.Findings) != len(want) {
		t.Fatalf("found %v", r.Findings)
	}
	for i, w := range want {
		f := r.Findings[i]
		if f.Line != w.line || f.Count != w.count || !strings.HasPrefix(f.What, w.what) {
			t.Errorf("found %+v; want %+v", f, w)
		}
	}
	for i, low := range []bool{false, false, true, false, false, false} {
		if r.Days[i].Low.IsKnown() != low || r.Days[i].High.IsKnown() || r.Days[i].Sun == r.Days[i].Sun {
			t.Errorf("day %d: %v", i, r.Days[i])
		}
	}
}

// TestSunAboveTheAir uses FAO 56, example 8: at 20° south on 3 September (day 246) the sun above the air
// brings 32.2 MJ/m².
func TestSunAboveTheAir(t *testing.T) {
	all, d := draft(t)
	d.Station.Latitude = -20
	day := civil.MustOn(2019, time.September, 3)
	for i, mj := range []float64{32.0, 32.6} {
		if err := d.Set(i+1, day.AddDays(civil.Days(365*i)), Sun, mj*1e6); err != nil {
			t.Fatal(err)
		}
	}
	records, _ := all.Records()
	r := records[0]
	if s := r.Days[0].Sun; s != 32.0e6 {
		t.Errorf("possible sun became %v", s)
	}
	if s := r.Days[365].Sun; s == s || len(r.Findings) != 1 {
		t.Errorf("impossible sun became %v, %v", s, r.Findings)
	}
}

func TestDraftBounds(t *testing.T) {
	all, d := draft(t)
	for _, y := range []int{1699, 2200, 9999} {
		if err := d.Set(1, civil.MustOn(y, time.May, 1), Low, 1); err == nil {
			t.Errorf("the year %d is taken", y)
		}
	}
	if _, err := all.Records(); err == nil {
		t.Error("no day of weather is taken for a record")
	}
	full := false
	for i := range mostStations + 1 {
		d, err := all.Of(i, string(rune('A'+i)))
		if err == nil {
			_ = d.Set(i, civil.MustOn(1700, time.January, 1), Low, 1)
			err = d.Set(i, civil.MustOn(2199, time.December, 31), Low, 1)
		}
		if err != nil {
			full = true
			break
		}
	}
	if !full || all.days > 2*mostDays {
		t.Errorf("a file may ask for %d days", all.days)
	}
}
