package solve

import (
	"math"
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// glass is a programme small enough to reckon by hand: three units of one thing and five of
// another are worth having, 4 of the first at most, 6 of the second, and 3 of the first with
// 2 of the second come to 18. By hand: two and six cost -36, and the prices 0, -3/2 and -1
// pay for -12 × 3/2 - 18 = -36 with nothing left of either cost, so neither can be bettered.
func glass(whole bool) *Programme {
	inf := math.Inf(1)
	p := &Programme{}
	a := p.Column(Column{Name: "first", Cost: -3, High: inf, Whole: whole})
	b := p.Column(Column{Name: "second", Cost: -5, High: inf, Whole: whole})
	p.Row(Row{Low: -inf, High: 4, Terms: []Term{{a, 1}}})
	p.Row(Row{Low: -inf, High: 12, Terms: []Term{{b, 2}}})
	p.Row(Row{Name: "together", Low: -inf, High: 18, Terms: []Term{{a, 3}, {b, 2}}})
	return p
}

func TestValuesAndPricesProveEachOther(t *testing.T) {
	p := glass(false)
	v, err := p.Check([]float64{2, 6})
	if err != nil || v.Least != -36 || v.Most != -36 || !v.Holds(0) {
		t.Errorf("%+v, %v", v, err)
	}
	for _, c := range []struct {
		prices []float64
		want   float64
	}{
		{[]float64{0, -1.5, -1}, -36},
		{[]float64{-3, -2.5, 0}, -42}, // 4 × 3 + 12 × 5/2
		{[]float64{0, 0, -2.5}, -45},  // 18 × 5/2; the first is dearer than it is worth, and left
		{[]float64{0, -1, -1}, math.Inf(-1)},
	} {
		if got, err := p.Bound(c.prices); err != nil || got != c.want {
			t.Errorf("prices %v give %v, %v, want %v", c.prices, got, err, c.want)
		}
	}
	if _, err := p.Bound([]float64{1}); err == nil {
		t.Error("one price for three rows is taken")
	}
	if _, err := p.Bound([]float64{0, math.NaN(), 0}); err == nil {
		t.Error("a price that is not a number is taken")
	}
}

func TestCheckFindsWhatIsOverstepped(t *testing.T) {
	p := glass(true)
	for _, c := range []struct {
		values   []float64
		overstep float64
		where    string
		fraction float64
	}{
		{[]float64{4, 6}, 6.0 / 18, "row 2 (together)", 0},
		{[]float64{-1, 6}, 1, "column 0 (first)", 0},
		{[]float64{2, 5.5}, 0, "", 0.5},
		{[]float64{2, 6 + 1e-9}, 2e-9 / 12, "row 1", 1e-9},
	} {
		v, err := p.Check(c.values)
		if err != nil || math.Abs(v.Overstep-c.overstep) > 1e-12 || !strings.Contains(v.Where, c.where) || math.Abs(v.Fraction-c.fraction) > 1e-12 {
			t.Errorf("%v: %+v, %v; want %+v", c.values, v, err, c)
		}
	}
	for _, values := range [][]float64{{1}, {1, math.NaN()}, {math.Inf(1), 0}} {
		if _, err := p.Check(values); err == nil {
			t.Errorf("%v is taken", values)
		}
	}
}

// drawnProgramme draws any sound programme with tenths for figures, and values within its
// bounds that keep all its rows.
func drawnProgramme(t *rapid.T) (*Programme, []float64) {
	figure := rapid.Map(rapid.IntRange(-300, 300), func(i int) float64 { return float64(i) / 10 })
	p := &Programme{Offset: figure.Draw(t, "offset")}
	var values []float64
	for range rapid.IntRange(1, 6).Draw(t, "columns") {
		x, below, above := figure.Draw(t, "value"), math.Abs(figure.Draw(t, "below")), math.Abs(figure.Draw(t, "above"))
		c := Column{Cost: figure.Draw(t, "cost"), Low: x - below, High: x + above}
		if rapid.Bool().Draw(t, "open") {
			c.High = math.Inf(1)
		}
		p.Column(c)
		values = append(values, x)
	}
	for range rapid.IntRange(0, 5).Draw(t, "rows") {
		r := Row{Low: math.Inf(-1), High: math.Inf(1)}
		sum := 0.0
		for j, x := range values {
			f := figure.Draw(t, "factor")
			r.Terms = append(r.Terms, Term{j, f})
			sum += f * x
		}
		if rapid.Bool().Draw(t, "least") {
			r.Low = sum - math.Abs(figure.Draw(t, "spare")) - 1e-9*math.Abs(sum)
		}
		if rapid.Bool().Draw(t, "most") {
			r.High = sum + math.Abs(figure.Draw(t, "spare")) + 1e-9*math.Abs(sum)
		}
		p.Row(r)
	}
	return p, values
}

// TestAnyPricesBound holds weak duality in exact arithmetic: whatever the prices, no values
// that keep the programme cost less than the bound.
func TestAnyPricesBound(t *testing.T) {
	finiteOnes := 0
	rapid.Check(t, func(t *rapid.T) {
		p, values := drawnProgramme(t)
		prices := make([]float64, len(p.Rows))
		for i := range prices {
			prices[i] = rapid.Float64Range(-20, 20).Draw(t, "price")
		}
		bound, err := p.Bound(prices)
		if err != nil {
			t.Fatal(err)
		}
		if math.IsInf(bound, -1) {
			return
		}
		finiteOnes++
		cost := exact(p.Offset)
		for j, c := range p.Columns {
			cost.Add(cost, new(big.Rat).Mul(exact(c.Cost), exact(values[j])))
		}
		if exact(bound).Cmp(cost) > 0 {
			t.Fatalf("bound %v above the cost %v of values that keep the programme", bound, cost.FloatString(20))
		}
		v, err := p.Check(values)
		if err != nil || exact(v.Least).Cmp(cost) > 0 || exact(v.Most).Cmp(cost) < 0 {
			t.Fatalf("cost between %v and %v, exactly %v, %v", v.Least, v.Most, cost.FloatString(20), err)
		}
	})
	if finiteOnes == 0 {
		t.Error("no bound was finite: draw other programmes")
	}
}
