package desk

import (
	"encoding/json"
	"fmt"

	"eyeup/civil"
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

// decision is the body of an entry that says which plan is followed.
type decision struct {
	Plan     string     `json:"plan"`
	Lines    []planLine `json:"lines"`
	Promised *Promised  `json:"promised"`
}

// planLine is one line of the plan followed, with the dates that were told of its batch.
type planLine struct {
	ID      string     `json:"id"`
	Code    string     `json:"code,omitempty"`
	Kind    string     `json:"kind,omitempty"`
	Variety string     `json:"variety,omitempty"`
	How     string     `json:"how,omitempty"`
	Start   civil.Date `json:"start"`
	Count   int        `json:"count"`
	Route   string     `json:"route,omitempty"`
	Up      civil.When `json:"up,omitzero"`
	Out     civil.When `json:"out,omitzero"`
	Flower  civil.When `json:"flower,omitzero"`
}

// Decide returns the body of the entry by which a plan of the season is followed. It
// refuses a plan that the season does not have.
func (a *SeasonAnswer) Decide(plan string) ([]byte, error) {
	for _, p := range a.Plans {
		if p.Name == plan {
			return json.Marshal(decisionOf(p))
		}
	}
	return nil, fmt.Errorf("the season has no plan named %q", plan)
}

func decisionOf(p *season.Plan) decision {
	d := decision{Plan: p.Name, Promised: &Promised{
		FirstFlower: p.FirstFlower, GainWeeks: roundedAmount(p.GainWeeks, 2), Cost: *rounded(p.Cost.Total, 2), Currency: p.Cost.Currency, Raised: raised(p),
	}}
	for _, b := range p.Batches {
		for _, s := range b.Starts {
			d.Lines = append(d.Lines, planLine{b.ID, b.Code, b.Kind, b.Variety, b.How, s.Week, s.Count, s.Route, b.Dates.Up, b.Dates.PlantOut, b.Dates.FirstFlower})
		}
	}
	return d
}

// decided is an entry by which a plan was decided on.
type decided struct {
	id   stock.ID
	on   civil.Date
	said decision
}

// Decided returns the name of the plan that the grower decided on last, empty for none.
func (d *Desk) Decided() string {
	if last := d.lastDecided(); last != nil {
		return last.said.Plan
	}
	return ""
}

// lastDecided returns the last decision that counts still; nil for none.
func (d *Desk) lastDecided() *decided {
	all := d.lookThrough().decisions
	var last *decided
	d.Read(func(b *stock.Book) {
		for i := len(all) - 1; i >= 0 && last == nil; i-- {
			if _, stands, _ := b.Head(all[i].id); stands {
				last = &all[i]
			}
		}
	})
	return last
}
