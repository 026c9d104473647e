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

// vents are how the house stands open for an hour.
type vents struct {
	now    *stride // as it stands
	open   *stride // as it would with vents that a thermostat opens; nil: there are none
	byHand float64 // conductance of vents opened by hand, part of now, W/K
}

// handVent is where the grower left the vents on the last visit.
type handVent struct {
	conductance float64
	stride      stride // with the vents so
}

// The hours by the sun's clock at which a grower who vents by hand comes by. In the morning
// and at noon the vents are opened as far as holds their temperature for that hour, and
// left so until the next visit; towards evening they are shut. Chosen.
const morning, noon, evening = 8, 12, 17

// vents returns how the house stands open in an hour, the grower's visit at its beginning.
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
