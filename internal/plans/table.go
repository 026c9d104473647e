package plans

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"eyeup/internal/report"
	"eyeup/quantity"
	"eyeup/season"
)

// columns are the plans that are printed side by side, three at most. A plan whose decisions are held
// takes the column of the usual one.
func (a *SeasonAnswer) columns() []*season.Plan {
	if len(a.Plans) <= mostColumns {
		return a.Plans
	}
	return slices.Concat(a.Plans[:1], a.Plans[mostColumns:mostColumns+1], a.Plans[2:mostColumns])
}

// mostColumns is how many plans a page is wide enough for.
const mostColumns = 3

// heading is the heading of a plan's column.
func heading(p *season.Plan) string {
	if p.Held {
		return "the plan followed"
	}
	return p.Name
}

// sideBySide prints the plans in columns.
func (a *SeasonAnswer) sideBySide(p *report.Page, units quantity.System) {
	plans := a.columns()
	printRow(p, "", heading, plans)
	for _, name := range heatedPlaces(plans) {
		printRow(p, HeatedAs(plans, name), func(plan *season.Plan) string { return HeldOf(plan, name, units) }, plans)
		if slices.ContainsFunc(plans, func(plan *season.Plan) bool { return then(plan, name, units) != "" }) {
			printRow(p, "  then", func(plan *season.Plan) string { return then(plan, name, units) }, plans)
		}
	}
	printRow(p, "first flower", func(plan *season.Plan) string { return report.ShortDate(plan.FirstFlower.Middle) }, plans)
	printRow(p, "  8 in 10 between", func(plan *season.Plan) string {
		return report.ShortDate(plan.FirstFlower.Early) + " / " + report.ShortDate(plan.FirstFlower.Late)
	}, plans)
	printRow(p, "weeks gained", func(plan *season.Plan) string { return weeksSpread(plan.GainWeeks) }, plans)
	printRow(p, "raised under cover", func(plan *season.Plan) string { return fmt.Sprintf("%d of %d", potted(plan), raised(plan)) }, plans)
	if slices.ContainsFunc(plans, func(plan *season.Plan) bool { return plan.StretchedDays() >= 0.5 }) {
		printRow(p, "stretched per plant", func(plan *season.Plan) string { return report.Counted(int(math.Round(plan.StretchedDays())), "day") }, plans)
	}
	heatRows(p, plans, units)
	a.costRows(p, plans)
	printRow(p, "benches suffice", Suffices, plans)
	for i, pl := range a.Plans[0].Places {
		if pl.Weeks[0].RoomM2 > 0 && isFilled(plans, i) {
			printRow(p, pl.Place+", fullest", func(plan *season.Plan) string { return fullest(plan.Places[i], units) }, plans)
		}
	}
}

// Suffices says in how many years the benches suffice, and how many were asked for where that is too few.
func Suffices(plan *season.Plan) string {
	if plan.FitsYears < plan.Asked {
		return fmt.Sprintf("%d of %d, asked %d", plan.FitsYears, plan.Years, plan.Asked)
	}
	return fmt.Sprintf("%d of %d years", plan.FitsYears, plan.Years)
}

func (a *SeasonAnswer) costRows(p *report.Page, plans []*season.Plan) {
	printRow(p, "heat, light", func(plan *season.Plan) string {
		return fmt.Sprintf("%8s, %s", HeatCost(plan), LightCost(plan))
	}, plans)
	for _, r := range []struct {
		name   string
		amount func(season.Cost) float64
	}{
		{"mix and pots", func(c season.Cost) float64 { return c.Mix }},
		{"paid help", func(c season.Cost) float64 { return c.Work }},
	} {
		if !slices.ContainsFunc(plans, func(plan *season.Plan) bool { return r.amount(plan.Cost) != 0 }) {
			continue
		}
		printRow(p, r.name, func(plan *season.Plan) string { return fmt.Sprintf("%8.2f", r.amount(plan.Cost)) }, plans)
	}
	printRow(p, "total, "+a.Plans[0].Cost.Currency, func(plan *season.Plan) string {
		words := fmt.Sprintf("%8.2f (%.2f/pot)", plan.Cost.Total, plan.Cost.PerPot)
		return words[max(0, min(len(words)-column, strings.Index(words, strings.TrimSpace(words)))):]
	}, plans)
	printRow(p, "own hours", func(plan *season.Plan) string { return fmt.Sprintf("%5.0f", plan.Cost.WorkHours) }, plans)
}

// column is the width of a plan's column, in characters.
const column = 19

// printRow prints one figure of every plan.
func printRow(p *report.Page, name string, of func(*season.Plan) string, plans []*season.Plan) {
	line := fmt.Sprintf("%-19s", report.Clipped(name, 20))
	for _, plan := range plans {
		line += fmt.Sprintf(" %-*s", column, of(plan))
	}
	p.Line(line)
}

func raised(plan *season.Plan) int {
	n := 0
	for _, b := range plan.Batches {
		n += b.Count
	}
	return n
}

// isFilled reports whether some plan fills half of a place or more in some week. place is its index. An
// emptier place limits nothing, so the report leaves it out.
func isFilled(plans []*season.Plan, place int) bool {
	return slices.ContainsFunc(plans, func(plan *season.Plan) bool {
		return slices.ContainsFunc(plan.Places[place].Weeks, func(w season.PlaceWeek) bool { return w.UsedM2 >= w.RoomM2/2 })
	})
}

// fullest says how much room is taken in a place's fullest week, of the room there is.
func fullest(pl season.PlacePlan, units quantity.System) string {
	most := slices.MaxFunc(pl.Weeks, func(a, b season.PlaceWeek) int { return cmp.Compare(a.UsedM2, b.UsedM2) })
	used, _, _ := strings.Cut(units.Area(quantity.Area(most.UsedM2)), " ")
	return used + " of " + units.Area(quantity.Area(most.RoomM2))
}

func potted(plan *season.Plan) int {
	n := 0
	for _, b := range plan.Batches {
		if b.Container != "" {
			n += b.Count
		}
	}
	return n
}
