package keeping

import (
	"errors"
	"fmt"
	"math"

	"eyeup/culture"
	"eyeup/odds"
	"eyeup/quantity"
)

// ErrFrozen is returned for a store in which roots freeze: what comes through then is a
// matter of going to look.
var ErrFrozen = errors.New("roots freeze")

// Survival returns the share of stock, 0 to 1, that comes through the spells from being
// packed. It fails as Loss does; with ErrUnknown for a kind whose usual success is not
// known; and with ErrFrozen.
//
// The usual success of the kind over a usual winter (culture's store.success, or the garden's own) gives a
// hazard. It is multiplied for warmth, by the same factor for every ten kelvin, and for
// wet, by up to a factor as the humidity at the skin goes from the usual to soaking.
// Beside it stands drying out, past a limit that differs a little within a lot.
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
			return fmt.Errorf("%w at %.1f °C, and what is left can't be reckoned; go through the store and write down what is firm", ErrFrozen, s.Temperature.Celsius())
		}
	}
	return nil
}

// hazard is what a stock's losses are reckoned from: the figures of parts, and after them
// those of its limits and of rot.
type hazard struct{ figures []culture.Figure }

// The places of the figures of a hazard after those of parts.
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
		return hazard{}, fmt.Errorf("what comes of %s in store: %w", s.Kind, ErrUnknown)
	}
	usual, ok := kind.Figure("store.success")
	if !ok {
		return hazard{}, fmt.Errorf("how much of %s usually comes through a winter: %w", s.Kind, ErrUnknown)
	}
	return hazard{append(parts, figure("dried out"), figure("dried out spread"), figure("rot warmth"),
		figure("rot wet"), figure("rot winter"), figure("rot usual"), figure("rot damp"), usual)}, nil
}

// over returns the hazard heaped up over the spells: minus the logarithm of the share
// that comes through.
func (h hazard) over(spells []Spell) odds.Amount {
	return inLogs(h.figures, func(x []float64) float64 { return heaped(x, spells) })
}

// middle returns the same with every figure at its value.
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

// atSkin returns the humidity of the air at the skin of packed stock, 0 to 1: the packing
// lets through only a part of the pull of a room. surface is the humidity over the bare
// skin, times how much less is lost than bare.
func atSkin(room quantity.Share, surface, times float64) float64 {
	return surface - max(0, surface-float64(room))/times
}

// wetness goes from 0 where the air at the skin is as damp as usual, or drier, to 1 where
// it is saturated.
func wetness(skin, usual float64) float64 { return max(0, skin-usual) / (1 - usual) }
