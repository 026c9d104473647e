package keeping

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"eyeup/culture"
	"eyeup/odds"
	"eyeup/quantity"
)

// ErrUnknown is returned for what has not been measured and has no assumption here.
var ErrUnknown = errors.New("it is not known")

// Stock is the stock in a store.
type Stock struct {
	Kind    string        // dahlia
	Form    string        // clump, division
	Pack    string        // packing: bare, vermiculite, peat …
	Culture *culture.Kind // the garden's own figures of the kind; nil: the usual ones
}

// Packs returns the packings that are known.
func Packs() []string {
	var all []string
	for _, f := range figures {
		if pack, ok := strings.CutSuffix(f.Key, " packing"); ok {
			all = append(all, pack)
		}
	}
	return all
}

// State is how stock feels in the hand.
type State string

// The states, by share of weight lost.
const (
	Firm     State = "firm"
	Wrinkled State = "wrinkled"
	DriedOut State = "dried out"
)

// StateAt returns the state of stock that has lost a share of its weight, 0 to 1.
func StateAt(lost float64) State {
	switch {
	case lost > figure("dried out").Value:
		return DriedOut
	case lost >= figure("wrinkled").Value:
		return Wrinkled
	}
	return Firm
}

// Drying is the weight lost in a store.
type Drying struct {
	Lost  odds.Amount // share of weight, 0 to 1
	State State       // at the middle of Lost
}

// Loss returns the weight that stock loses over the spells, from the day of packing. It fails
// with ErrUnknown for unknown kinds and forms, and for a packing not in Packs or impossible
// air.
func Loss(s Stock, spells []Spell) (Drying, error) {
	parts, err := s.parts()
	if err != nil {
		return Drying{}, err
	}
	if err := checkAll(spells); err != nil {
		return Drying{}, err
	}
	gone := inLogs(parts, func(x []float64) float64 { return -math.Log1p(-lawOf(x).Lost(spells)) })
	lost := odds.Amount{Low: -math.Expm1(-gone.Low), Middle: -math.Expm1(-gone.Middle), High: -math.Expm1(-gone.High)}
	return Drying{Lost: lost, State: StateAt(lost.Middle)}, nil
}

// DaysTo returns the days until stock that has lost the share from of its weight (0 to 1) has
// lost to, in constant air; infinite if it never does. The low end is for stock that dries
// fast. It fails as Loss does.
func DaysTo(s Stock, from, to float64, temperature quantity.Temperature, humidity quantity.Share) (odds.Amount, error) {
	parts, err := s.parts()
	if err != nil {
		return odds.Amount{}, err
	}
	day := Spell{1, temperature, humidity}
	if err := day.check(); err != nil {
		return odds.Amount{}, err
	}
	if !(from >= 0 && from < 1 && to < 1) {
		return odds.Amount{}, fmt.Errorf("weight can't be lost from %g%% to %g%%; give 0%% or more and less than 100%%", 100*from, 100*to)
	}
	if to <= from {
		return odds.Amount{}, nil
	}
	rate := inLogs(parts, func(x []float64) float64 { l := lawOf(x); return l.Rate(l.Pull(day)) })
	whole := math.Log1p(-from) - math.Log1p(-to)
	return odds.Amount{Low: whole / rate.High, Middle: whole / rate.Middle, High: whole / rate.Low}, nil
}

// WrinkledAt returns the share of weight lost at which the skin wrinkles.
func WrinkledAt() culture.Figure { return figure("wrinkled") }

// parts returns the figures used by Loss: coefficient, packing, apart, surface.
func (s Stock) parts() ([]culture.Figure, error) {
	skin := figure(s.Kind + " " + s.Form + " coefficient")
	if forms := formsOf(s.Kind); !known(skin) && len(forms) > 0 {
		return nil, fmt.Errorf("a %s %s is not kept in store; give one of: %s", s.Kind, s.Form, strings.Join(forms, ", "))
	}
	if !known(skin) {
		return nil, fmt.Errorf("how fast a %s %s dries in store: %w; weigh a few now and in a month, and note the weights", s.Kind, s.Form, ErrUnknown)
	}
	pack := figure(s.Pack + " packing")
	if !known(pack) {
		return nil, fmt.Errorf("%q is not a known packing; give one of: %s", s.Pack, strings.Join(Packs(), ", "))
	}
	return []culture.Figure{skin, pack, figure("apart"), figure("surface")}, nil
}

// formsOf returns the forms of a kind whose drying is known.
func formsOf(kind string) []string {
	var all []string
	for _, f := range figures {
		name, isSkin := strings.CutSuffix(f.Key, " coefficient")
		if form, ours := strings.CutPrefix(name, kind+" "); isSkin && ours {
			all = append(all, form)
		}
	}
	return all
}

// lawOf makes a Law from one set of values of the figures of parts.
func lawOf(x []float64) Law {
	return Law{Coefficient: x[0] / x[1], Apart: x[2], Surface: quantity.Share(x[3])}
}

// inLogs propagates the ranges of figures to the logarithm of a result of 0 or more, so that
// the low end can't be negative.
func inLogs(figures []culture.Figure, reckon func(x []float64) float64) odds.Amount {
	a := odds.Combined(amounts(figures), func(x []float64) float64 { return math.Log(reckon(x)) })
	if math.IsInf(a.Middle, -1) { // 0 for any values of the figures
		return odds.Amount{}
	}
	return odds.Amount{Low: math.Exp(a.Low), Middle: math.Exp(a.Middle), High: math.Exp(a.High)}
}
