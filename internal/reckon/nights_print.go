package reckon

import (
	"fmt"
	"io"

	"eyeup/internal/report"
	"eyeup/odds"
	"eyeup/quantity"
)

// Print writes the answer for the grower.
func (a *NightsAnswer) Print(w io.Writer, units quantity.System) {
	p := report.NewPage(w)
	degrees := func(celsius float64) string { return units.Temperature(quantity.Celsius(celsius)) }
	when := fmt.Sprintf("the %d nights from %s", a.Nights, a.From)
	if a.Nights == 1 {
		when = fmt.Sprintf("the night of %s", a.From)
	}
	p.Wrap("", fmt.Sprintf("%s, %s, by %d years", a.Garden, when, a.Years))
	p.Line("")
	p.Line("  coldest           one year in ten  even odds  one year in ten  freezes")
	p.Line("                    is colder                   is milder")
	printNightRow(p, "outside", a.Outside, a.Freezes, degrees)
	for _, place := range a.Places {
		printNightRow(p, place.Name, place.Inside, place.Freezes, degrees)
	}
	p.Line("")
	for _, place := range a.Places {
		printNightShort(p, place, units)
	}
	for _, place := range a.Places {
		for _, r := range place.AtRisk {
			printAtRisk(p, place.Name, r, degrees)
		}
	}
	p.Line("")
	for _, note := range a.Notes {
		p.Wrap("", note)
	}
}

func printNightRow(p *report.Page, name string, inside odds.Amount, freezes float64, degrees func(float64) string) {
	p.Line(fmt.Sprintf("  %-18.17s%-17s%-11s%-17s%s", name, degrees(inside.Low), degrees(inside.Middle), degrees(inside.High), inHundred(freezes)))
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

// printNightShort says whether a heated place holds its level.
func printNightShort(p *report.Page, place NightPlace, units quantity.System) {
	if place.Level == nil {
		return
	}
	level := units.Temperature(quantity.Celsius(*place.Level))
	if place.Fails == 0 {
		p.Wrap("", fmt.Sprintf("%s holds %s in every year.", place.Name, level))
		return
	}
	p.Wrap("", fmt.Sprintf("%s drops below %s: %s; one year in ten by more than %s.",
		place.Name, level, inHundred(place.Fails), units.Difference(quantity.Difference(place.Short.High))))
}

func printAtRisk(p *report.Page, where string, r AtRisk, degrees func(float64) string) {
	name := fmt.Sprintf("%d %s in the %s", r.Count, r.Variety, where)
	if r.Frozen > 0 {
		p.Wrap("  carry in or cover: ", fmt.Sprintf("%s: freeze at %s, %s: %s", name, degrees(*r.Kills), inHundred(r.Frozen), r.Effect))
		return
	}
	p.Wrap("  keep warmer: ", fmt.Sprintf("%s: harmed below %s, %s", name, degrees(*r.Harm), inHundred(r.Harmed)))
}
