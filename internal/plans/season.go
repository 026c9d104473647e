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

// SeasonAnswer is the answer to "how does the season go": plans side by side, with their jobs.
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

// SeasonFrost is the frost that a season is planned for.
type SeasonFrost struct {
	Spring civil.WhenInYear `json:"spring"`
	Autumn civil.WhenInYear `json:"autumn"`
	Risk   quantity.Share   `json:"risk_accepted"`
}

// Asked is an option of Season and Prove: see KeepingTo, Explained, Unproved and Paying.
type Asked func(*season.Brief)

// KeepingTo fixes starts that are decided already. Keys are lot codes; values any day of the week of the
// start.
func KeepingTo(starts map[string]civil.Date) Asked {
	return func(b *season.Brief) { b.Asked.Held = starts }
}

// Explained asks for an explanation of the dates of a batch, named by its lot's code.
func Explained(batch string) Asked {
	return func(b *season.Brief) { b.Asked.Explain = batch }
}

// Unproved leaves out how much better each plan could be, which takes a while to work out.
func Unproved(b *season.Brief) { b.Asked.Unproved = true }

// Paying asks a search for the best plans to find also from how many plants on heat pays. The search is
// then repeated for up to eight numbers of plants.
func Paying(b *season.Brief) { b.Asked.Pays = true }

// Season works out the season of a garden as it stands today. followed is the plan that its book says is
// followed; nil for none, and for a folder. It fails where the season is over, and where no plan can be
// made.
func Season(g *garden.Garden, followed *Followed, today civil.Date, asked ...Asked) (*SeasonAnswer, error) {
	return seasonBy(g, followed, today, prove.Make, asked)
}

// seasonBy works out a season. plans makes its plans.
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
	case err != nil: // everything was started already
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

// PlanFollowed returns the plan that the grower chose last, or the usual one. said is whether the grower
// chose it.
func (a *SeasonAnswer) PlanFollowed() (plan *season.Plan, said bool) {
	for _, name := range []string{a.Followed, season.Usual} {
		if p, err := a.PlanNamed(name); err == nil {
			return p, name == a.Followed
		}
	}
	return a.Plans[0], false
}

// JobsOf returns the jobs of the plan of a name; none where there is no such plan.
func (a *SeasonAnswer) JobsOf(plan string) []week.Job { return a.jobs[plan] }

// Explains reports whether the dates of some batch are explained.
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

// assumptions gathers what the plans assume, each assumption once.
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

// weeksSpread writes a number of weeks with its range, to a tenth of a week.
func weeksSpread(a odds.Amount) string {
	return fmt.Sprintf("%s (%s to %s)", Weeks(a.Middle), Weeks(a.Low), Weeks(a.High))
}

// Weeks writes a number of weeks to a tenth; a dash where it is not a number.
func Weeks(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return "-"
	}
	return fmt.Sprintf("%.1f", math.Round(10*x)/10+0) // +0: no minus nought
}

// Planned works out the season and picks the plan of a name. An empty name means the plan that is
// followed, or the usual one. It fails for a plan that the season does not have.
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
