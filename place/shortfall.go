package place

import (
	"math"

	"eyeup/quantity"
)

// MeanShort returns by how much, in the mean, a temperature that swings normally about its
// mean lies below a level, 0 counted while it is above: the heat of a month by hand is the
// loss times this times its hours. With z = (level − mean)/spread it is
// spread·(z·Φ(z) + φ(z)). A spread of 0 or less is taken as none.
func MeanShort(level, mean quantity.Temperature, spread quantity.Difference) quantity.Difference {
	below := level.Sub(mean)
	if !(spread > 0) {
		return max(below, 0)
	}
	z := float64(below / spread)
	share := math.Erfc(-z/math.Sqrt2) / 2
	density := math.Exp(-z*z/2) / math.Sqrt(2*math.Pi)
	return spread * quantity.Difference(z*share+density)
}
