package place

import (
	"math"

	"eyeup/quantity"
)

// MeanShort returns the mean shortfall below a level of a temperature that varies normally
// about its mean; hours above the level count as 0. The heat of a month by hand is the heat
// loss times this times the hours. With z = (level − mean)/spread it is spread·(z·Φ(z) +
// φ(z)). A spread of 0 or less counts as none.
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
