package plans

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"eyeup/civil"
	"eyeup/internal/garden"
	"eyeup/odds"
	"eyeup/quantity"
	"eyeup/season"
	"eyeup/season/prove"
	"eyeup/stock"
	"eyeup/week"
)

// SeasonAnswer is a season worked out: plans side by side.
type SeasonAnswer struct {
	Garden       string               `json:"garden"`
	Today        civil.Date           `json:"today"`
	Season       civil.Span           `json:"season"`
	Weather      garden.WeatherSource `json:"weather"`
	Frost        SeasonFrost          `json:"frost"`
	PlantOutFrom civil.Date           `json:"plant_out_from" jsonschema_description:"the Monday before which nothing leafy is planted out"`
	ThisWeek     string               `json:"this_week"`
	Followed     string               `json:"followed,omitempty" jsonschema_description:"the plan that the book says is followed"`
	NotFollowed  string               `json:"not_followed,omitempty" jsonschema_description:"why a plan that was decided on can't be followed"`
	Jobs         []week.Job           `json:"jobs" jsonschema_description:"of the plan that is followed, or of the usual one"`
	Plans        []*season.Plan       `json:"plans" jsonschema_description:"the one whose decisions are held comes last"`
	PriceOfEarly []season.EarlyPoint  `json:"price_of_early"`
	HeatPays     *season.HeatPays     `json:"heat_pays,omitempty" jsonschema_description:"from how many plants on heat pays, where that was asked for"`
	FrostWeeks   []season.FrostWeek   `json:"frost_weeks"`
	NotCovered   []season.NotCovered  `json:"not_covered"`
	Growing      []season.Growing     `json:"growing" jsonschema_description:"what was started already, and is taken off what is wanted; of a plan that is held only what is not of it"`
	Assumptions  []season.Assumption  `json:"assumptions"`

	jobs     map[string][]week.Job // by plan
	brief    season.Brief
	decision stock.ID      // by which the followed plan was decided on; none where none is
	provedBy *prove.Result // nil where nothing was proved
}

// SeasonFrost is the frost that a season reckons with.
type SeasonFrost struct {
	Spring civil.WhenInYear `json:"spring"`
	Autumn civil.WhenInYear `json:"autumn"`
	Risk   quantity.Share   `json:"risk_accepted"`
}

// Asked changes what a season is worked out from: see KeepingTo and Explained.
type Asked func(*season.Brief)

// KeepingTo keeps to starts that are decided already: by the lot's code, a day of the week.
func KeepingTo(starts map[string]civil.Date) Asked {
	return func(b *season.Brief) { b.Asked.Held = starts }
}

// Explained asks where the dates of a batch come from.
func Explained(batch string) Asked {
	return func(b *season.Brief) { b.Asked.Explain = batch }
}

// Unproved leaves out how much better each plan could be, which takes a while to say.
func Unproved(b *season.Brief) { b.Asked.Unproved = true }

// Paying has a search for the best plans say too from how many plants on heat pays: it looks for
// them anew at up to eight numbers.
func Paying(b *season.Brief) { b.Asked.Pays = true }

// Season works out the season of a garden as it stands today. followed is the plan that its book
// says is followed; nil where none is, and for a folder.
func Season(g *garden.Garden, followed *Followed, today civil.Date, asked ...Asked) (*SeasonAnswer, error) {
	return seasonBy(g, followed, today, prove.Make, asked)
}

