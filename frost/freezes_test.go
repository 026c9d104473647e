package frost

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"eyeup/civil"
	"eyeup/quantity"
)

// dayOf is a day of the plain year 2001 by its number.
func dayOf(n int) civil.Date { return civil.MustOn(2001, 1, 1).AddDays(civil.Days(n - 1)) }

// inSprings makes freezes of springs that end on those days of 2001; 0 is a spring
// without a freeze.
func inSprings(days ...int) Freezes {
	var f Freezes
	for _, n := range days {
		y := Year{Year: 2001, SpringValid: true}
		if n != 0 {
			y.Last = dayOf(n)
		}
		f.Years = append(f.Years, y)
	}
	return f
}

// mixed is six springs without a freeze and 24 with one.
var mixed = inSprings(0, 0, 0, 0, 0, 0, 88, 90, 95, 97, 98, 99, 100, 101, 102, 103, 104, 104,
	105, 106, 107, 108, 109, 110, 111, 112, 113, 114, 115, 120)

// Type-8 quantiles with springs that have no freeze kept in the count, as R's quantile() has them.
func TestSpringsWithoutFreezeStayInTheCount(t *testing.T) {
	const splitDay = 205 // 24 July
	springs := mixed.springs()
	for p, want := range map[float64]float64{0.3: 95.866667, 0.5: 102.5, 0.7: 107.566667, 0.8: 110.6, 0.9: 113.633333} {
		if got := springs.At(p) + splitDay; math.Abs(got-want) > 1e-6 {
			t.Errorf("share %g: %.6f, want %.6f", p, got, want)
		}
	}
	for _, p := range []float64{0.1, 0.2} {
		if got := springs.At(p); !math.IsInf(got, -1) {
			t.Errorf("share %g: %g, want none", p, got)
		}
	}
	w := mixed.Spring()
	if !w.Early.IsZero() {
		t.Errorf("one spring in ten is earlier than %v, want no day", w.Early)
	}
	if w.Middle != dayOf(103).MonthDay() || w.Late != dayOf(114).MonthDay() {
		t.Errorf("middle %v, late %v", w.Middle, w.Late)
	}
}

func TestOddsAfter(t *testing.T) {
	f := mixed
	o := f.OddsAfter(dayOf(112).MonthDay())
	if o.Later != 4 || o.Springs != 30 || math.Abs(float64(o.Share)-4.0/30) > 1e-12 {
		t.Errorf("after day 112: %+v", o)
	}
	if !(o.Interval.From < float64(o.Share) && float64(o.Share) < o.Interval.To) {
		t.Errorf("the share %g lies outside %+v", o.Share, o.Interval)
	}
	if before := f.OddsAfter(civil.MonthDay{Month: 12, Day: 31}); before.Later != 24 {
		t.Errorf("after New Year's Eve %d springs freeze, want 24", before.Later)
	}
	if none := (Freezes{}).OddsAfter(civil.MonthDay{Month: 5, Day: 1}); none.Springs != 0 || none.Interval.To != 1 {
		t.Errorf("without springs: %+v", none)
	}
}

func TestSafeFrom(t *testing.T) {
	if d, ok := mixed.SafeFrom(0.1); !ok || d != mixed.Spring().Late {
		t.Errorf("one in ten: %v, %v; want the late day %v", d, ok, mixed.Spring().Late)
	}
	if d, ok := mixed.SafeFrom(0.85); !ok || !d.IsZero() {
		t.Errorf("85 in 100: %v, %v; want safe all year", d, ok)
	}
	for _, risk := range []quantity.Share{0, 0.02, -1, 1.5, quantity.Share(math.NaN())} {
		if d, ok := mixed.SafeFrom(risk); ok {
			t.Errorf("risk %g: %v told from thirty springs", risk, d)
		}
	}
	if _, ok := (Freezes{}).SafeFrom(0.1); ok {
		t.Error("a day was told from no springs")
	}
}

// Who accepts more risk plants no later, and no more springs than the risk allows freeze
// after the day, but for the one between which the quantile lies.
func TestMoreRiskIsNoLater(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := inSprings(rapid.SliceOfN(rapid.IntRange(1, 200), 5, 60).Draw(t, "days")...)
		a := rapid.Float64Range(0.15, 1).Draw(t, "risk")
		b := rapid.Float64Range(0.15, 1).Draw(t, "other risk")
		at := func(risk float64) (float64, civil.MonthDay) {
			d, ok := f.SafeFrom(quantity.Share(risk))
			if !ok {
				t.Fatalf("no day at a risk of %g", risk)
			}
			return f.springPosition(d), d
		}
		more, _ := at(max(a, b))
		less, day := at(min(a, b))
		if more > less {
			t.Fatalf("a risk of %g is later than one of %g", max(a, b), min(a, b))
		}
		if o := f.OddsAfter(day); float64(o.Later) > min(a, b)*float64(o.Springs)+1 {
			t.Fatalf("%d of %d springs freeze after a day of risk %g", o.Later, o.Springs, min(a, b))
		}
	})
}

func TestBoundsHoldTheirDates(t *testing.T) {
	days := make([]int, 0, 60)
	for n := 90; n < 150; n++ {
		days = append(days, n)
	}
	f := inSprings(days...)
	b, w := f.SpringBounds(), f.Spring()
	for _, row := range []struct {
		bounds Bounds
		day    civil.MonthDay
	}{{b.Early, w.Early}, {b.Middle, w.Middle}, {b.Late, w.Late}} {
		from, to, at := f.springPosition(row.bounds.From), f.springPosition(row.bounds.To), f.springPosition(row.day)
		if !(from <= at && at <= to && from < to && to-from < 20) {
			t.Errorf("%v to %v about %v", row.bounds.From, row.bounds.To, row.day)
		}
	}
	if f.SpringBounds() != b {
		t.Error("the bounds differ from one time to the next")
	}
	if inSprings(100).SpringBounds() != (BoundsInYear{}) {
		t.Error("one spring has bounds")
	}
}
