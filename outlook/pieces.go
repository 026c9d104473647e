package outlook

import (
	"math"
	"math/rand/v2"

	"eyeup/culture"
	"eyeup/odds"

	"gonum.org/v1/gonum/stat/distuv"
)

// pieces is what is believed of the good divisions from a clump: a gamma law of their
// mean, as though so many clumps had given so many.
type pieces struct{ good, clumps float64 }

var (
	// varietySpread is how much varieties of a kind differ in what a clump gives, as a
	// share of its mean.
	varietySpread = culture.Usual("divide.varieties")

	// uneven is how much more clumps of one variety differ than chance alone would have it
	// (variance over mean).
	uneven = culture.Usual("divide.uneven")
)

// oneInTen is how many standard deviations lie from the middle to one case in ten.
const oneInTen = 1.2815515655446004

// yields are what a clump gives, by kind and by variety.
type yields struct {
	kinds     map[string]float64
	varieties map[sort]pieces
	divided   map[sort]int
}

// tally adds up the dividings of a variety.
type tally struct{ clumps, good float64 }

// yields learns from the dividings of the book: what a clump of the kind gives, and of
// the variety, which is pulled towards it.
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

// kindMean is what a clump of a kind gives in this garden: the figure of package culture,
// weighed against each variety's own as sure as it is. It is 0 for kinds not divided.
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

// spreadOf is a figure's standard deviation, its range being one case in ten either way.
func spreadOf(f culture.Figure) float64 { return (f.High - f.Low) / (2 * oneInTen) }

func square(x float64) float64 { return x * x }

// amount is what a clump gives, with what is not known of its mean.
func (p pieces) amount() odds.Amount {
	if p.clumps == 0 {
		return odds.Amount{}
	}
	g := distuv.Gamma{Alpha: p.good, Beta: p.clumps}
	return odds.Amount{Low: g.Quantile(0.1), Middle: g.Quantile(0.5), High: g.Quantile(0.9)}
}

// draw draws how many good divisions so many clumps give.
func (p pieces) draw(clumps int, chance *rand.Rand) int {
	if clumps == 0 || p.clumps == 0 {
		return 0
	}
	mean := distuv.Gamma{Alpha: p.good, Beta: p.clumps, Src: chance}.Rand() * float64(clumps)
	// Clumps differ more than chance: a gamma of their sum with its mean and uneven times
	// its variance beyond the Poisson's own.
	extra := uneven - 1
	mean = distuv.Gamma{Alpha: math.Max(mean/extra, 1e-9), Beta: 1 / extra, Src: chance}.Rand()
	return int(distuv.Poisson{Lambda: mean, Src: chance}.Rand())
}
