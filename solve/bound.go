package solve

import (
	"fmt"
	"math"
)

// Bound turns a price on each row into a cost below which no answer to the programme can
// lie. It holds for any prices, whoever found them: a price above nothing is paid for the
// row's Low, one below nothing for its High, and each column is then free to take the bound
// that suits it best (weak duality). It is -Inf when a price or what is left of a column's
// cost leans on a limit that is infinite. Best prices give the optimum of the programme
// without whole numbers. All sums are rounded downwards.
//
// Source: Neumaier and Shcherbina, Safe bounds in linear and mixed-integer linear
// programming, Mathematical Programming 99 (2004), 283-296.
func (p *Programme) Bound(prices []float64) (float64, error) {
	if len(prices) != len(p.Rows) {
		return 0, fmt.Errorf("%d prices for %d rows; give one a row", len(prices), len(p.Rows))
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

// least returns a number, known on its lower side, that rate × x never falls below while x
// lies from low to high.
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
