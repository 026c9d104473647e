package reckon

import (
	"fmt"
	"io"
	"math"
	"strings"

	"eyeup/internal/report"
	"eyeup/odds"
	"eyeup/quantity"
)

// Print writes the answer for the grower.
func (a *HeatAnswer) Print(w io.Writer, units quantity.System) {
	p := report.NewPage(w)
	p.Wrap("", fmt.Sprintf("Heat in %q at %s, %v to %v, by %d years%s", a.Place, a.Garden, a.Span.From, a.Span.To, a.Years, a.madeUp()))
	p.Line("")
	if len(a.Levels) > 0 {
		a.printLevels(p, units)
	} else {
		a.printOne(p, units)
		a.printWeeks(p)
	}
	a.printNights(p, units)
	a.printHolds(p, units)
	p.Line("")
	for _, note := range a.Notes {
		p.Wrap("", note)
	}
	if a.why {
		p.Line("")
		p.Wrap("", AskedMeans)
		p.Wrap("", "Sun: "+a.Weather.Sky+".")
		p.Wrap("", fmt.Sprintf("By hand, without sun, floor or limit: %s times the degrees that the air outside lies below the level, by monthly means: %.0f kWh.", units.Conductance(quantity.Conductance(a.Loss)), a.ByHand))
		printWhy(p, a.Figures, units)
	}
}

func (a *HeatAnswer) madeUp() string {
	if a.Weather.MadeUp {
		return ", which are made up"
	}
	return ""
}

func (a *HeatAnswer) printOne(p *report.Page, units quantity.System) {
	p.Line(fmt.Sprintf("%-24s%s", "held at", shownSetting(a.Setting, units)))
	p.Line(fmt.Sprintf("%-24s%s", "heat loss", units.Conductance(quantity.Conductance(a.Loss))))
	if h := a.Heater; h != nil {
		p.Line(fmt.Sprintf("%-24s%s of %s, %.0f %% useful", "heater", units.Power(quantity.Power(h.Power)), h.Fuel, 100*h.Efficiency))
	}
	p.Line("")
	p.Line(fmt.Sprintf("%-24s%14s%14s%14s", "", "1 in 10 less", "even odds", "1 in 10 more"))
	a.printAmount(p, "heat asked, kWh", a.Asked, "%.0f")
	a.printAmount(p, "heat given, kWh", a.Given, "%.0f")
	if a.Given.High > 0 && a.FuelUnit != "" && a.FuelUnit != "kWh" {
		a.printAmount(p, "fuel, "+a.FuelUnit, a.Fuel, "%.1f")
	}
	switch {
	case a.Given.High == 0:
	case a.CostReason == "":
		a.printAmount(p, "its cost, "+a.Currency, a.Cost, "%.2f")
	default:
		p.Line("its cost                not known: " + a.CostReason)
	}
	a.printAmount(p, "hours below the level", a.Short, "%.0f")
	a.printAmount(p, "most below it, "+unitOf(units), a.Worst.Times(perKelvin(units)), "%.1f")
	a.printAmount(p, "hours above "+units.Temperature(quantity.Celsius(30)), a.Hot, "%.0f")
	if a.HotShut != nil {
		a.printAmount(p, "  with vents shut", *a.HotShut, "%.0f")
	}
	if a.WarmBench.High > 0 {
		a.printAmount(p, "warm bench, kWh", a.WarmBench, "%.0f")
	}
	if a.Lamps.High > 0 {
		a.printAmount(p, "lamps, kWh", a.Lamps, "%.0f")
	}
}

func (a *HeatAnswer) printAmount(p *report.Page, what string, x odds.Amount, form string) {
	p.Line(fmt.Sprintf("%-24s%14s%14s%14s", what, fmt.Sprintf(form, x.Low), fmt.Sprintf(form, x.Middle), fmt.Sprintf(form, x.High)))
}

// perKelvin turns kelvin into the degrees that are shown.
func perKelvin(units quantity.System) float64 {
	if units == quantity.US {
		return quantity.Difference(1).Fahrenheits()
	}
	return 1
}

func unitOf(units quantity.System) string {
	if units == quantity.US {
		return "°F"
	}
	return "°C"
}

