package season

import (
	"fmt"
	"math"
	"slices"

	"eyeup/civil"
)

// action is a thing that a plan does in one week to one lot.
type action struct {
	week     civil.Date
	id, what string
	count    int
	route    string
}

// actions lists the starts of a plan in the order of their weeks.
func actions(p *Plan) []action {
	var all []action
	for _, b := range p.Batches {
		for _, s := range b.Starts {
			all = append(all, action{s.Week, b.ID, b.Variety, s.Count, s.Route})
		}
	}
	slices.SortStableFunc(all, func(a, b action) int { return int(a.week.Sub(b.week)) })
	return all
}

// beside notes for each plan what it shares with the others and when they differ.
func beside(plans []*Plan) {
	all := make([][]action, len(plans))
	for i, p := range plans {
		all[i] = actions(p)
	}
	inAll := func(a action) bool {
		for _, of := range all {
			if !slices.Contains(of, a) {
				return false
			}
		}
		return true
	}
	for i, p := range plans {
		for _, a := range all[i] {
			if inAll(a) {
				p.Shared = append(p.Shared, fmt.Sprintf("%s: start %d %s (%s)", a.week.Short(), a.count, a.what, a.route))
			} else if p.DecideBy.IsZero() {
				p.DecideBy = a.week
			}
		}
	}
	// a plan must be chosen before the first week in which any other plan does what it does not
	first := civil.Date{}
	for _, p := range plans {
		if !p.DecideBy.IsZero() && (first.IsZero() || p.DecideBy.Before(first)) {
			first = p.DecideBy
		}
	}
	for _, p := range plans {
		p.DecideBy = first
	}
}

// gainOf returns the weeks a plant of a lot gains in a plan.
func gainOf(p *Plan, code, variety string) float64 {
	plants, gain := 0, 0.0
	for _, b := range p.Batches {
		if b.Code == code && b.Variety == variety {
			plants += b.Count
			gain += float64(b.Count) * b.Gain.Middle
		}
	}
	return gain / float64(max(plants, 1))
}

// breakEven says when the heat of a plan pays, against the plan without.
func (m *Planner) breakEven(p, without *Plan) {
	if p.Cost.Heat <= 0 {
		return
	}
	heated := map[string]bool{}
	for _, pl := range p.Places {
		heated[pl.Place] = pl.Heat != nil
	}
	plants, more := 0, 0.0
	for _, b := range p.Batches {
		if !slices.ContainsFunc(b.Stays, func(s Stay) bool { return heated[s.Place] }) {
			continue
		}
		plants += b.Count
		more += float64(b.Count) * (b.Gain.Middle - gainOf(without, b.Code, b.Variety))
	}
	e := &BreakEven{Heat: p.Cost.Heat, Plants: plants, WeeksGained: Hundredth(more / float64(max(plants, 1)))}
	if more > 0 {
		each := Hundredth(p.Cost.Heat / more)
		e.PerPlantWeek = &each
	}
	if m.Given.Prices.PlantWeek.Known {
		worth := Hundredth(m.Given.Prices.PlantWeek.Amount)
		e.PlantWeek = &worth
		if more > 0 && worth > 0 {
			from := int(math.Ceil(p.Cost.Heat / (worth * more / float64(plants))))
			e.PaysFrom = &from
		}
	}
	p.BreakEven = e
}
