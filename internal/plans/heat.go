package plans

import (
	"fmt"
	"slices"
	"strings"

	"eyeup/internal/report"
	"eyeup/quantity"
	"eyeup/season"
)

// placesOf names the places of some plans that are of a sort.
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

// heatedPlaces names the places that some plan heats.
func heatedPlaces(plans []*season.Plan) []string {
	return placesOf(plans, func(pl season.PlacePlan) bool { return pl.Heat != nil })
}

// heatedIn returns a place of a plan that heats it; nil where it does not.
func heatedIn(plan *season.Plan, name string) *season.PlacePlan {
	at := slices.IndexFunc(plan.Places, func(pl season.PlacePlan) bool { return pl.Place == name && pl.Heat != nil })
	if at < 0 {
		return nil
	}
	return &plan.Places[at]
}

// HeatedAs names what plans tell of a heated place: at what level it is held, or, of a room
// that is warm anyway but costs heat, when.
func HeatedAs(plans []*season.Plan, name string) string {
	for _, plan := range plans {
		if pl := heatedIn(plan, name); pl != nil && pl.IsHeld() {
			return name + " held at"
		}
	}
	return name + " heated"
}

// HeldOf says at what level a plan holds a place, and when.
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

// then says to what level a place goes while it is in use, and when.
func then(plan *season.Plan, name string, units quantity.System) string {
	if pl := heatedIn(plan, name); pl != nil && pl.Then != nil {
		return fmt.Sprintf("%s from %s", units.Temperature(pl.Then.Level), report.ShortDate(pl.Then.From))
	}
	return ""
}

// heatRows tell of every heated house, or of what else is heated where there is none, how its
// heater fares.
func heatRows(p *report.Page, plans []*season.Plan) {
	houses := placesOf(plans, func(pl season.PlacePlan) bool { return pl.Heat != nil && pl.Sort == string(season.Glass) })
	if len(houses) == 0 {
		houses = heatedPlaces(plans)
		houses = houses[:min(1, len(houses))]
	}
	for _, name := range houses {
		label := "heat asked, given"
		if len(houses) > 1 {
			label = name + ", asked"
		}
		heatOf(p, name, label, plans)
	}
}

func heatOf(p *report.Page, name, label string, plans []*season.Plan) {
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
	row("hours too cold", func(h *season.PlaceHeat, _ *season.Plan) string {
		return fmt.Sprintf("%.0f (worst %.0f K)", h.HoursShort.Middle, h.WorstShortK)
	})
	row("freezes inside in", func(h *season.PlaceHeat, plan *season.Plan) string {
		return fmt.Sprintf("%d of %d years", h.YearsFreezing, plan.Years)
	})
}

// HeatCost says what the heat of a plan costs, in the middle of the years, and LightCost its
// light: without a price that there is none, and with a price of some of it that there is more.
func HeatCost(plan *season.Plan) string { return priced(plan, plan.Cost.Heat, "heat of ") }

// LightCost: see HeatCost.
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
