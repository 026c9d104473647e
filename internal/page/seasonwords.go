package page

import (
	"fmt"
	"math"
	"strings"

	"eyeup/internal/plans"
	"eyeup/quantity"
	"eyeup/season"
)

// Link is where the season is shown with another plan drawn, the change kept.
func (v seasonView) Link(plan string) string {
	return seasonOf(v.Asks, "plan", plan)
}

// Follows reports whether a plan is the one that is followed. A best plan that was found is not
// the one of its name that is worked out every day.
func (v seasonView) Follows(p *season.Plan) bool {
	return p.Held || !v.Best.Found() && p.Name == v.Answer.Followed
}

// batchesAtFirst is how many batches are listed before all are asked for: as many as an old
// phone shows at once.
const batchesAtFirst = 50

// Batches are those that are listed of the drawn plan: the first ones, or all if all (yes)
// was asked for.
func (v seasonView) Batches() []season.BatchPlan {
	if v.Asks.Get("all") != "" {
		return v.Plan.Batches
	}
	return v.Plan.Batches[:min(batchesAtFirst, len(v.Plan.Batches))]
}

// More is how many batches are not listed.
func (v seasonView) More() int { return len(v.Plan.Batches) - len(v.Batches()) }

// All is where all batches are listed.
func (v seasonView) All() string { return seasonOf(v.Asks, "all", "yes") + "#batches" }

// HeatedAs is the heading of the row about a heated place.
func (v seasonView) HeatedAs(place string) string { return plans.HeatedAs(v.Answer.Plans, place) }

// Held says how a plan holds a place, or when it heats a room.
func (v seasonView) Held(p *season.Plan, place string) string {
	for _, at := range p.Places {
		if at.Place != place || at.Heat == nil {
			continue
		}
		words := fmt.Sprintf("%s to %s", v.display.day(at.HeatedFrom), v.display.day(at.HeatedTo))
		if at.IsHeld() {
			words = v.display.Units.Temperature(at.Level) + ", " + words
		}
		if at.Then != nil {
			words += fmt.Sprintf("; %s from %s", v.display.Units.Temperature(at.Then.Level), v.display.day(at.Then.From))
		}
		return words
	}
	return "off"
}

// Cold says how far a heater falls short in a plan.
func (v seasonView) Cold(p *season.Plan, place string) string {
	for _, at := range p.Places {
		if h := at.Heat; at.Place == place && h != nil {
			if h.HoursShort.High == 0 && h.WorstShortK < 0.05 && h.YearsFreezing == 0 {
				return "never"
			}
			return fmt.Sprintf("%.0f hours; %s below its level at worst; freezes inside in %d of %d years", h.HoursShort.Middle,
				v.display.Units.Difference(quantity.Difference(h.WorstShortK)), h.YearsFreezing, p.Years)
		}
	}
	return "–"
}

// Used reports whether any bench is used in a week of the drawn plan.
func (v seasonView) Used(week int) bool {
	for _, p := range v.Plan.Places {
		if week < len(p.Weeks) && p.Weeks[week].UsedM2 > 0 {
			return true
		}
	}
	return false
}

// Lacking says how much of something there is too little of: bench, crates, hours or plants.
func (v seasonView) Lacking(s season.Shortfall) string {
	switch s.Of {
	case "hands":
		return figure(s.Short, 1) + " hours too little"
	case "room":
		return v.display.areaWords(s.Short) + " too little"
	}
	return figure(math.Ceil(s.Short), 0) + " too few"
}

// Need says how much of a thing is to be got.
func (v seasonView) Need(n season.Need) string {
	if n.Unit == "L" || n.Unit == "litres" {
		return fmt.Sprintf("%s (%s to %s)", v.litres(n.Amount.Middle), v.litres(n.Amount.Low), v.litres(n.Amount.High))
	}
	return strings.TrimSuffix(amount(n.Amount, 0)+" "+n.Unit, " each")
}

func (v seasonView) litres(l float64) string {
	return v.display.Units.Volume(quantity.Volume(l) * quantity.Litre)
}

// lotChoice is a lot whose place in the patch can be changed.
type lotChoice struct {
	Code, Name string
	Plant      int
}

// Pays says when the heat of a plan pays, against the plan without added heat.
func (v seasonView) Pays(b season.BreakEven) string {
	currency := v.Plan.Cost.Currency
	says := fmt.Sprintf("%s of heat gains %.1f weeks of flower for each of %d plants, beside no added heat", money(b.Heat, currency), b.WeeksGained, b.Plants)
	if b.PerPlantWeek != nil {
		says += fmt.Sprintf(": that costs %s for each plant and week", money(*b.PerPlantWeek, currency))
	}
	if b.PlantWeek != nil {
		says += fmt.Sprintf(". Stems sold bring %s for each plant and week", money(*b.PlantWeek, currency))
	}
	if b.PaysFrom != nil {
		return says + fmt.Sprintf(". In simple proportion, the same heat pays from about %d plants on", *b.PaysFrom) + v.exactly()
	}
	return says + ". By these figures it never pays in money."
}

// exactly says where the exact answer stands, which is planned afresh for each number of plants.
func (v seasonView) exactly() string {
	if v.Best.Found() && v.Answer.HeatPays != nil {
		return ". Above it is worked out exactly, for each number of plants."
	}
	return ". A search for the best plans works it out exactly, for each number of plants."
}

// PaysFrom says from how many plants on heat pays, planned afresh for each number.
func (v seasonView) PaysFrom() string { return v.Answer.PaysWords(v.display.Units) }
