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

// Decision is a plan that is followed, with what it promised on the day.
type Decision struct {
	Plan     string   `json:"plan"`
	Promised Promised `json:"promised"`
}

// Promised is what a plan promised when it was chosen, so that it can be held against
// what comes.
type Promised struct {
	FirstFlower civil.When  `json:"first_flower"`
	GainWeeks   odds.Amount `json:"gain_weeks"`
	Cost        float64     `json:"cost"`
	Currency    string      `json:"currency"`
	Raised      int         `json:"raised"`
}

// Said is the body of an entry that says which plan is followed: by its name, or with its
// decisions held.
type Said struct {
	Plan     string     `json:"plan"`
	Lines    []PlanLine `json:"lines"`
	Promised *Promised  `json:"promised"`
	Held     *heldSays  `json:"held,omitempty"`
}

// PlanLine is one line of the plan followed, with the dates that were told of its batch.
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

// Decide returns the body of the entry by which a plan of the season is followed by its name: it
// is worked out anew every day. It refuses a plan that the season does not have.
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

// Hold returns the body of the entry by which a plan of the season is followed with its decisions
// held: what is raised how and from when, and what is held warm, as it stands. The plan may be one
// on the price of early. It refuses a plan that the season does not have.
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

// Decided is an entry by which a plan was decided on.
type Decided struct {
	ID   stock.ID // of the entry, or of the one that puts it right
	On   civil.Date
	Said Said
}

// LastDecided returns the last decision that counts still; nil for none. What can't be read
// decides nothing.
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

// isHeld reports whether the decisions of a plan are held, and not its name.
func (d *Decided) isHeld() bool { return d != nil && d.Said.Held != nil }

// nameIn returns the name of the plan that was decided on, where a season has it.
func (d *Decided) nameIn(a *SeasonAnswer) string {
	if d == nil {
		return ""
	}
	if _, err := a.PlanNamed(d.Said.Plan); err != nil {
		return ""
	}
	return d.Said.Plan
}
