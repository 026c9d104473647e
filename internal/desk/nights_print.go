package desk

import (
	"fmt"
	"io"

	"eyeup/odds"
	"eyeup/quantity"
)

// Print writes the answer for the grower.
func (a *NightsAnswer) Print(w io.Writer, units quantity.System) {
	p := &page{w}
	degrees := func(celsius float64) string { return units.Temperature(quantity.Celsius(celsius)) }
	when := fmt.Sprintf("the %d nights from %s", a.Nights, a.From)
	if a.Nights == 1 {
		when = fmt.Sprintf("the night of %s", a.From)
	}
	p.wrap("", fmt.Sprintf("%s, %s, by %d years", a.Garden, when, a.Years))
	p.line("")
	p.line("  coldest           one year in ten  even odds  one year in ten  freezes")
	p.line("                    is colder                   is milder")
	p.nightRow("outside", a.Outside, a.Freezes, degrees)
	for _, place := range a.Places {
		p.nightRow(place.Name, place.Inside, place.Freezes, degrees)
	}
	p.line("")
	for _, place := range a.Places {
		p.nightShort(place, units)
	}
	for _, place := range a.Places {
		for _, r := range place.AtRisk {
			p.atRisk(place.Name, r, degrees)
		}
	}
	p.line("")
	for _, note := range a.Notes {
		p.wrap("", note)
	}
}

func (p *page) nightRow(name string, inside odds.Amount, freezes float64, degrees func(float64) string) {
	p.line(fmt.Sprintf("  %-18.17s%-17s%-11s%-17s%s", name, degrees(inside.Low), degrees(inside.Middle), degrees(inside.High), inHundred(freezes)))
}

// inHundred says a share of the years.
func inHundred(share float64) string {
	switch {
	case share == 0:
		return "never"
	case share == 1:
		return "always"
	}
	return fmt.Sprintf("%.0f years in 100", 100*share)
}

// nightShort says whether a heated place holds its level.
func (p *page) nightShort(place NightPlace, units quantity.System) {
	if place.Level == nil {
		return
	}
	level := units.Temperature(quantity.Celsius(*place.Level))
	if place.Fails == 0 {
		p.wrap("", fmt.Sprintf("%s holds %s in every year.", place.Name, level))
		return
	}
	p.wrap("", fmt.Sprintf("%s falls short of %s: %s; one year in ten by more than %s.",
		place.Name, level, inHundred(place.Fails), units.Difference(quantity.Difference(place.Short.High))))
}

func (p *page) atRisk(where string, r AtRisk, degrees func(float64) string) {
	name := fmt.Sprintf("%d %s in the %s", r.Count, r.Variety, where)
	if r.Frozen > 0 {
		p.wrap("  carry in or cover: ", fmt.Sprintf("%s: freeze at %s, %s: %s", name, degrees(*r.Kills), inHundred(r.Frozen), r.Effect))
		return
	}
	p.wrap("  keep warmer: ", fmt.Sprintf("%s: harmed below %s, %s", name, degrees(*r.Harm), inHundred(r.Harmed)))
}
