package solve

import (
	"fmt"
	"math"
)

// Bound returns the lower bound on the cost of the programme that follows from a dual price on
// each row. It holds for any prices, whoever found them: a positive price is paid for the
// row's Low, a negative one for its High, and each column then takes its better bound (weak
// duality). It is -Inf if a price or a reduced cost meets an infinite limit. Optimal prices
// give the optimum of the linear relaxation. All sums are rounded downwards.
//
// Source: Neumaier and Shcherbina, Safe bounds in linear and mixed-integer linear programming,
// Mathematical Programming 99 (2004), 283-296.
func (p *Programme) Bound(prices []float64) (float64, error) {
	if len(prices) != len(p.Rows) {
		return 0, fmt.Errorf("%d prices for %d rows; give one per row", len(prices), len(p.Rows))
	}
	left := make([]between, len(p.Columns))
	for i, c := range p.Columns {
		left[i] = exactly(c.Cost)
	}
	total := exactly(p.Offset)
	for i, r := range p.Rows {
		price := prices[i]
		if !finite(price) {
			return 0, fmt.Errorf("the price of row %d%s is %v; give a finite one", i, named(r.Name), price)
		}
		if price == 0 {
			continue
		}
		total = total.plus(least(exactly(price), r.Low, r.High))
		for _, t := range r.Terms {
			left[t.Column] = left[t.Column].minus(exactly(price).times(t.Factor))
		}
	}
	for i, c := range p.Columns {
		total = total.plus(least(left[i], c.Low, c.High))
	}
	return total.low, nil
}

// least returns a lower bound on rate × x for x from low to high.
func least(rate between, low, high float64) between {
	worst := math.Inf(1)
	for _, r := range []float64{rate.low, rate.high} {
		for _, x := range []float64{low, high} {
			switch {
			case r == 0:
				worst = math.Min(worst, 0)
			case r > 0 && x == low, r < 0 && x == high:
				worst = math.Min(worst, productBelow(r, x))
			}
		}
	}
	return between{worst, worst}
}
