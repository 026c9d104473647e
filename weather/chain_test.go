package weather

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"eyeup/odds"
)

// What the generators that carry Richardson's averages print for A and B; four public
// codes of the WGEN and SWAT families agree on them.
var (
	printedA = [3][3]float64{{0.567, 0.086, -0.002}, {0.253, 0.504, -0.050}, {-0.006, -0.039, 0.244}}
	printedB = [3][3]float64{{0.781, 0, 0}, {0.328, 0.637, 0}, {0.238, -0.341, 0.873}}
)

func TestPublishedCoefficients(t *testing.T) {
	a, b, err := coefficients(sameDay, dayAfter)
	if err != nil {
		t.Fatal(err)
	}
	// Computed from the same M0 and M1 in R, tolerance its print.
	ownA := [3][3]float64{{0.5672, 0.0856, -0.0020}, {0.2531, 0.5042, -0.0498}, {-0.0042, -0.0413, 0.2438}}
	ownB := [3][3]float64{{0.7809, 0, 0}, {0.3275, 0.6367, 0}, {0.2379, -0.3398, 0.8735}}
	for i := range 3 {
		for j := range 3 {
			near(t, "A as computed", a.At(i, j), ownA[i][j], 0.5e-4)
			near(t, "A as printed", a.At(i, j), printedA[i][j], 0.003)
			near(t, "B as computed", b.At(i, j), ownB[i][j], 0.5e-4)
			near(t, "B as printed", b.At(i, j), printedB[i][j], 0.002)
		}
	}
}

// A chain ends nowhere but in itself: the eigenvalues of the printed A are below 1. R's
// eigen() has them.
func TestChainIsStable(t *testing.T) {
	printed := mat.NewDense(3, 3, nil)
	for i, row := range printedA {
		printed.SetRow(i, row[:])
	}
	var e mat.Eigen
	if !e.Factorize(printed, mat.EigenNone) {
		t.Fatal("A has no eigenvalues")
	}
	for i, want := range []float64{0.68844, 0.39152, 0.23504} {
		near(t, "eigenvalue", largest(e.Values(nil), i), want, 1e-5)
	}
}

// largest returns the i-th largest of real eigenvalues.
func largest(values []complex128, i int) float64 {
	var s []float64
	for _, v := range values {
		s = append(s, real(v))
	}
	return odds.Sorted(s)[len(s)-1-i]
}

// Over 200,000 days the chain has the published correlations of highs and lows.
func TestChainHasThePublishedCorrelations(t *testing.T) {
	const days = 200_000
	c := newChain(odds.Stream(1, "test"))
	var mean, square [2]float64
	var same float64
	var next [2][2]float64
	last := c.x
	for range days {
		h, l := c.next()
		x := [2]float64{h, l}
		same += h * l / days
		for i := range x {
			mean[i] += x[i] / days
			square[i] += x[i] * x[i] / days
			for j := range last {
				next[i][j] += x[i] * last[j] / days
			}
		}
		last = x
	}
	near(t, "high and low of a day", same, 0.633, 0.01)
	for i := range 2 {
		near(t, "mean", mean[i], 0, 0.01)
		near(t, "variance", square[i], 1, 0.01)
		for j := range 2 {
			near(t, "the day after", next[i][j], dayAfter.At(i, j), 0.01)
		}
	}
}

// The variance of a monthly mean that the chain is said to have is the one it has.
func TestMonthVariance(t *testing.T) {
	c := newChain(odds.Stream(2, "test"))
	high, low := c.monthVariance()
	const months = 20_000
	var h2, l2 float64
	for range months {
		var h, l float64
		for range 30 {
			x, y := c.next()
			h, l = h+x/30, l+y/30
		}
		h2, l2 = h2+h*h/months, l2+l*l/months
	}
	near(t, "highs", h2/high, 1, 0.04)
	near(t, "lows", l2/low, 1, 0.04)
	if !(high > 1.0/30 && low < 1) || math.IsNaN(high+low) {
		t.Errorf("months vary by %g and %g of a day's variance", high, low)
	}
}

func TestNoChainForImpossibleCorrelations(t *testing.T) {
	m0 := mat.NewSymDense(2, []float64{1, 0, 0, 1})
	if _, _, err := coefficients(m0, mat.NewDense(2, 2, []float64{2, 0, 0, 2})); err == nil {
		t.Error("correlations of 2 made a chain")
	}
	one := mat.NewSymDense(2, []float64{1, 1, 1, 1})
	if _, _, err := coefficients(one, mat.NewDense(2, 2, []float64{0.5, 0, 0, 0.5})); err == nil {
		t.Error("a high and low that are one made a chain")
	}
}
