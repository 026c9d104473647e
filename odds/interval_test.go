package odds

import (
	"math"
	"testing"
)

// The figures are those of R 4.2.2: binom.test for the exact interval, qbeta for the
// one-sided bounds and Jeffreys, the score interval by its formula.
func TestIntervalsAgreeWithR(t *testing.T) {
	two := func(f func(k, n int, sure float64) (Interval, error)) func(k, n int) Interval {
		return func(k, n int) Interval { i, _ := f(k, n, 0.95); return i }
	}
	for _, c := range []struct {
		name     string
		of       func(k, n int) Interval
		k, n     int
		from, to float64
	}{
		{"exact", two(ClopperPearson), 7, 10, .34754715, .93326049},
		{"exact", two(ClopperPearson), 0, 10, 0, .30849711},
		{"exact", two(ClopperPearson), 10, 10, .69150289, 1},
		{"exact", two(ClopperPearson), 15, 20, .50895413, .91342853},
		{"exact", two(ClopperPearson), 42, 50, .70887369, .92829923},
		{"exact", two(ClopperPearson), 3, 100, .00622997, .08517605},
		{"exact", two(ClopperPearson), 0, 20, 0, .16843347},
		{"exact", two(ClopperPearson), 20, 20, .83156653, 1},
		{"score", two(Wilson), 7, 10, .39677815, .89220873},
		{"score", two(Wilson), 42, 50, .71485784, .91662579},
		{"Jeffreys", two(Jeffreys), 7, 10, .39418168, .90730541},
	} {
		got := c.of(c.k, c.n)
		if math.Abs(got.From-c.from) > 1e-6 || math.Abs(got.To-c.to) > 1e-6 {
			t.Errorf("%s interval of %d in %d: %.8f to %.8f, want %.8f to %.8f", c.name, c.k, c.n, got.From, got.To, c.from, c.to)
		}
	}
}

func TestOneSidedBoundsAgreeWithR(t *testing.T) {
	for _, c := range []struct {
		of   func(k, n int, sure float64) (float64, error)
		k, n int
		want float64
	}{
		{UpperBound, 0, 20, .13910834},
		{LowerBound, 15, 20, .5444176},
		{LowerBound, 42, 50, .72977992},
	} {
		got, err := c.of(c.k, c.n, 0.95)
		if err != nil || math.Abs(got-c.want) > 1e-6 {
			t.Errorf("bound of %d in %d: %.8f (%v), want %.8f", c.k, c.n, got, err, c.want)
		}
	}
}

// What defines the exact interval: were the share at its end, a count as far out as the
// one seen, or farther, would come with exactly half of the odds left out.
func TestExactIntervalEndsWhereTheTailsDo(t *testing.T) {
	for n := 1; n <= 40; n++ {
		for k := 0; k <= n; k++ {
			i, err := ClopperPearson(k, n, 0.9)
			if err != nil {
				t.Fatal(err)
			}
			if k > 0 && math.Abs(tail(n, k, n, i.From)-0.05) > 1e-9 {
				t.Errorf("%d of %d: the odds of as many at %.6f are %.9f", k, n, i.From, tail(n, k, n, i.From))
			}
			if k < n && math.Abs(tail(n, 0, k, i.To)-0.05) > 1e-9 {
				t.Errorf("%d of %d: the odds of as few at %.6f are %.9f", k, n, i.To, tail(n, 0, k, i.To))
			}
		}
	}
}

// tail adds up the binomial by the rule of Pascal's triangle alone.
func tail(n, from, to int, p float64) float64 {
	row := make([]float64, n+2)
	row[0] = 1
	for i := 1; i <= n; i++ {
		for k := i; k > 0; k-- {
			row[k] = row[k]*(1-p) + row[k-1]*p
		}
		row[0] *= 1 - p
	}
	sum := 0.0
	for k := from; k <= to; k++ {
		sum += row[k]
	}
	return sum
}

func TestIntervalsRefuseWhatIsNoCount(t *testing.T) {
	for _, c := range []struct {
		k, n int
		sure float64
	}{{-1, 10, .95}, {11, 10, .95}, {0, 0, .95}, {3, 10, 0}, {3, 10, 1}, {3, 10, 95}, {3, 10, math.NaN()}} {
		for _, f := range []func(k, n int, sure float64) (Interval, error){ClopperPearson, Wilson, Jeffreys} {
			if _, err := f(c.k, c.n, c.sure); err == nil {
				t.Errorf("%d of %d at %g passed", c.k, c.n, c.sure)
			}
		}
		if _, err := LowerBound(c.k, c.n, c.sure); err == nil {
			t.Errorf("lower bound of %d of %d at %g passed", c.k, c.n, c.sure)
		}
		if _, err := UpperBound(c.k, c.n, c.sure); err == nil {
			t.Errorf("upper bound of %d of %d at %g passed", c.k, c.n, c.sure)
		}
	}
}
