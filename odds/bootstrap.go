package odds

import (
	"fmt"
	"math/rand/v2"
)

// Bounds returns between which figures the type-8 quantile at share p of the whole may
// lie, with the given sureness, judged from this sample alone: so many samples of the
// same size are drawn from it by chance, and the outer quantiles of theirs are the
// bounds (the percentile bootstrap, Efron 1979, Annals of Statistics 7:1). "Never" among
// the figures may make a bound infinite. It fails for an empty sample, for p outside 0
// to 1, and for fewer than a hundred draws.
func (s Sample) Bounds(p, sure float64, draws int, chance *rand.Rand) (from, to float64, err error) {
	switch {
	case len(s) == 0:
		return 0, 0, fmt.Errorf("an empty sample has no bounds; give at least one figure")
	case !(p >= 0 && p <= 1):
		return 0, 0, fmt.Errorf("there is no quantile at share %g; give 0 to 1", p)
	case draws < 100:
		return 0, 0, fmt.Errorf("%d draws are too few to judge bounds by; give at least 100", draws)
	}
	if err := checkSure(sure); err != nil {
		return 0, 0, err
	}
	all := make([]float64, draws)
	drawn, times := make(Sample, len(s)), make([]int, len(s))
	for i := range all {
		s.draw(drawn, times, chance)
		all[i] = drawn.At(p)
	}
	quantiles := Sorted(all)
	return quantiles.At((1 - sure) / 2), quantiles.At((1 + sure) / 2), nil
}

// draw fills drawn, in rising order, with as many figures taken from s by chance.
func (s Sample) draw(drawn Sample, times []int, chance *rand.Rand) {
	clear(times)
	for range s {
		times[chance.IntN(len(s))]++
	}
	at := 0
	for i, n := range times {
		for range n {
			drawn[at] = s[i]
			at++
		}
	}
}