// shownSetting shows a setting, which is written in °C, in the grower's degrees.
func shownSetting(setting string, units quantity.System) string {
	parts := strings.Split(setting, "; ")
	for i, part := range parts {
		var c float64
		if _, err := fmt.Sscanf(part, "%f °C", &c); err == nil {
			_, rest, _ := strings.Cut(part, "°C")
			parts[i] = units.Temperature(quantity.Celsius(c)) + rest
		}
	}
	return strings.Join(parts, "; ")
}

func (a *HeatAnswer) printWeeks(p *report.Page) {
	if a.Asked.High < 0.5 {
		return
	}
	p.Line("")
	p.Line("week of        asked, kWh               given, kWh               cost, " + a.Currency)
	for _, week := range a.Weeks {
		if week.Asked.High < 0.5 {
			continue
		}
		cost := "-"
		if !math.IsNaN(week.Cost.Middle) {
			cost = fmt.Sprintf("%.2f (%.2f-%.2f)", week.Cost.Middle, week.Cost.Low, week.Cost.High)
		}
		p.Line(fmt.Sprintf("%-13v  %-23s  %-23s  %s", week.Week, spread(week.Asked), spread(week.Given), cost))
	}
}

// spread shows an amount as its middle and, in brackets, low to high.
func spread(x odds.Amount) string { return fmt.Sprintf("%.0f (%.0f-%.0f)", x.Middle, x.Low, x.High) }

func (a *HeatAnswer) printLevels(p *report.Page, units quantity.System) {
	p.Line("at even odds; in brackets one year in ten less and one in ten more")
	p.Line("level     asked, kWh           given, kWh           cost    h short  years frozen")
	for _, l := range a.Levels {
		cost := "-"
		if !math.IsNaN(l.Cost.Middle) {
			cost = fmt.Sprintf("%.0f", l.Cost.Middle)
		}
		p.Line(fmt.Sprintf("%-8s  %-19s  %-19s  %-6s  %-7.0f  %d of %d", shownSetting(l.Setting, units), spread(l.Asked), spread(l.Given), cost, l.Short.Middle, l.Freezing, a.Years))
	}
	if a.CostReason != "" {
		p.Line("the cost is not known: " + a.CostReason)
	} else {
		p.Line("cost in " + a.Currency)
	}
}

func (a *HeatAnswer) printNights(p *report.Page, units quantity.System) {
	if len(a.Nights) == 0 {
		return
	}
	p.Line("")
	freezing, five := units.Temperature(quantity.Celsius(0)), units.Temperature(quantity.Celsius(5))
	p.Wrap("", fmt.Sprintf("The worst nights%s: below freezing (%s) inside in %d of %d years, below %s in %d.", a.ofFirst(units), freezing, a.Freezing, a.Years, five, a.BelowFive))
	for _, n := range a.Nights {
		p.Line(fmt.Sprintf("  %v   %s inside, %s outside", n.Date, units.FineTemperature(quantity.Celsius(n.Inside)), units.FineTemperature(quantity.Celsius(n.Outside))))
	}
}

// ofFirst says which level the nights belong to if there are several.
func (a *HeatAnswer) ofFirst(units quantity.System) string {
	if len(a.Levels) == 0 {
		return ""
	}
	return " at " + shownSetting(a.Setting, units)
}

func (a *HeatAnswer) printHolds(p *report.Page, units quantity.System) {
	for _, h := range a.Holds {
		p.Wrap("  ", fmt.Sprintf("%s is held in every one of these years by %s, in nine of ten by %s.",
			units.Temperature(quantity.Celsius(h.Holds)), heaterOf(h.EveryYear, units), heaterOf(h.NineInTen, units)))
	}
}

// heaterOf shows the power of a heater to the next hundred watts.
func heaterOf(watts float64, units quantity.System) string {
	p := quantity.Power(math.Ceil(watts/100) * 100)
	if units == quantity.US {
		return fmt.Sprintf("%s (%.0f 000 Btu/h)", units.Power(p), math.Ceil(float64(p/quantity.ThousandBtuPerHour)))
	}
	return units.Power(p)
}
