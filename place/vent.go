package place

import "math"

// ventPrecision is how closely the vents hold their opening temperature, in K.
const ventPrecision = 1e-4

// ventToHold returns the conductance of the vents, between 0 and fully open, with which the
// air ends the step at the opening temperature, and the resulting end and mean. If the air is
// too warm even with open vents, they are fully open.
//
// A conductance v lets out the heat v·(mean − out). Each iteration takes the heat that would
// have given the right end and computes the conductance for it. If that leaves the interval
// known to contain the answer, the iteration uses the middle of the interval.
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
		s = shut.losing(shut.airLoss + v)
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

// vents is how far the house is open for an hour.
type vents struct {
	now    *stride // with the vents as they are
	open   *stride // with fully open thermostatic vents; nil: none
	byHand float64 // conductance of vents opened by hand, part of now, W/K
}

// handVent is how the grower left the vents on the last visit.
type handVent struct {
	conductance float64
	stride      stride // with those vents
}

// The hours (solar time) at which a grower who vents by hand visits. In the morning and at
// noon the vents are set to hold their temperature for that hour and stay so until the next
// visit; towards evening they are shut. Our choice.
const morning, noon, evening = 8, 12, 17

// vents returns how far the house is open in an hour. The grower's visit is at its start.
func (r *run) vents(clock int, d drive, night bool) vents {
	h := r.house
	v := vents{now: &h.day, open: &h.openDay}
	if night {
		v = vents{now: &h.night, open: &h.openNight}
	}
	if h.ventMost == 0 {
		v.open = nil
	}
	if !h.byHand {
		return v
	}
	switch clock {
	case morning, noon:
		r.hand = handVent{}
		if end, _ := h.day.step(r.real.twin, d); end.air > h.opens && h.ventMost > 0 {
			r.hand.conductance, _, _ = h.ventToHold(&h.day, &h.openDay, r.real.twin, d)
			r.hand.stride = h.day.losing(h.day.airLoss + r.hand.conductance)
		}
	case evening:
		r.hand = handVent{}
	}
	v.open = nil
	if r.hand.conductance > 0 {
		v.now, v.byHand = &r.hand.stride, r.hand.conductance
	}
	return v
}
