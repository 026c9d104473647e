package plans

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"eyeup/season"
	"eyeup/week"
)

// Opened returns the season with the plan of a name worked out in full. The plan is one of the season's
// plans, or one from the price of early of a proved season. It fails for any other name.
func (a *SeasonAnswer) Opened(name string) (*SeasonAnswer, error) {
	if _, err := a.PlanNamed(name); err == nil {
		return a, nil
	}
	at := slices.IndexFunc(a.PriceOfEarly, func(e season.EarlyPoint) bool { return e.Plan == name && e.Decisions != nil })
	if at < 0 {
		return nil, fmt.Errorf("there is no plan named %q; there are: %s", name, strings.Join(a.PlanNames(), ", "))
	}
	point := a.PriceOfEarly[at]
	r, err := season.Follow(a.brief, *point.Decisions)
	if err != nil {
		return nil, err
	}
	plan := r.Plans[0]
	plan.Held, plan.Proof = false, point.Proof
	opened := *a
	opened.Plans, opened.jobs = append(slices.Clip(a.Plans), plan), maps.Clone(a.jobs)
	opened.jobs[name] = week.Of(a.brief, plan)
	return &opened, nil
}

// PlanNames names the plans of the season, and those from the price of early that can be opened.
func (a *SeasonAnswer) PlanNames() []string {
	var names []string
	for _, p := range a.Plans {
		names = append(names, p.Name)
	}
	for _, e := range a.PriceOfEarly {
		if e.Decisions != nil && !slices.Contains(names, e.Plan) {
			names = append(names, e.Plan)
		}
	}
	return names
}
