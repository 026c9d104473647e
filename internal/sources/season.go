package sources

import (
	"slices"

	"eyeup/internal/desk"
	"eyeup/internal/plans"
	"eyeup/internal/report"
	"eyeup/season"
)

// OfSeason says where the figures of a season's plans come from. plan is the one that is shown in full.
func OfSeason(d *desk.Desk, a *plans.SeasonAnswer, plan *season.Plan) []Basis {
	return slices.Concat(ofGain(d, a, plan), ofCost(d, plan), ofRoom(d, plan), ofSearch(), ofBatches(d, plan, a.Assumptions))
}

// kindRecords link to the figures of each kind that a plan raises.
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

// ofGain says where dates, weeks gained and stretched days come from.
func ofGain(d *desk.Desk, a *plans.SeasonAnswer, plan *season.Plan) []Basis {
	weather := weatherRecords(d.Site())
	grown := append(slices.Clone(weather), kindRecords(plan)...)
	of := func(key, of, made string) Basis {
		return Basis{Key: key, Of: of, Made: made, Model: growModel, Records: grown, Assumed: []string{noForecast}, Change: byChange}
	}
	gainsAgainst := "The baseline: " + plan.Baseline + "."
	return []Basis{
		{Key: "frost", Of: "frost dates, and when nothing leafy is planted yet", Made: "The last freeze of each spring and the first of each autumn. Leafy plants are planted out once the odds of frost are no more than you accept.", Model: datesAre, Records: append(slices.Clone(weather), described("the risk accepted")), Assumed: []string{noForecast}, Change: byChange},
		of("flower", "first flower", "When the middle plant shows its first flower or fruit. In the table of plans: of all dahlias together, or of all batches where there are no dahlias."),
		of("gain", "weeks gained", "Weeks from first flower to the first freeze of autumn, less those of the baseline, for each plant and year; of dahlias, or of all kinds where there are none. "+gainsAgainst),
		{Key: "stretched", Of: "stretched days", Made: "Days in leaf under cover that are too warm for their light, for each plant raised in a container. Studies of pot plants show that warmer plants need more light; for these kinds that is an assumption.", Model: lightModel, Records: grown, Change: byFigures},
		{Key: "start", Of: "count and start", Made: "How many of the lot the plan raises, and in which week it starts them: what gains most flower from the room, work and heat there is.", Records: []Record{{Says: "what is wanted and kept in reserve", At: at(Patch)}, {Says: "what the book has in store", At: at(Stock)}}, Change: byChange},
		of("up", "up, and handed on", "When half of those that come up are up, and when they are moved from the warm place to light."),
		of("out", "planted out", "When plants are large enough and hardened, the soil is warm enough, and the odds of frost are no more than you accept."),
		{Key: "decide", Of: "decide by", Made: "The first Monday on which the plan does something different from the others.", Records: []Record{{Says: "the weeks in which the plans start their batches and hold their levels"}}, Change: byChange},
		{Key: "against", Of: "plan against fact", Made: "What the plan promised on the day you chose it, compared with what the book says since.", Records: append(planRecords(d), counted(d)...), Change: byEntry},
	}
}