// seasonBy works out a season by a way of making plans.
func seasonBy(g *garden.Garden, followed *Followed, today civil.Date, plans func(season.Brief) (*season.Result, error), asked []Asked) (*SeasonAnswer, error) {
	if today.After(g.Span.To) {
		return nil, fmt.Errorf("the season of %d ended on %v; set plant_year to the year you plan for", g.Season.PlantYear, g.Span.To)
	}
	brief := g.Brief(today)
	for _, ask := range asked {
		ask(&brief)
	}
	result, err := plans(brief)
	held, why := followed.held(g, brief)
	switch {
	case err != nil && held == nil:
		return nil, err
	case err != nil: // all that there is was started
		result = held
	case held != nil:
		result.Plans = append(result.Plans, held.Plans...)
	}
	freezes := g.Freezes()
	a := &SeasonAnswer{
		Garden: g.Name, Today: today, Season: g.Span, Weather: g.Source(), PlantOutFrom: result.OutFrom,
		Frost: SeasonFrost{freezes.Spring(), freezes.Autumn(), g.Season.FrostRisk},
		Plans: result.Plans, PriceOfEarly: result.Early, HeatPays: result.Pays, FrostWeeks: result.FrostOdds, NotCovered: result.Plans[0].NotCovered,
	}
	a.Growing = brief.Given.Growing
	a.jobs, a.brief = map[string][]week.Job{}, brief
	for _, plan := range result.Plans {
		a.jobs[plan.Name] = week.Of(brief, plan)
	}
	a.NotFollowed = why
	if followed != nil {
		a.Followed, a.decision = followed.nameIn(a), followed.ID
	}
	plan, _ := a.PlanFollowed()
	if plan.Held {
		a.NotCovered, a.Growing = plan.NotCovered, plan.Growing
	}
	a.Jobs = a.jobs[plan.Name]
	a.ThisWeek = thisWeek(a.Jobs, today)
	a.Assumptions = assumptions(a.Plans)
	return a, nil
}

// PlanFollowed returns the plan that the grower decided on last, or the usual one.
func (a *SeasonAnswer) PlanFollowed() (plan *season.Plan, said bool) {
	for _, name := range []string{a.Followed, season.Usual} {
		if p, err := a.PlanNamed(name); err == nil {
			return p, name == a.Followed
		}
	}
	return a.Plans[0], false
}

// JobsOf returns the jobs of a plan, by its name; none where there is no such plan.
func (a *SeasonAnswer) JobsOf(plan string) []week.Job { return a.jobs[plan] }

// Explains reports whether some batch is explained.
func (a *SeasonAnswer) Explains() bool {
	for _, p := range a.Plans {
		if slices.ContainsFunc(p.Batches, func(b season.BatchPlan) bool { return len(b.Steps) > 0 }) {
			return true
		}
	}
	return false
}

// BatchIDs returns the ids of the batches of the plan that is followed, or of the usual one.
func (a *SeasonAnswer) BatchIDs() []string {
	var ids []string
	plan, _ := a.PlanFollowed()
	for _, b := range plan.Batches {
		ids = append(ids, b.ID)
	}
	return ids
}

// assumptions gathers what the plans rest on, each once.
func assumptions(plans []*season.Plan) []season.Assumption {
	all := []season.Assumption{}
	for _, p := range plans {
		for _, b := range p.Batches {
			for _, one := range b.Assumed {
				if !slices.Contains(all, one) {
					all = append(all, one)
				}
			}
		}
	}
	return all
}

// weeks writes a number of weeks to a tenth.
func weeksSpread(a odds.Amount) string {
	return fmt.Sprintf("%s (%s to %s)", Weeks(a.Middle), Weeks(a.Low), Weeks(a.High))
}

func Weeks(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return "-"
	}
	return fmt.Sprintf("%.1f", math.Round(10*x)/10+0) // +0: no minus nought
}

// Planned works out the season and picks a plan of it by name; without one, that which is
// followed, or the usual.
func Planned(g *garden.Garden, followed *Followed, name string, today civil.Date) (*SeasonAnswer, *season.Plan, error) {
	a, err := Season(g, followed, today)
	if err != nil {
		return nil, nil, err
	}
	if name == "" {
		p, _ := a.PlanFollowed()
		return a, p, nil
	}
	var names []string
	for _, p := range a.Plans {
		if p.Name == name {
			return a, p, nil
		}
		names = append(names, p.Name)
	}
	return nil, nil, fmt.Errorf("there is no plan named %q; there are: %s", name, strings.Join(names, ", "))
}
