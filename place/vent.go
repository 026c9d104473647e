package place

import "math"

// ventPrecision is how closely the vents hold the temperature at which they open, in K.
const ventPrecision = 1e-4

// ventToHold returns the conductance of the vents, between nothing and fully open, which
// ends the step with the air at the temperature at which they open; and that end, and the
// mean. Where even open vents leave it warmer than that, they are open.
//
// A conductance v lets out the heat v·(mean − out). Each trial takes the heat that would
// have brought the last one to the right end and asks which conductance lets it out; a
// trial that leaves what is known to hold the answer is replaced by the middle of that.
func (h *house) ventToHold(shut, open *stride, x twin, d drive) (v float64, end, mean twin) {
	end, mean = open.step(x, d)
	if end.air >= h.opens {
		return h.ventMost, end, mean
	}
	least, most := 0.0, h.ventMost
	s := *shut
	end, mean = s.step(x, d)
	for range 60 {
		heat := s.heatToEnd(h.opens, end.air)
		_, held := s.heated(end, mean, heat)
		next := (v*(mean.air-d.out) - heat) / (held.air - d.out)
		if !(next > least && next < most) {
			next = (least + most) / 2
		}
		v = next
		losing := shut.pair
		losing.airLoss += v
		s = strideOf(losing, hour)
		end, mean = s.step(x, d)
		switch miss := end.air - h.opens; {
		case math.Abs(miss) < ventPrecision:
			return v, end, mean
		case miss > 0:
			least = v
		default:
			most = v
		}
	}
	return v, end, mean
}
