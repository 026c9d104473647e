package odds

import (
	"encoding/json"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

var freezes = []float64{95, 98, 101, 104, 104, 107, 110, 112, 115, 120}

// R 4.2.2, quantile(x, p, type=…).
func TestQuantilesAgreeWithR(t *testing.T) {
	counting := []float64{10, 9, 8, 7, 6, 5, 4, 3, 2, 1}
	for _, c := range []struct {
		sample []float64
		kind   Type
		shares []float64
		want   []float64
	}{
		{freezes, Hazen, []float64{.1, .2, .5, .8, .9}, []float64{96.5, 99.5, 105.5, 113.5, 117.5}},
		{freezes, Weibull, []float64{.1, .2, .5, .8, .9}, []float64{95.3, 98.6, 105.5, 114.4, 119.5}},
		{freezes, Type7, []float64{.1, .2, .5, .8, .9}, []float64{97.7, 100.4, 105.5, 112.6, 115.5}},
		{freezes, Type8, []float64{.1, .2, .5, .8, .9}, []float64{96.1, 99.2, 105.5, 113.8, 118.0 + 1.0/6}},
		{freezes, Type9, []float64{.1, .2, .5, .8, .9}, []float64{96.2, 99.275, 105.5, 113.725, 118}},
		{counting, Hazen, []float64{.1, .25, .9}, []float64{1.5, 3, 9.5}},
		{counting, Weibull, []float64{.1, .25, .9}, []float64{1.1, 2.75, 9.9}},
		{counting, Type7, []float64{.1, .25, .9}, []float64{1.9, 3.25, 9.1}},
		{counting, Type8, []float64{.1, .25, .9}, []float64{1.366667, 2.916667, 9.633333}},
	} {
		s := Sorted(c.sample)
		for i, p := range c.shares {
			if got := s.AtType(p, c.kind); math.Abs(got-c.want[i]) > 1e-6 {
				t.Errorf("type %d at %g of %v: %.9f, want %.9f", c.kind, p, c.sample, got, c.want[i])
			}
		}
	}
}

// R 4.2.2 with -Inf for each of six years without a freeze, thirty years in all. A
// quantile next to such a year is none, not a mean with it.
func TestQuantilesKeepNever(t *testing.T) {
	figures := []float64{88, 90, 95, 97, 98, 99, 100, 101, 102, 103, 104, 104, 105, 106, 107, 108, 109, 110, 111, 112, 113, 114, 115, 120}
	never := math.Inf(-1)
	s := Sorted(append(slices.Repeat([]float64{never}, 6), figures...))
	for p, want := range map[float64]float64{.1: never, .2: never, .3: 95.866667, .5: 102.5, .7: 107.566667, .8: 110.6, .9: 113.633333} {
		if got := s.At(p); got != want && !(math.Abs(got-want) < 1e-6) {
			t.Errorf("at %g: %.6f, want %.6f", p, got, want)
		}
	}
	for p, want := range map[float64]float64{.3: 95.6, .8: 110.8, .9: 113.9} {
		if got := s.AtType(p, Weibull); !(math.Abs(got-want) < 1e-6) {
			t.Errorf("type 6 at %g: %.6f, want %.6f", p, got, want)
		}
	}
}

func TestQuantilesOfNothing(t *testing.T) {
	for _, got := range []float64{Sample{}.At(.5), Sample{1, 2}.At(-.1), Sample{1, 2}.At(1.1), Sample{1, 2}.At(math.NaN())} {
		if !math.IsNaN(got) {
			t.Errorf("gave %g", got)
		}
	}
	if got := (Sample{7}).At(.9); got != 7 {
		t.Errorf("of one figure: %g", got)
	}
}

// Quantiles rise with the share, lie among the figures, and turn about: the quantile at p
// of the sample mirrored is the one at 1-p mirrored.
func TestQuantileProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		figures := rapid.SliceOfN(rapid.Float64Range(-400, 400), 1, 50).Draw(t, "figures")
		p := rapid.Float64Range(0, 1).Draw(t, "p")
		q := rapid.Float64Range(p, 1).Draw(t, "q")
		kind := rapid.SampledFrom([]Type{Hazen, Weibull, Type7, Type8, Type9, Cunnane}).Draw(t, "type")
		before := slices.Clone(figures)
		s := Sorted(figures)
		a, b := s.AtType(p, kind), s.AtType(q, kind)
		if a > b+1e-9 || a < s[0] || b > s[len(s)-1] {
			t.Errorf("%g at %g and %g at %g of %v", a, p, b, q, s)
		}
		mirrored := make([]float64, len(figures))
		for i, x := range figures {
			mirrored[i] = -x
		}
		if m := -Sorted(mirrored).AtType(1-p, kind); math.Abs(m-a) > 1e-6 {
			t.Errorf("%g mirrored is %g", a, m)
		}
		if !slices.Equal(before, figures) {
			t.Error("the figures were put in order")
		}
	})
}

func TestAmountIsWrittenAndRead(t *testing.T) {
	for _, c := range []struct {
		amount Amount
		want   string
	}{
		{Amount{1, 2.5, 3}, `{"low":1,"middle":2.5,"high":3}`},
		{Amount{math.Inf(-1), 2, math.NaN()}, `{"low":null,"middle":2,"high":null}`},
	} {
		b, err := json.Marshal(c.amount)
		if err != nil || string(b) != c.want {
			t.Errorf("%v became %s (%v), want %s", c.amount, b, err, c.want)
		}
		var back Amount
		if err := json.Unmarshal(b, &back); err != nil || back.Middle != c.amount.Middle {
			t.Errorf("%s became %v (%v)", b, back, err)
		}
	}
	var a Amount
	if err := json.Unmarshal([]byte(`{"low":"few"}`), &a); err == nil {
		t.Error("words were read as an amount")
	}
	if a := AmountOf(freezes); math.Abs(a.Low-96.1) > 1e-9 || a.Middle != 105.5 {
		t.Errorf("amount of the sample: %v", a)
	}
	if a := Exactly(3).Times(2); a != (Amount{6, 6, 6}) {
		t.Errorf("twice three: %v", a)
	}
}
