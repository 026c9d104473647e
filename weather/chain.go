package weather

import (
	"fmt"
	"math/rand/v2"

	"gonum.org/v1/gonum/mat"
)

// Correlations of daily weather with itself, on the same day and on the day after, in
// the order high, low, sun: averages over 31 stations of the United States (Richardson
// 1981, Water Resources Research 17:182, as its generator and its successors carry
// them). One set stands for all months and places.
var (
	sameDay = mat.NewSymDense(3, []float64{
		1, 0.633, 0.186,
		0.633, 1, -0.193,
		0.186, -0.193, 1,
	})
	dayAfter = mat.NewDense(3, 3, []float64{
		0.621, 0.445, 0.087,
		0.563, 0.674, -0.100,
		0.015, -0.091, 0.251,
	})
)

// chain generates autocorrelated values of mean 0 and variance 1: x(t) = A x(t-1) + B e, with
// e independent and normal; high first, then low.
type chain struct {
	a, b, root pair // root is the lower triangle whose square is the correlation of one day
	chance     *rand.Rand
	x          [2]float64
}

// pair is a matrix of two rows and columns.
type pair [2][2]float64

func pairOf(m mat.Matrix) pair {
	return pair{{m.At(0, 0), m.At(0, 1)}, {m.At(1, 0), m.At(1, 1)}}
}

func (p pair) times(x [2]float64) [2]float64 {
	return [2]float64{p[0][0]*x[0] + p[0][1]*x[1], p[1][0]*x[0] + p[1][1]*x[1]}
}

// coefficients returns A = M1 M0⁻¹ and the lower triangular B with BBᵀ = M0 - A M1ᵀ, which
// give the chain those correlations. It fails if no chain has them.
func coefficients(m0 *mat.SymDense, m1 mat.Matrix) (a, b *mat.Dense, err error) {
	n := m0.SymmetricDim()
	var inverse, left mat.Dense
	if err := inverse.Inverse(m0); err != nil {
		return nil, nil, fmt.Errorf("the same-day correlations are not positive definite: %w", err)
	}
	a = mat.NewDense(n, n, nil)
	a.Mul(m1, &inverse)
	left.Mul(a, m1.T())
	left.Sub(m0, &left)
	square := mat.NewSymDense(n, nil)
	for i := range n {
		for j := i; j < n; j++ {
			square.SetSym(i, j, (left.At(i, j)+left.At(j, i))/2)
		}
	}
	var root mat.Cholesky
	if !root.Factorize(square) {
		return nil, nil, fmt.Errorf("no chain of days has these correlations")
	}
	var lower mat.TriDense
	root.LTo(&lower)
	return a, mat.DenseCopyOf(&lower), nil
}

// newChain starts a stationary chain of highs and lows. It uses only their part of the
// correlations and computes A and B from it; dropping the row of sun from A and B would change
// the correlations of the other two.
func newChain(chance *rand.Rand) *chain {
	m0 := mat.NewSymDense(2, nil)
	m0.CopySym(sameDay)
	a, b, err := coefficients(m0, dayAfter.Slice(0, 2, 0, 2))
	var root mat.Cholesky
	if err != nil || !root.Factorize(m0) {
		panic("weather: no chain has the published correlations")
	}
	var lower mat.TriDense
	root.LTo(&lower)
	c := &chain{a: pairOf(a), b: pairOf(b), root: pairOf(&lower), chance: chance}
	c.start()
	return c
}

// start restarts the chain independently of earlier days.
func (c *chain) start() { c.x = c.root.times(c.noise()) }

func (c *chain) noise() [2]float64 {
	return [2]float64{c.chance.NormFloat64(), c.chance.NormFloat64()}
}

// next returns the high and the low of the next day, in standard deviations from normal.
func (c *chain) next() (high, low float64) {
	kept, fresh := c.a.times(c.x), c.b.times(c.noise())
	c.x = [2]float64{kept[0] + fresh[0], kept[1] + fresh[1]}
	return c.x[0], c.x[1]
}

// monthVariance returns the variance of a 30-day mean of the chain, of highs and of lows: how
// much months vary between years by the chain alone.
func (c *chain) monthVariance() (high, low float64) {
	const days = 30
	same := sameDay.At(0, 1)
	h, l := [2]float64{1, same}, [2]float64{same, 1} // correlation of day t with highs, with lows
	high, low = 1, 1
	for lag := 1; lag < days; lag++ {
		h, l = c.a.times(h), c.a.times(l)
		share := 2 * float64(days-lag) / days
		high += share * h[0]
		low += share * l[1]
	}
	return high / days, low / days
}
