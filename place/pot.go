package place

import "math"

// pot is the mix in a pot on the bench: it follows the air with a lag and is warmed by the
// sun that falls on it,
//
//	T(t+1h) = in + (T(t) − in)·e^(−1h/lag),  in = air + sunny·sun
//
// In two measured tunnels the mix ran 2 to 3 K above the air over a year and a lag of four
// to eight hours served best, with 3 to 4 K of error left (Brentarolli et al., universities
// of Verona and Padua, open data): read a pot's temperature to ±3 K.
type pot struct {
	keep  float64 // share of the distance left after an hour
	sunny float64 // K for each W/m² inside
	now   float64 // °C
}

func newPot(hours, sunny, start float64) pot {
	return pot{keep: math.Exp(-1 / hours), sunny: sunny, now: start}
}

// follow takes the pot through an hour whose mean air and sun are given, and returns it.
func (p *pot) follow(air, sun float64) float64 {
	in := air + p.sunny*sun
	p.now = in + (p.now-in)*p.keep
	return p.now
}

// warmPot is a pot on a warm bench with a thermostat among the roots.
type warmPot struct {
	pot
	root      float64 // what is held, °C
	perKelvin float64 // W/K of the whole bench
	most      float64 // W
}

func newWarmPot(p pot, w *WarmBench) warmPot {
	return warmPot{p, w.Root.Celsius(), value("body", "bench.per_kelvin") * float64(w.Area), float64(w.Power)}
}

// asks returns the power that brings the roots to their temperature by the end of the
// hour, within what the bench can give. Air is as it stands at the beginning.
func (w *warmPot) asks(air, sun float64) float64 {
	needed := (w.root-w.now*w.keep)/(1-w.keep) - air - w.sunny*sun
	return min(max(needed*w.perKelvin, 0), w.most)
}

// warmed takes the pot through an hour in which the bench gave so much power.
func (w *warmPot) warmed(air, sun, power float64) float64 {
	return w.follow(air+power/w.perKelvin, sun)
}
