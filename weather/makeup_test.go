package weather

import (
	"math"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/sun"
)

// invented are the normals of no place in particular: winters like Maine's, July at 20 °C.
var invented = normalsOf(
	[12]float64{-13, -12, -6, 0, 6, 11, 14, 13, 8, 3, -2, -9},
	[12]float64{-2, 0, 4, 11, 18, 23, 26, 25, 20, 14, 7, 1})

func normalsOf(low, high [12]float64) Normals {
	var n Normals
	for m := range low {
		n.Low[m], n.High[m] = quantity.Celsius(low[m]), quantity.Celsius(high[m])
	}
	return n
}

// monthly returns the mean low and high of each month of each whole year.
func monthly(r *Record) (low, high map[int][12]float64) {
	low, high = map[int][12]float64{}, map[int][12]float64{}
	for i, day := range r.Days {
		d := r.From.AddDays(civil.Days(i))
		l, h := low[d.Year()], high[d.Year()]
		n := float64(lengthOf(d))
		l[d.Month()-1] += day.Low.Celsius() / n
		h[d.Month()-1] += day.High.Celsius() / n
		low[d.Year()], high[d.Year()] = l, h
	}
	return low, high
}

func meanAndSpread(years map[int][12]float64, m int) (mean, spread float64) {
	n := float64(len(years))
	for _, y := range years {
		mean += y[m] / n
	}
	for _, y := range years {
		spread += (y[m] - mean) * (y[m] - mean) / (n - 1)
	}
	return mean, math.Sqrt(spread)
}

func TestMadeUpYearsHaveTheirNormals(t *testing.T) {
	r := MakeUp(invented, sun.Site{Latitude: 44.5}, 30, 7)
	if !r.MadeUp || r.Span().Days() != 31*365+8 {
		t.Fatalf("made up: %v, %d days", r.MadeUp, r.Span().Days())
	}
	low, high := monthly(r)
	for m := range 12 {
		l, _ := meanAndSpread(low, m)
		h, _ := meanAndSpread(high, m)
		near(t, "mean low", l, invented.Low[m].Celsius(), 0.2)
		near(t, "mean high", h, invented.High[m].Celsius(), 0.2)
	}
}

// Without the months' offsets a generator's Januaries are too much alike; with them they
// differ as measured at Waterville ME in 1981-2010 (GHCN-Daily): mean lows by 3.4 K,
// mean highs by 2.8 K; Julys by 1.3 and 1.5 K. Five climates lie within 40 % of the planes.
func TestMadeUpYearsDiffer(t *testing.T) {
	r := MakeUp(invented, sun.Site{Latitude: 44.5}, 400, 7)
	low, high := monthly(r)
	for _, row := range []struct {
		month     int
		low, high float64
	}{{0, 3.4, 2.8}, {6, 1.3, 1.5}} {
		_, l := meanAndSpread(low, row.month)
		_, h := meanAndSpread(high, row.month)
		t.Logf("month %d: lows differ by %.2f K (measured %.1f), highs by %.2f K (measured %.1f)", row.month+1, l, row.low, h, row.high)
		near(t, "lows", l/row.low, 1, 0.4)
		near(t, "highs", h/row.high, 1, 0.4)
	}
	w := newWriter(invented, 7, r.Span())
	chainOnly, _ := w.chain.monthVariance()
	if alone := math.Sqrt(chainOnly) * w.spreadL[0]; alone > 2.9 {
		t.Errorf("the chain alone gives Januaries that differ by %.2f K: no offset would be due", alone)
	}
}

func TestMadeUpDaysAreDays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := swinging(rapid.Float64Range(-15, 20).Draw(t, "low"), rapid.Float64Range(0, 20).Draw(t, "swing"),
			rapid.Float64Range(4, 20).Draw(t, "range"))
		seed := rapid.Uint64().Draw(t, "seed")
		r := MakeUp(n, sun.Site{}, 1, seed)
		for i, d := range r.Days {
			if !d.HasExtremes() || d.High.Sub(d.Low) < leastDay {
				t.Fatalf("day %d: %v to %v", i, d.Low, d.High)
			}
		}
		if again := MakeUp(n, sun.Site{}, 1, seed); !sameExtremes(r, again) {
			t.Fatal("the same seed made other weather")
		}
	})
}

// swinging are normals that run through the year as a sine, with days of one range.
func swinging(low, swing, span float64) Normals {
	var n Normals
	for m := range n.Low {
		n.Low[m] = quantity.Celsius(low - swing*math.Cos(2*math.Pi*float64(m)/12))
		n.High[m] = n.Low[m].Add(quantity.Difference(span))
	}
	return n
}

func sameExtremes(a, b *Record) bool {
	var x, y [][2]quantity.Temperature
	for i := range a.Days {
		x = append(x, [2]quantity.Temperature{a.Days[i].Low, a.Days[i].High})
		y = append(y, [2]quantity.Temperature{b.Days[i].Low, b.Days[i].High})
	}
	return reflect.DeepEqual(x, y)
}

func TestCourseKeepsMonthlyMeans(t *testing.T) {
	low, _ := invented.celsius()
	c := keeping(low)
	var sum, count [12]float64
	for d := civil.MustOn(2027, 1, 1); d.Year() == 2027; d = d.AddDays(1) {
		sum[d.Month()-1] += c.on(d)
		count[d.Month()-1]++
	}
	for m := range sum {
		near(t, "mean of a month", sum[m]/count[m], low[m], 0.02)
	}
	plain := course(low)
	if plain.on(civil.MustOn(2027, 7, 16)) >= c.on(civil.MustOn(2027, 7, 16)) {
		t.Error("the warmest day should lie above the mean of its month")
	}
}

func TestNormalsThatCannotBe(t *testing.T) {
	for name, spoil := range map[string]func(*Normals){
		"reversed": func(n *Normals) { n.Low[3], n.High[3] = n.High[3], n.Low[3] },
		"unknown":  func(n *Normals) { n.High[11] = quantity.Unknown() },
		"too hot":  func(n *Normals) { n.High[6] = quantity.Celsius(79) }, // °F taken for °C
		"too cold": func(n *Normals) { n.Low[0] = quantity.Celsius(-90) },
	} {
		n := invented
		spoil(&n)
		if n.Check() == nil {
			t.Errorf("%s: taken for real", name)
		}
		if r := MakeUp(n, sun.Site{}, 3, 1); len(r.Days) != 0 {
			t.Errorf("%s: weather was made of it", name)
		}
	}
	if invented.Check() != nil {
		t.Error(invented.Check())
	}
	if r := MakeUp(invented, sun.Site{}, 0, 1); len(r.Days) != 0 {
		t.Error("no years made days")
	}
}

// The chain's part and the months' offset together have the variance of days and that of
// months that were asked for.
func TestShareOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		daily := rapid.Float64Range(1, 10).Draw(t, "daily")
		v := rapid.Float64Range(0.05, 0.4).Draw(t, "share of a month")
		monthly := daily * rapid.Float64Range(0, 1).Draw(t, "monthly")
		chain, offset := shareOut(daily, monthly, v)
		month := math.Sqrt(chain*chain*v + offset*offset)
		wanted := max(monthly, daily*math.Sqrt(v)) // the chain alone may give more than was asked
		if math.Abs(math.Hypot(chain, offset)-daily) > 1e-9 || math.Abs(month-wanted) > 1e-9 {
			t.Fatalf("days %g of %g, months %g of %g", math.Hypot(chain, offset), daily, month, wanted)
		}
	})
}
