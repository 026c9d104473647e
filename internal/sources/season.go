package sources

import (
	"slices"

	"eyeup/internal/desk"
	"eyeup/internal/plans"
	"eyeup/internal/report"
	"eyeup/season"
)

// OfSeason say what the plans of a season rest on, figure by figure. plan is the one
// that is shown in full.
func OfSeason(d *desk.Desk, a *plans.SeasonAnswer, plan *season.Plan) []Basis {
	return slices.Concat(ofGain(d, a, plan), ofCost(d, plan), ofRoom(d, plan), ofSearch(), ofBatches(d, plan, a.Assumptions))
}

// kindRecords lead to the figures of each kind that a plan raises.
func kindRecords(plan *season.Plan) []Record {
	var all []Record
	for _, b := range plan.Batches {
		r := Record{Says: "the figures of " + b.Kind, At: here("kind", b.Kind)}
		if !slices.Contains(all, r) {
			all = append(all, r)
		}
	}
	return all
}

// ofGain say what dates, weeks gained and stretched days rest on.
func ofGain(d *desk.Desk, a *plans.SeasonAnswer, plan *season.Plan) []Basis {
	weather := weatherRecords(d.Site())
	grown := append(slices.Clone(weather), kindRecords(plan)...)
	of := func(key, of, made string) Basis {
		return Basis{Key: key, Of: of, Made: made, Model: growModel, Records: grown, Assumed: []string{noForecast}, Change: byChange}
	}
	gainsAgainst := "Against: " + plan.Baseline + "."
	return []Basis{
		{Key: "frost", Of: "frost dates, and when nothing leafy is planted yet", Made: "The last freeze of each spring and the first of each autumn; leafy plants go out once frost is no likelier than you accept.", Model: datesAre, Records: append(slices.Clone(weather), described("the risk accepted")), Assumed: []string{noForecast}, Change: byChange},
		of("flower", "first flower", "When the middle plant shows its first flower or fruit; in the table of plans, of all dahlias together, or of all batches where there are none."),
		of("gain", "weeks gained", "Weeks between first flower and the first freeze of autumn, beyond those of the baseline, year by year, a plant; of dahlias, or of all kinds together. "+gainsAgainst),
		{Key: "stretched", Of: "stretched days", Made: "Days in leaf under cover on which a plant stands too warm for its light, a plant raised in a container. A line of light against warmth, known of pot plants; for these kinds it is an assumption.", Model: lightModel, Records: grown, Change: byFigures},
		{Key: "start", Of: "count and start", Made: "How many of the lot the plan raises, and the week in which it starts them: what gains most of the room, hands and heat there are.", Records: []Record{{Says: "what is wanted and kept in reserve", At: at(Patch)}, {Says: "what stands in store, by the book", At: at(Stock)}}, Change: byChange},
		of("up", "up, and handed on", "When half of those that come up are up, and are moved from the warm place to light."),
		of("out", "planted out", "When plants are fit for it, hardened, the soil warm enough, and frost no likelier than you accept."),
		{Key: "decide", Of: "decide by", Made: "The Monday on which the plan first does something else than the others.", Records: []Record{{Says: "the weeks in which the plans start their batches and hold their levels"}}, Change: byChange},
		{Key: "against", Of: "plan against fact", Made: "What the plan told on the day it was chosen, held against what the book tells since.", Records: append(planRecords(d), counted(d)...), Change: byEntry},
	}
}

// ofCost say what money and hours rest on.
func ofCost(d *desk.Desk, plan *season.Plan) []Basis {
	prices := described("prices")
	heat := Basis{Key: "heat", Of: "heat", Made: "Heat given in the weeks in which the plan holds its levels, divided by what the heater makes of its fuel, times the price; the middle over the years, with one year in ten beyond on either side.",
		Model: runModel, Records: append(weatherRecords(d.Site()), prices), Assumed: []string{noForecast, evenOdds}, Change: byChange}
	for _, p := range plan.Places {
		heat.addPlace(d.Site(), p.Place)
	}
	return []Basis{heat,
		{Key: "light-cost", Of: "light", Made: "Power of the lamps, times their hours, on the days when something beneath them is up, times the price of electricity.", Records: []Record{described("lamps"), prices}, Change: byGarden},
		{Key: "mix", Of: "mix and pots", Made: "All that is to be got, mix and containers before all, at its price.", Records: []Record{{Says: "what is to be got", At: here("get")}, prices}, Assumed: []string{"What a container takes is its filled frustum, less the clump in it, and something for settling."}, Change: byGarden},
		{Key: "total", Of: "in all, and for each pot", Made: "Heat, light, mix and pots, and paid hands, beyond what the garden spends anyway; for each pot: divided by the plants raised in pots. Own hours cost nothing here.", Records: []Record{{Says: "heat", At: here("heat")}, prices}, Change: byChange},
		{Key: "work", Of: "own hours", Made: "Minutes for each step of each kind, times how many.", Records: append(kindRecords(plan), described("hours a week")), Assumed: []string{"Minutes for a step are common practice or assumed; your own take their place."}, Change: byFigures},
		{Key: "pays", Of: "does the heat pay", Made: "Heat of this plan, set against the weeks of flower that it gains over the plan without added heat, and what a week brings by stems sold.", Records: []Record{{Says: "heat", At: here("heat")}, {Says: "weeks gained", At: here("gain")}, described("prices and stems sold")}, Change: byGarden},
		{Key: "get", Of: "to get", Made: "Mix, containers and seed for all that the plan raises, packing for autumn, each with its range and its price, a fortnight before it is first used.", Records: []Record{{Says: "how many of each lot", At: here("start")}, prices}, Change: byGarden},
	}
}