// ofCost says where money and hours come from.
func ofCost(d *desk.Desk, plan *season.Plan) []Basis {
	prices := described("prices")
	heat := Basis{Key: "heat", Of: "heat", Made: "Heat given in the weeks in which the plan holds its levels, divided by the heater's efficiency, times the price of its fuel. The middle over the years; one year in ten lies below the range and one above.",
		Model: runModel, Records: append(weatherRecords(d.Site()), prices), Assumed: []string{noForecast, evenOdds}, Change: byChange}
	for _, p := range plan.Places {
		heat.addPlace(d.Site(), p.Place)
	}
	return []Basis{heat,
		{Key: "light-cost", Of: "light", Made: "Power of the lamps times their hours, on days when something under them is up, times the price of electricity.", Records: []Record{described("lamps"), prices}, Change: byGarden},
		{Key: "mix", Of: "mix and pots", Made: "All that you need to get, above all mix and containers, at its price.", Records: []Record{{Says: "what you need to get", At: here("get")}, prices}, Assumed: []string{"A container takes the volume of its frustum, less the clump in it, plus something for settling."}, Change: byGarden},
		{Key: "total", Of: "total, and for each pot", Made: "Heat, light, mix and pots, and paid help, beyond what the garden spends anyway. For each pot: divided by the plants raised in pots. Your own hours cost nothing here.", Records: []Record{{Says: "heat", At: here("heat")}, prices}, Change: byChange},
		{Key: "work", Of: "own hours", Made: "Minutes for each step of each kind, times how many.", Records: append(kindRecords(plan), described("hours a week")), Assumed: []string{"Minutes for a step are common practice or assumed; your own figures replace them."}, Change: byFigures},
		{Key: "pays", Of: "does the heat pay", Made: "The heat of this plan, compared with the weeks of flower that it gains over the plan without added heat, and what a week earns by stems sold.", Records: []Record{{Says: "heat", At: here("heat")}, {Says: "weeks gained", At: here("gain")}, described("prices and stems sold")}, Change: byGarden},
		{Key: "get", Of: "to get", Made: "Mix, containers and seed for all that the plan raises, packing for autumn, each with its range and its price, a fortnight before it is first used.", Records: []Record{{Says: "how many of each lot", At: here("start")}, prices}, Change: byGarden},
	}
}

// ofRoom says where levels, benches, cold and dividing come from.
func ofRoom(d *desk.Desk, plan *season.Plan) []Basis {
	site := d.Site()
	cold := Basis{Key: "cold", Of: "too cold", Made: "Hours more than half a kelvin below the level while the place is in use, the worst of them, and the years in which it freezes inside.", Model: runModel,
		Records: append(weatherRecords(site), Record{Says: "the figures of the place, with heat", At: here("heat")}), Assumed: []string{noForecast, evenOdds}, Change: byChange}
	return []Basis{
		{Key: "held", Of: "levels", Made: "The level at which the plan holds the place, from the first week it is used to the last.", Records: []Record{described("the levels that may be held")}, Change: byChange},
		cold,
		{Key: "bench", Of: "bench fill", Made: "The room that all batches take in a place, week by week, and what heating it costs in that week.", Model: benchModel, Records: append(kindRecords(plan), described("benches")), Change: byFigures},
		{Key: "fits", Of: "benches suffice", Made: "The years of the record in which every bench suffices in every week, with the dates of the batches in that year.", Model: benchModel, Records: append(weatherRecords(site), described("benches")), Change: byGarden},
		{Key: "short", Of: "short", Made: "How much room, work or stock is missing in the week, and the cheapest way known to make up for it.", Records: append(counted(d), described("benches and hours")), Change: byGarden},
		{Key: "divide", Of: "divide in autumn or in spring", Made: "How many survive storage divided and undivided, and how many crates each takes.", Model: throughModel, Records: append(counted(d), kindRecords(plan)...), Change: byRound},
	}
}

// ofSearch says where the price of early and the figures of the search for the best plans come from.
func ofSearch() []Basis {
	return []Basis{
		{Key: "early", Of: "the price of early", Made: "Plans from the cheapest to the earliest, each with what its heat costs and the weeks of flower it gains for a plant, in a middle year.", Records: []Record{{Says: "heat", At: here("heat")}, {Says: "weeks gained", At: here("gain")}}, Change: byChange},
		{Key: "better", Of: "how much better another could be", Made: "The most that any other plan could cost less for the same flowers, on the same figures. The search has ruled out anything better.", Records: []Record{{Says: "what each thing costs", At: here("total")}, {Says: "weeks gained", At: here("gain")}}, Change: byChange},
		{Key: "worth", Of: "what more would be worth", Made: "How much cheaper the best plan would be with a little more room or time in that week, for each unit.", Records: []Record{described("benches and hours")}, Change: byGarden},
	}
}

// ofBatches says, kind by kind, which figures the dates and benches of batches come from.
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
		g := Basis{Key: Key("kind", kind), Of: kind, Made: "The figures of the kind that matter most for its dates and its bench.",
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
