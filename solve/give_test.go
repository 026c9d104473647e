package solve

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// TestGiveIsBest holds what a row does by itself to weak duality: a programme of that row
// and its own columns alone, less what the others sum to, has one price, which is nothing or
// the rate of one of the columns; the best of these bounds is what the give costs.
func TestGiveIsBest(t *testing.T) {
	kept, not := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		tenth := func(name string, low, high int) float64 {
			return float64(rapid.IntRange(low, high).Draw(t, name)) / 10
		}
		p := &Programme{}
		var terms []Term
		for range rapid.IntRange(1, 4).Draw(t, "columns") {
			low := tenth("low", -30, 30)
			j := p.Column(Column{Cost: tenth("cost", -50, 50), Low: low, High: low + tenth("room", 0, 60)})
			factor := tenth("factor", 1, 30)
			if rapid.Bool().Draw(t, "falling") {
				factor = -factor
			}
			terms = append(terms, Term{j, factor})
		}
		low := tenth("least", -100, 100)
		p.Row(Row{Low: low, High: low + tenth("spare", 0, 50), Terms: terms})
		sum := tenth("sum", -200, 200)

		values := make([]float64, len(p.Columns))
		rows, owned, ok := (&shape{q: p, parts: byColumn(p), group: []int{-1, -1, -1, -1}}).gives(values)
		if !ok || !owned[0] {
			t.Fatal("the columns are not the row's own")
		}
		cost, over := rows[0].cost(sum)
		idle := p.Cost(values)
		rows[0].settle(sum, values)
		p.Rows[0].Low, p.Rows[0].High = p.Rows[0].Low-sum, p.Rows[0].High-sum // what its own columns must make up
		v, err := p.Check(values)
		if err != nil {
			t.Fatal(err)
		}
		if over > 1e-9 {
			not++
			if p, possible := p.DrawnIn(); possible && over > 1e-6 {
				t.Fatalf("%v over, but %+v can be kept", over, p.Rows[0])
			}
			return
		}
		kept++
		if v.Overstep > 1e-9 || math.Abs(p.Cost(values)-idle-cost) > 1e-9 {
			t.Fatalf("settled at %v, which oversteps %v and costs %v, not %v", values, v.Overstep, p.Cost(values), idle+cost)
		}
		if best := bestPrice(t, p); math.Abs(best-p.Cost(values)) > 1e-8 {
			t.Fatalf("settled for %v, but %v is proved", p.Cost(values), best)
		}
	})
	if !testing.Short() && (kept < 20 || not < 5) { // short runs draw a fifth
		t.Errorf("%d rows kept, %d not: draw others", kept, not)
	}
}

// bestPrice returns the highest bound that a price on the only row gives.
func bestPrice(t *rapid.T, p *Programme) float64 {
	prices := []float64{0}
	for _, term := range p.Rows[0].Terms {
		prices = append(prices, p.Columns[term.Column].Cost/term.Factor)
	}
	best := math.Inf(-1)
	for _, price := range prices {
		bound, err := p.Bound([]float64{price})
		if err != nil {
			t.Fatal(err)
		}
		best = math.Max(best, bound)
	}
	return best
}

func byColumn(p *Programme) [][]Term {
	parts := make([][]Term, len(p.Columns))
	for i, r := range p.Rows {
		for _, t := range r.Terms {
			parts[t.Column] = append(parts[t.Column], Term{i, t.Factor})
		}
	}
	return parts
}
