package outlook

import (
	"math"
	"math/rand/v2"

	"eyeup/culture"
	"eyeup/odds"

	"gonum.org/v1/gonum/stat/distuv"
)

// pieces is a gamma belief about the mean number of good divisions from a clump, as if clumps
// had given good.
type pieces struct{ good, clumps float64 }

var (
	// varietySpread is how much varieties of a kind differ in divisions per clump, as a share
	// of the mean.
	varietySpread = culture.Usual("divide.varieties")

	// uneven is the variance over the mean between clumps of one variety; chance alone gives 1.
	uneven = culture.Usual("divide.uneven")
)

// oneInTen is the number of standard deviations between the median and the 10 % quantile.
const oneInTen = 1.2815515655446004

// yields are the beliefs about divisions per clump, by kind and by variety.
type yields struct {
	kinds     map[string]float64
	varieties map[sort]pieces
	divided   map[sort]int
}

// tally is the sum of a variety's divisions.
type tally struct{ clumps, good float64 }

// yields estimates divisions per clump from the book, for the kind and for each variety, which
// is shrunk towards its kind.
func (r *reckoning) yields() *yields {
	y := &yields{map[string]float64{}, map[sort]pieces{}, map[sort]int{}}
	seen := map[sort]tally{}
	for _, d := range r.Book.Yields() {
		key := sort{d.Kind, d.Variety}
		t := seen[key]
		seen[key] = tally{t.clumps + float64(d.Clumps), t.good + float64(d.Good)}
		y.divided[key] += d.Clumps
	}
	for _, key := range r.order {
		mean, known := y.kinds[key.kind]
		if !known {
			mean = r.kindMean(key.kind, seen)
			y.kinds[key.kind] = mean
		}
		if mean > 0 {
			shape := 1 / (varietySpread * varietySpread)
			y.varieties[key] = pieces{shape + seen[key].good/uneven, shape/mean + seen[key].clumps/uneven}
		}
	}
	return y
}

// kindMean returns the mean divisions per clump of a kind in this garden: the figure of
// package culture weighed against each variety's own by precision. It is 0 for kinds that are
// not divided.
func (r *reckoning) kindMean(name string, seen map[sort]tally) float64 {
	kind, known := r.Kinds(name)
	if !known {
		return 0
	}
	f, known := kind.Figure("divide.pieces")
	if !known {
		return 0
	}
	weight := 1 / square(spreadOf(f))
	sum := f.Value * weight
	for key, t := range seen {
		if key.kind == name && t.clumps > 0 {
			w := 1 / (square(varietySpread*f.Value) + uneven*f.Value/t.clumps)
			weight, sum = weight+w, sum+w*t.good/t.clumps
		}
	}
	return sum / weight
}

// spreadOf returns a figure's standard deviation; its range is taken as the 10 % to 90 %
// quantiles.
func spreadOf(f culture.Figure) float64 { return (f.High - f.Low) / (2 * oneInTen) }

func square(x float64) float64 { return x * x }

// amount returns the mean number of good divisions from a clump, with its uncertainty.
func (p pieces) amount() odds.Amount {
	if p.clumps == 0 {
		return odds.Amount{}
	}
	g := distuv.Gamma{Alpha: p.good, Beta: p.clumps}
	return odds.Amount{Low: g.Quantile(0.1), Middle: g.Quantile(0.5), High: g.Quantile(0.9)}
}

// draw draws a random number of good divisions from the given clumps.
func (p pieces) draw(clumps int, chance *rand.Rand) int {
	if clumps == 0 || p.clumps == 0 {
		return 0
	}
	mean := distuv.Gamma{Alpha: p.good, Beta: p.clumps, Src: chance}.Rand() * float64(clumps)
	// Clumps differ more than by chance: draw their sum from a gamma with its mean and the
	// variance beyond that of the Poisson.
	extra := uneven - 1
	mean = distuv.Gamma{Alpha: math.Max(mean/extra, 1e-9), Beta: 1 / extra, Src: chance}.Rand()
	return int(distuv.Poisson{Lambda: mean, Src: chance}.Rand())
}
