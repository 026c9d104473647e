package solve

import (
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// exact returns a number in exact arithmetic; math/big is the outside witness here.
func exact(x float64) *big.Rat { return new(big.Rat).SetFloat64(x) }

// tight holds that b encloses want, and by no more than two steps of the scale.
func tight(t *rapid.T, what string, b between, want *big.Rat) {
	if exact(b.low).Cmp(want) > 0 || exact(b.high).Cmp(want) < 0 {
		t.Fatalf("%s: %v to %v does not enclose %v", what, b.low, b.high, want.FloatString(30))
	}
	if up(up(b.low)) < b.high {
		t.Fatalf("%s: %v to %v is wider than rounding asks", what, b.low, b.high)
	}
}

func TestSumsAndProductsEnclose(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := rapid.Float64Range(-1e12, 1e12)
		a, b := number.Draw(t, "a"), number.Draw(t, "b")
		tight(t, "sum", exactly(a).plus(exactly(b)), new(big.Rat).Add(exact(a), exact(b)))
		tight(t, "difference", exactly(a).minus(exactly(b)), new(big.Rat).Sub(exact(a), exact(b)))
		tight(t, "product", exactly(a).times(b), new(big.Rat).Mul(exact(a), exact(b)))
	})
}

func TestWholeNumbersStayExact(t *testing.T) {
	if got := exactly(7).times(-3).plus(exactly(21)); got != (between{}) {
		t.Errorf("7 × -3 + 21 lies %v to %v, want exactly 0", got.low, got.high)
	}
	tenths := exactly(0.1).plus(exactly(0.2))
	if !(tenths.low < tenths.high) {
		t.Errorf("0.1 + 0.2 is told exactly: %v", tenths)
	}
}

func TestInfiniteStaysInfinite(t *testing.T) {
	all := between{math.Inf(-1), math.Inf(1)}
	if got := all.times(-2).plus(exactly(1)); got != all {
		t.Errorf("anything × -2 + 1 lies %v to %v, want anything", got.low, got.high)
	}
}