// ofRoom say what levels, benches, cold and dividing rest on.
func ofRoom(d *desk.Desk, plan *season.Plan) []Basis {
	site := d.Site()
	cold := Basis{Key: "cold", Of: "too cold", Made: "Hours more than half a kelvin below the level while the place is in use, by how much at worst, and the years in which it freezes inside.", Model: runModel,
		Records: append(weatherRecords(site), Record{Says: "the figures of the place, with heat", At: here("heat")}), Assumed: []string{noForecast, evenOdds}, Change: byChange}
	return []Basis{
		{Key: "held", Of: "levels", Made: "The level at which the plan holds the place, from the first week in which it is used to the last.", Records: []Record{described("the levels that may be held")}, Change: byChange},
		cold,
		{Key: "bench", Of: "bench fill", Made: "The room that all batches take in a place, week by week, and what holding it in that week costs.", Model: benchModel, Records: append(kindRecords(plan), described("benches")), Change: byFigures},
		{Key: "fits", Of: "benches suffice", Made: "The years of the record in which every bench suffices in every week, as the batches come and go in that year.", Model: benchModel, Records: append(weatherRecords(site), described("benches")), Change: byGarden},
		{Key: "short", Of: "short", Made: "By how much room, hands or stock fall short in the week, and the cheapest cure known.", Records: append(counted(d), described("benches and hours")), Change: byGarden},
		{Key: "divide", Of: "divide in autumn or in spring", Made: "What comes through the store cut and uncut, and the crates each takes.", Model: throughModel, Records: append(counted(d), kindRecords(plan)...), Change: byRound},
	}
}

// ofSearch say what the price of early and the search for the best plans rest on.
func ofSearch() []Basis {
	return []Basis{
		{Key: "early", Of: "the price of early", Made: "Plans from the cheapest to the earliest, each with what its heat costs and the weeks of flower it gains a plant, in the middle of the years.", Records: []Record{{Says: "heat", At: here("heat")}, {Says: "weeks gained", At: here("gain")}}, Change: byChange},
		{Key: "better", Of: "how much better another could be", Made: "The most by which any other plan could cost less for the same flowers, on the same figures: what the search could not rule out.", Records: []Record{{Says: "what each thing costs", At: here("total")}, {Says: "weeks gained", At: here("gain")}}, Change: byChange},
		{Key: "worth", Of: "what more would be worth", Made: "By how much a little more room or time in that week would make the best plan cheaper, for each unit.", Records: []Record{described("benches and hours")}, Change: byGarden},
	}
}

// ofBatches say, kind by kind, which figures the dates and benches of batches rest on.
func ofBatches(d *desk.Desk, plan *season.Plan, assumed []season.Assumption) []Basis {
	var kinds []string
	for _, b := range plan.Batches {
		kinds = report.AddOnce(kinds, b.Kind)
	}
	var all []Basis
	for _, kind := range kinds {
		k, known := d.Site().Kind(kind)
		if !known {
			continue
		}
		g := Basis{Key: Key("kind", kind), Of: kind, Made: "The figures of the kind that its dates and its bench rest on most.",
			Records: []Record{{Says: "what is known of the kind, with every source: eyeup reckon culture --why " + kind}}, Change: byFigures}
		for _, a := range assumed {
			if a.Kind == kind {
				g.Assumed = append(g.Assumed, a.What+" ("+a.Sure+")")
			}
		}
		g.addKind(k, "start.weeks", "sprout.base", "sprout.sum", "sprout.never", "flower.early", "flower.mid", "flower.late", "plant.harden", "plant.check", "bench.tight", "bench.spaced")
		all = append(all, g)
	}
	return all
}
