package keeping

import (
	"errors"
	"fmt"
	"math"

	"eyeup/culture"
	"eyeup/odds"
	"eyeup/quantity"
)

// ErrFrozen is returned for a store in which roots freeze. What survives can only be found by
// checking the store.
var ErrFrozen = errors.New("roots freeze")

// Survival returns the share of stock, 0 to 1, that survives the spells from the day of
// packing. It fails as Loss does, with ErrUnknown for a kind whose usual success is not known,
// and with ErrFrozen.
//
// The usual success of the kind over a usual winter (culture's store.success, or the garden's
// own) gives a hazard. It is multiplied by a constant factor for every ten kelvin of warmth,
// and by a factor that rises with the humidity at the skin from usual to saturated. Stock is
// also lost by drying beyond a limit, which varies a little within a lot.
func Survival(s Stock, spells []Spell) (odds.Amount, error) {
	h, err := s.hazard()
	if err != nil {
		return odds.Amount{}, err
	}
	if err := checkSurvival(spells); err != nil {
		return odds.Amount{}, err
	}
	gone := h.over(spells)
	return odds.Amount{Low: math.Exp(-gone.High), Middle: math.Exp(-gone.Middle), High: math.Exp(-gone.Low)}, nil
}

func checkSurvival(spells []Spell) error {
	if err := checkAll(spells); err != nil {
		return err
	}
	limit := quantity.Celsius(figure("freezes").Value)
	for _, s := range spells {
		if s.Temperature.Below(limit) {
			return fmt.Errorf("%w at %.1f °C, and what survives can't be computed; check the store and note what is firm", ErrFrozen, s.Temperature.Celsius())
		}
	}
	return nil
}

// hazard holds the figures for the losses of a stock: those of parts, then its limits and rot.
type hazard struct{ figures []culture.Figure }

// The indices of a hazard's figures after those of parts.
const (
	driedOut = 4 + iota
	driedOutSpread
	rotWarmth
	rotWet
	rotWinter
	rotUsual
	rotDamp
	success
)

func (s Stock) hazard() (hazard, error) {
	parts, err := s.parts()
	if err != nil {
		return hazard{}, err
	}
	kind := s.Culture
	if kind == nil {
		kind, _ = culture.Lookup(s.Kind)
	}
	if kind == nil {
		return hazard{}, fmt.Errorf("how %s keeps in store: %w", s.Kind, ErrUnknown)
	}
	usual, ok := kind.Figure("store.success")
	if !ok {
		return hazard{}, fmt.Errorf("how much of %s usually survives a winter: %w", s.Kind, ErrUnknown)
	}
	return hazard{append(parts, figure("dried out"), figure("dried out spread"), figure("rot warmth"),
		figure("rot wet"), figure("rot winter"), figure("rot usual"), figure("rot damp"), usual)}, nil
}

// over returns the cumulative hazard over the spells: minus the logarithm of the share that
// survives.
func (h hazard) over(spells []Spell) odds.Amount {
	return inLogs(h.figures, func(x []float64) float64 { return heaped(x, spells) })
}

// middle returns the cumulative hazard with every figure at its value.
func (h hazard) middle(spells []Spell) float64 {
	x := make([]float64, len(h.figures))
	for i, f := range h.figures {
		x[i] = f.Value
	}
	return heaped(x, spells)
}

func heaped(x []float64, spells []Spell) float64 {
	rot := 0.0
	for _, s := range spells {
		rot += s.Days * -math.Log(x[success]) / x[rotWinter] *
			math.Pow(x[rotWarmth], (s.Temperature.Celsius()-x[rotUsual])/10) *
			(1 + (x[rotWet]-1)*wetness(atSkin(s.Humidity, x[3], x[1]), x[rotDamp]))
	}
	lost := lawOf(x).Lost(spells)
	alive := math.Erfc((lost-x[driedOut])/x[driedOutSpread]/math.Sqrt2) / 2
	return rot - math.Log(alive)
}

// atSkin returns the humidity of the air at the skin of packed stock, 0 to 1: the packing lets
// through only a part of the room's deficit. surface is the humidity at bare skin; times is
// the factor by which the packing reduces the loss.
func atSkin(room quantity.Share, surface, times float64) float64 {
	return surface - max(0, surface-float64(room))/times
}

// wetness is 0 where the air at the skin is as damp as usual or drier, and 1 where it is
// saturated.
func wetness(skin, usual float64) float64 { return max(0, skin-usual) / (1 - usual) }
