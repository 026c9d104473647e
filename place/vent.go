package place

import "math"

// ventToHold returns the conductance, between nothing and most, that ends the hour with
// the air at the temperature at which the vents open, and the stride with it. The end
// falls as the vent opens as long as it is warmer inside than out; where even the open
// vent leaves it warmer than that, the vent is open.
func (h *house) ventToHold(shut, open *stride, x twin, d drive, free twin) (float64, stride) {
	end, _ := open.step(x, d)
	if end.air >= h.opens {
		return h.ventMost, *open
	}
	low, high := 0.0, h.ventMost
	over, under := free.air-h.opens, end.air-h.opens
	var s stride
	var v float64
	for range 60 {
		v = high - under*(high-low)/(under-over)
		p := shut.pair
		p.airLoss += v
		s = strideOf(p, hour)
		end, _ = s.step(x, d)
		miss := end.air - h.opens
		switch {
		case math.Abs(miss) < ventPrecision:
			return v, s
		case miss > 0:
			low, over = v, miss
			under /= 2 // the Illinois rule: no side may stay for ever
		default:
			high, under = v, miss
			over /= 2
		}
	}
	return v, s
}

// ventPrecision is how closely the vent holds its temperature, in K.
const ventPrecision = 1e-6
