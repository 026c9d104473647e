package plans

import (
	"fmt"
	"slices"
	"strings"

	"eyeup/internal/report"
	"eyeup/quantity"
	"eyeup/season"
)

// placesOf names the places of plans for which is holds, each once.
func placesOf(plans []*season.Plan, is func(season.PlacePlan) bool) []string {
	var names []string
	for _, plan := range plans {
		for _, pl := range plan.Places {
			if is(pl) {
				names = report.AddOnce(names, pl.Place)
			}
		}
	}
	return names
}

// heatedPlaces names the places that at least one plan heats.
func heatedPlaces(plans []*season.Plan) []string {
	return placesOf(plans, func(pl season.PlacePlan) bool { return pl.Heat != nil })
}

// heatedIn returns a place of the plan; nil where the plan does not heat it.
func heatedIn(plan *season.Plan, name string) *season.PlacePlan {
	at := slices.IndexFunc(plan.Places, func(pl season.PlacePlan) bool { return pl.Place == name && pl.Heat != nil })
	if at < 0 {
		return nil
	}
	return &plan.Places[at]
}

// HeatedAs is the row heading of a heated place. A place with a thermostat is "held at" a level; a room
// that is warm anyway, but costs heat, is "heated" for some days.
func HeatedAs(plans []*season.Plan, name string) string {
	for _, plan := range plans {
		if pl := heatedIn(plan, name); pl != nil && pl.IsHeld() {
			return name + " held at"
		}
	}
	return name + " heated"
}

// HeldOf says at what level a plan holds a place, and from when to when.
func HeldOf(plan *season.Plan, name string, units quantity.System) string {
	pl := heatedIn(plan, name)
	if pl == nil {
		return "off"
	}
	days := fmt.Sprintf("%s-%s", report.ShortDate(pl.HeatedFrom), report.ShortDate(pl.HeatedTo))
	if !pl.IsHeld() {
		return days
	}
	return units.Temperature(pl.Level) + " " + days
}

// then says to which level a place changes while it is in use, and from when; empty for no change.
func then(plan *season.Plan, name string, units quantity.System) string {
	if pl := heatedIn(plan, name); pl != nil && pl.Then != nil {
		return fmt.Sprintf("%s from %s", units.Temperature(pl.Then.Level), report.ShortDate(pl.Then.From))
	}
	return ""
}

// heatRows print how the heater of every heated house does, or of the first other heated place where
// there is no house.
func heatRows(p *report.Page, plans []*season.Plan, units quantity.System) {
	houses := placesOf(plans, func(pl season.PlacePlan) bool { return pl.Heat != nil && pl.Sort == string(season.Glass) })
	if len(houses) == 0 {
		houses = heatedPlaces(plans)
		houses = houses[:min(1, len(houses))]
	}
	for _, name := range houses {
		label := "heat needed, given"
		if len(houses) > 1 {
			label = name + ", needed"
		}
		heatOf(p, name, label, plans, units)
	}
}

func heatOf(p *report.Page, name, label string, plans []*season.Plan, units quantity.System) {
	row := func(label string, show func(*season.PlaceHeat, *season.Plan) string) {
		printRow(p, label, func(plan *season.Plan) string {
			if pl := heatedIn(plan, name); pl != nil {
				return show(pl.Heat, plan)
			}
			return "-"
		}, plans)
	}
	row(label, func(h *season.PlaceHeat, _ *season.Plan) string {
		return fmt.Sprintf("%.0f, %.0f kWh", h.AskedKWh.Middle, h.GivenKWh.Middle)
	})
	row("hours below level", func(h *season.PlaceHeat, _ *season.Plan) string {
		return fmt.Sprintf("%.0f (%s below)", h.HoursShort.Middle, degrees(quantity.Difference(h.WorstShortK), units))
	})
	row("freezes inside", func(h *season.PlaceHeat, plan *season.Plan) string {
		return fmt.Sprintf("in %d of %d years", h.YearsFreezing, plan.Years)
	})
}

// degrees writes a difference of temperature in whole degrees of the reader's scale.
func degrees(d quantity.Difference, units quantity.System) string {
	if units == quantity.US {
		return fmt.Sprintf("%.0f °F", d.Fahrenheits())
	}
	return fmt.Sprintf("%.0f °C", float64(d))
}

// HeatCost says what the heat of a plan costs in a middle year, in the garden's currency. It says "no
// price" where none is known, and adds a plus sign where only a part has a price.
func HeatCost(plan *season.Plan) string { return priced(plan, plan.Cost.Heat, "heat of ") }

// LightCost says what the electricity of the lamps costs, in the same way as HeatCost.
func LightCost(plan *season.Plan) string { return priced(plan, plan.Cost.Light, "electricity") }

func priced(plan *season.Plan, cost float64, of string) string {
	lacks := slices.ContainsFunc(plan.Cost.Unpriced, func(what string) bool { return strings.HasPrefix(what, of) })
	switch {
	case lacks && cost == 0:
		return "no price"
	case lacks:
		return fmt.Sprintf("%.2f+", cost)
	}
	return fmt.Sprintf("%.2f", cost)
}
