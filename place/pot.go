package place

import "math"

// pot is the mix in a pot on the bench. It follows the air with a lag and is warmed by the sun
// on it:
//
//	T(t+1h) = in + (T(t) − in)·e^(−1h/lag),  in = air + sunny·sun
//
// In two measured tunnels the mix was 2 to 3 K above the air over a year, and a lag of four to
// eight hours fitted best, with an error of 3 to 4 K (Brentarolli et al., universities of
// Verona and Padua, open data): read a pot's temperature as ±3 K.
type pot struct {
	keep  float64 // share of the difference that remains after an hour
	sunny float64 // K per W/m² inside
	now   float64 // °C
}

func newPot(hours, sunny, start float64) pot {
	return pot{keep: math.Exp(-1 / hours), sunny: sunny, now: start}
}

// follow advances the pot by an hour with the given mean air and sun, and returns its
// temperature.
func (p *pot) follow(air, sun float64) float64 {
	in := air + p.sunny*sun
	p.now = in + (p.now-in)*p.keep
	return p.now
}

// warmPot is a pot on a warm bench whose thermostat measures the roots.
type warmPot struct {
	pot
	root      float64 // temperature held, °C
	perKelvin float64 // W/K of the whole bench
	most      float64 // W
}

func newWarmPot(p pot, w *WarmBench) warmPot {
	return warmPot{p, w.Root.Celsius(), value("body", "bench.per_kelvin") * float64(w.Area), float64(w.Power)}
}

// asks returns the power that brings the roots to their temperature by the end of the hour,
// limited to what the bench can give. air is the temperature at the start.
func (w *warmPot) asks(air, sun float64) float64 {
	needed := (w.root-w.now*w.keep)/(1-w.keep) - air - w.sunny*sun
	return min(max(needed*w.perKelvin, 0), w.most)
}

// warmed advances the pot by an hour with the given bench power.
func (w *warmPot) warmed(air, sun, power float64) float64 {
	return w.follow(air+power/w.perKelvin, sun)
}
