package reckon

import (
	"fmt"
	"io"

	"eyeup/internal/report"
	"eyeup/odds"
	"eyeup/quantity"
	"eyeup/supply"
)

// PackQuestion asks for the crates, packing and labels to store stock over the winter.
type PackQuestion struct {
	Count int
	Form  string // clump, division, corm
	Bare  bool   // without packing
	Bag   Bag
	Why   bool
}

// PackAnswer is what to get for it.
type PackAnswer struct {
	Count   int         `json:"count"`
	Form    string      `json:"form"`
	Bare    bool        `json:"bare"`
	Crates  odds.Amount `json:"crates" jsonschema_description:"bulb crates of 40 by 60 cm"`
	Packing odds.Amount `json:"packing_litres" jsonschema_description:"loose"`
	Bag     float64     `json:"bag_litres"`
	Swells  float64     `json:"bag_swells"`
	Bags    int         `json:"bags" jsonschema_description:"whole bags, enough at even odds"`
	Most    int         `json:"bags_at_most" jsonschema_description:"whole bags, enough in nine cases of ten"`
	Weight  odds.Amount `json:"full_crate_kg"`
	Labels  int         `json:"labels" jsonschema_description:"one for each and some over"`

	Figures []FigureAnswer `json:"figures,omitempty"`
}

// LiftCaution is the safety warning for lifting crates.
var LiftCaution = fmt.Sprintf("%.0f kg (%.0f lb) is the most one may lift in the best of postures (NIOSH), less when bending, reaching or turning: fill crates by weight, or lift with two.",
	supply.LiftLimit, supply.LiftLimit*float64(quantity.Kilogram/quantity.Pound))

// Pack answers a PackQuestion.
func Pack(q PackQuestion) (*PackAnswer, error) {
	need, err := supply.Pack(q.Count, q.Form, q.Bare)
	if err != nil {
		return nil, err
	}
	bag := q.Bag.sold()
	bags, err := bag.For(need.Litres)
	if err != nil {
		return nil, err
	}
	labels, err := supply.Labels(q.Count)
	if err != nil {
		return nil, err
	}
	a := &PackAnswer{
		Count: q.Count, Form: q.Form, Bare: q.Bare, Crates: need.Crates, Packing: report.RoundedAmount(need.Litres, 1),
		Bag: *report.Rounded(q.Bag.Volume.Litres(), 2), Swells: bag.Swells, Bags: bags.Get, Most: bags.High,
		Weight: report.RoundedAmount(need.Crate, 1), Labels: labels,
	}
	if q.Why {
		a.Figures = FigureAnswers(supply.FiguresOf(q.Form+" crate", q.Form+" packing", q.Form+" weight", "packing weight", "crate weight", "labels spare"))
	}
	return a, nil
}

// Print writes the answer for the grower.
func (a *PackAnswer) Print(w io.Writer, units quantity.System) {
	p := report.NewPage(w)
	kilograms := func(kg float64) string { return units.Mass(quantity.Mass(kg)) }
	p.Line(fmt.Sprintf("To put away %d × %s", a.Count, a.Form))
	p.Line("")
	p.Line(fmt.Sprintf("  bulb crates   %.0f (%.0f to %.0f)", a.Crates.Middle, a.Crates.Low, a.Crates.High))
	if !a.Bare {
		volume := func(litres float64) string { return units.Volume(quantity.Volume(litres) * quantity.Litre) }
		p.Line(fmt.Sprintf("  packing       %s (%s to %s)", volume(a.Packing.Middle), volume(a.Packing.Low), volume(a.Packing.High)))
		p.Line(fmt.Sprintf("  bags          %d of %s%s", a.Bags, volume(a.Bag), MoreBags(a.Bags, a.Most)))
	}
	p.Line(fmt.Sprintf("  a full crate  %s (%s to %s)", kilograms(a.Weight.Middle), kilograms(a.Weight.Low), kilograms(a.Weight.High)))
	p.Line(fmt.Sprintf("  labels        %d", a.Labels))
	p.Line("")
	p.Wrap("", LiftCaution+" Dry packing is dusty: damp it, and wear a mask.")
	printWhy(p, a.Figures, units)
}

// MoreBags says how many bags are enough in nine cases of ten, if that is more than get.
func MoreBags(get, most int) string {
	if most > get {
		return fmt.Sprintf("; %d to be sure of it, nine times in ten", most)
	}
	return ""
}
