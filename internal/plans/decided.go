package plans

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"eyeup/civil"
	"eyeup/internal/report"
	"eyeup/internal/stockbook"
	"eyeup/odds"
	"eyeup/season"
	"eyeup/stock"
)

// Decision is a plan that is followed, with what it promised on the day it was chosen.
type Decision struct {
	Plan     string   `json:"plan"`
	Promised Promised `json:"promised"`
}

// Promised is what a plan promised when it was chosen, to be compared with what happens.
type Promised struct {
	FirstFlower civil.When  `json:"first_flower"`
	GainWeeks   odds.Amount `json:"gain_weeks"`
	Cost        float64     `json:"cost"`
	Currency    string      `json:"currency"`
	Raised      int         `json:"raised"`
}

// Said is the body of an entry that says which plan is followed. The plan is followed by name, or, where
// Held is set, with its decisions fixed.
type Said struct {
	Plan     string     `json:"plan"`
	Lines    []PlanLine `json:"lines"`
	Promised *Promised  `json:"promised"`
	Held     *heldSays  `json:"held,omitempty"`
}

// PlanLine is one line of the plan followed, with the dates that the plan promised for its batch.
type PlanLine struct {
	ID      string     `json:"id"`
	Code    string     `json:"code,omitempty"`
	Kind    string     `json:"kind,omitempty"`
	Variety string     `json:"variety,omitempty"`
	How     string     `json:"how,omitempty"`
	Start   civil.Date `json:"start,omitzero"`
	Count   int        `json:"count"`
	Route   string     `json:"route,omitempty"`
	Up      civil.When `json:"up,omitzero"`
	Out     civil.When `json:"out,omitzero"`
	Flower  civil.When `json:"flower,omitzero"`
	lineHeld
}

// Decide returns the body of the entry that follows a plan by its name: the plan is worked out anew every
// day. It fails for a plan that the season does not have, and for one that is followed already.
func (a *SeasonAnswer) Decide(plan string) ([]byte, error) {
	p, err := a.PlanNamed(plan)
	switch {
	case err != nil:
		return nil, err
	case p.Held:
		return nil, fmt.Errorf("%q is followed already", plan)
	}
	return json.Marshal(decisionOf(p))
}

// Hold returns the body of the entry that follows a plan with its decisions held: what is raised, how and
// from when, and the levels of heated places. The plan may be one from the price of early. It fails for a
// plan that the season does not have, and for one that is followed already.
func (a *SeasonAnswer) Hold(plan string) ([]byte, error) {
	opened, err := a.Opened(plan)
	if err != nil {
		return nil, err
	}
	p, _ := opened.PlanNamed(plan)
	if p.Held {
		return nil, fmt.Errorf("%q is followed already", plan)
	}
	return json.Marshal(heldDecisionOf(p))
}

// PlanNamed returns the plan of a name. It fails where there is none, and lists the names there are.
func (a *SeasonAnswer) PlanNamed(name string) (*season.Plan, error) {
	at := slices.IndexFunc(a.Plans, func(p *season.Plan) bool { return p.Name == name })
	if at < 0 {
		return nil, fmt.Errorf("there is no plan named %q; there are: %s", name, strings.Join(a.PlanNames(), ", "))
	}
	return a.Plans[at], nil
}

func decisionOf(p *season.Plan) Said {
	d := Said{Plan: p.Name, Promised: &Promised{
		FirstFlower: p.FirstFlower, GainWeeks: report.RoundedAmount(p.GainWeeks, 2), Cost: *report.Rounded(p.Cost.Total, 2), Currency: p.Cost.Currency, Raised: raised(p),
	}}
	for _, b := range p.Batches {
		for _, s := range b.Starts {
			d.Lines = append(d.Lines, PlanLine{
				ID: b.ID, Code: b.Code, Kind: b.Kind, Variety: b.Variety, How: b.How, Start: s.Week, Count: s.Count, Route: s.Route,
				Up: b.Dates.Up, Out: b.Dates.PlantOut, Flower: b.Dates.FirstFlower,
			})
		}
	}
	return d
}

// Decided is the entry by which the grower chose a plan.
type Decided struct {
	ID   stock.ID // of the entry, or of the one that corrects it
	On   civil.Date
	Said Said
}

// LastDecided returns the last decision that was not undone; nil for none. An entry that can't be read
// names no plan.
func LastDecided(s *stockbook.Book) *Decided {
	var root, head stock.ID
	var is bool
	s.Read(func(b *stock.Book) { root, head, is = b.LastOf("decided") })
	if !is {
		return nil
	}
	last := &Decided{ID: head}
	first, err := s.Entry(root)
	said := first.Body
	if err == nil && head != root {
		var right stock.Entry
		if right, err = s.Entry(head); err == nil {
			var put stockbook.PuttingRight
			put, err = stockbook.ReadPutRight(right)
			said = put.Body
		}
	}
	if err == nil && json.Unmarshal(said, &last.Said) == nil {
		last.On = first.On
		return last
	}
	return &Decided{ID: head}
}

// isHeld reports whether the plan is followed with its decisions held, rather than by its name.
func (d *Decided) isHeld() bool { return d != nil && d.Said.Held != nil }

// nameIn returns the name of the plan that was chosen; empty where the season has no such plan.
func (d *Decided) nameIn(a *SeasonAnswer) string {
	if d == nil {
		return ""
	}
	if _, err := a.PlanNamed(d.Said.Plan); err != nil {
		return ""
	}
	return d.Said.Plan
}
