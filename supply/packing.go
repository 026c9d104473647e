package supply

import (
	"fmt"
	"math"
	"strings"

	"eyeup/odds"
)

// Packing is the material to store stock for the winter.
type Packing struct {
	Count  int         // individuals
	Form   string      // clump, division, corm
	Crates odds.Amount // whole crates
	Litres odds.Amount // of the medium, loose
	Crate  odds.Amount // weight of one full crate, packed damp, in kg
}

// LiftLimit is the weight in kg that one person may lift in the best posture; less in any
// other (51 lb). Source: NIOSH publication 94-110, revised 2021.
const LiftLimit = 23.0

// Pack returns the crates and the packing for individuals of a form. Bare stock needs crates
// only. It fails for a form without figures and for a negative count.
func Pack(count int, form string, bare bool) (Packing, error) {
	perCrate, medium := figure(form, "crate"), figure(form, "packing")
	weight, crate := figure(form, "weight"), figure("crate", "weight")
	if !known(perCrate) || !known(weight) {
		return Packing{}, fmt.Errorf("it is not known how a %s is packed; give one of: %s", form, strings.Join(formsWith("crate"), ", "))
	}
	if err := checkCount(count, "can't be packed"); err != nil {
		return Packing{}, err
	}
	n := float64(count)
	p := Packing{Count: count, Form: form}
	p.Crates = odds.Amount{Low: math.Ceil(n / perCrate.High), Middle: math.Ceil(n / perCrate.Value), High: math.Ceil(n / perCrate.Low)}
	kg := figure("packing", "weight")
	litres := medium
	if bare {
		litres.Low, litres.Value, litres.High = 0, 0, 0
	}
	p.Litres = odds.Amount{Low: n * litres.Low, Middle: n * litres.Value, High: n * litres.High}
	full := func(each, packed, weighs, empty float64) float64 {
		return empty + perCrate.Value*(each+packed*weighs)
	}
	p.Crate = odds.Amount{
		Low:    full(weight.Low, litres.Low, kg.Low, crate.Low),
		Middle: full(weight.Value, litres.Value, kg.Value, crate.Value),
		High:   full(weight.High, litres.High, kg.High, crate.High),
	}
	return p, nil
}

// formsWith returns the forms that have a figure with the key.
func formsWith(key string) []string {
	var all []string
	for _, k := range figureOrder {
		if form, ok := strings.CutSuffix(k, " "+key); ok {
			all = append(all, form)
		}
	}
	return all
}
