package solve

import (
	"context"
	"math"
	"testing"
)

// TestDrawnIn holds bounds to what follows by hand from the rows beside them.
func TestDrawnIn(t *testing.T) {
	inf := math.Inf(1)
	p := &Programme{
		Columns: []Column{
			{Name: "trays", Cost: -1, Low: 0.4, High: 5.7, Whole: true},
			{Name: "hired", Cost: 9, High: inf},           // 3 × trays - hired ≤ 6: 9 at most
			{Name: "sold", Cost: -2, High: inf},           // 2 × sold - trays ≤ 0: 5/2 at most
			{Name: "bought", Cost: 1, High: inf},          // trays + 2 × bought ≥ 8: 7/2 at most
			{Name: "given back", Cost: -4, Low: -inf},     // trays + 2 × given back ≤ -3: never below -4
			{Name: "open", Cost: 0, Low: -inf, High: inf}, // 0 ≤ open - trays ≤ 4
		},
		Rows: []Row{
			{Low: -inf, High: 6, Terms: []Term{{0, 3}, {1, -1}}},
			{Low: -inf, High: 0, Terms: []Term{{0, -1}, {2, 2}}},
			{Low: 8, High: inf, Terms: []Term{{0, 1}, {3, 2}}},
			{Low: -inf, High: -3, Terms: []Term{{0, 1}, {4, 2}}},
			{Low: 0, High: 4, Terms: []Term{{0, -1}, {5, 1}}},
		},
	}
	drawn, possible := p.DrawnIn()
	if !possible {
		t.Fatal("called impossible")
	}
	want := [][2]float64{{1, 5}, {0, 9}, {0, 2.5}, {0, 3.5}, {-4, 0}, {1, 9}}
	for j, w := range want {
		c := drawn.Columns[j]
		if math.Abs(c.Low-w[0]) > 1e-7 || math.Abs(c.High-w[1]) > 1e-7 {
			t.Errorf("%s from %v to %v, want %v to %v", c.Name, c.Low, c.High, w[0], w[1])
		}
		if c.High < w[1] || c.Low > w[0] {
			t.Errorf("%s from %v to %v is drawn in too far", c.Name, c.Low, c.High)
		}
	}
	if p.Columns[1].High != inf {
		t.Error("the programme itself was changed")
	}
}

// TestPricesOfChoicesInPairs holds the pricing to a choice whose units count twice. By hand:
// of two sorts, worth 5 and 3 a unit, four units in all (twice that is 8), and a bench that
// holds three of the first: three and one, for 18; without the bench's limit, 20.
func TestPricesOfChoicesInPairs(t *testing.T) {
	p := &Programme{Columns: []Column{{Cost: -5, High: 4, Whole: true}, {Cost: -3, High: 4, Whole: true}}}
	p.Row(Row{Low: 8, High: 8, Terms: []Term{{0, 2}, {1, 2}}})
	p.Row(Row{Low: math.Inf(-1), High: 0.75, Terms: []Term{{0, 0.25}}})
	a, err := Plain(context.Background(), p, Limits{}, nil)
	if err != nil || math.Abs(a.Objective+18) > 1e-9 || a.Bound < -18.05 {
		t.Errorf("%+v, %v; want -18", a, err)
	}
	p.Rows = p.Rows[:1]
	if a, err = Plain(context.Background(), p, Limits{}, nil); err != nil || a.State != Proved || a.Objective != -20 {
		t.Errorf("%+v, %v; want -20, proved by the choice alone", a, err)
	}
}
