package plans

import (
	"math"
	"strconv"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/season"
	"eyeup/stock"
)

// heldSays is what an entry holds of a plan whose decisions are held, besides its lines.
type heldSays struct {
	Says    string      `json:"says,omitempty"`
	OutFrom civil.Date  `json:"out_from"`
	Places  []heldPlace `json:"places"`
}

// heldPlace is a place that is held at a level from the day From to the day before To.
type heldPlace struct {
	Place string         `json:"place"`
	Level *stock.Measure `json:"level,omitempty"` // only of glass and warm benches
	From  civil.Date     `json:"from"`
	To    civil.Date     `json:"to"`
	Then  *heldStep      `json:"then,omitempty"`
}

// heldStep is a change to another level from a day on.
type heldStep struct {
	From  civil.Date    `json:"from"`
	Level stock.Measure `json:"level"`
}

// lineHeld is what a line holds only where the plan's decisions are held.
type lineHeld struct {
	Form    stock.Form  `json:"form,omitempty"`
	Place   string      `json:"place,omitempty"`
	Pack    string      `json:"pack,omitempty"`
	Parents int         `json:"parents,omitempty"`
	Of      int         `json:"of,omitempty"`
	Plant   int         `json:"plant,omitempty"`
	Reserve int         `json:"reserve,omitempty"`
	OutFrom civil.Date  `json:"out_from,omitzero"`
	Way     *season.Way `json:"way,omitempty"`
}

// heldPrefix distinguishes a plan whose decisions are held from the plan of the same name that is worked
// out anew every day.
const heldPrefix = "held: "

// heldDecisionOf is the body of an entry that follows a plan with its decisions held.
func heldDecisionOf(p *season.Plan) Said {
	d, held := decisionOf(p), p.Decisions
	d.Plan = heldPrefix + p.Name
	d.Held = &heldSays{Says: held.Says, OutFrom: held.OutFrom, Places: []heldPlace{}}
	for _, h := range held.Places {
		d.Held.Places = append(d.Held.Places, heldPlaceOf(h))
	}
	lines := map[string]PlanLine{}
	for _, l := range d.Lines {
		lines[l.ID] = l
	}
	d.Lines = nil
	for _, one := range held.Batches {
		l, raised := lines[one.ID]
		if !raised { // the plan raises nothing of it
			l = PlanLine{ID: one.ID, Code: one.Code, Kind: one.Kind, Variety: one.Variety, How: string(one.How)}
		}
		l.lineHeld = lineHeld{one.Form, one.Place, one.Pack, one.Parents, one.Of, one.Plant, one.Reserve, one.OutFrom, &one.Way}
		d.Lines = append(d.Lines, l)
	}
	return d
}

func heldPlaceOf(h season.Held) heldPlace {
	one := heldPlace{Place: h.Place, From: h.From, To: h.To}
	if h.Level.IsKnown() {
		level := levelSaid(h.Level)
		one.Level = &level
	}
	if h.Then != nil {
		one.Then = &heldStep{h.Then.From, levelSaid(h.Then.Level)}
	}
	return one
}

// levelSaid writes a level to a thousandth of a degree, closer than any thermostat can hold it.
func levelSaid(t quantity.Temperature) stock.Measure {
	return stock.Measure{Figure: strconv.FormatFloat(math.Round(1000*t.Celsius())/1000, 'f', -1, 64), Unit: "C"}
}

// decisions returns the decisions of the entry. It is nil where the plan is followed by its name, and
// where the decisions can't be read.
func (d Said) decisions() *season.Decisions {
	if d.Held == nil {
		return nil
	}
	all := &season.Decisions{Plan: d.Plan, Says: d.Held.Says, OutFrom: d.Held.OutFrom}
	for _, l := range d.Lines {
		if l.Way == nil {
			return nil
		}
		one := season.Decided{
			ID: l.ID, Code: l.Code, Kind: l.Kind, Variety: l.Variety, Form: l.Form, How: season.How(l.How), Place: l.Place, Pack: l.Pack,
			Parents: l.Parents, Of: l.Of, Plant: l.Plant, Reserve: l.Reserve, Count: l.Count, OutFrom: l.OutFrom, Way: *l.Way,
		}
		if !l.Way.IsDirect() {
			one.Start = l.Start
		}
		all.Batches = append(all.Batches, one)
	}
	for _, h := range d.Held.Places {
		one := season.Held{Place: h.Place, Level: quantity.Unknown(), From: h.From, To: h.To}
		var err error
		if h.Level != nil {
			one.Level, err = h.Level.Temperature()
		}
		if err == nil && h.Then != nil {
			one.Then = &season.LevelStep{From: h.Then.From}
			one.Then.Level, err = h.Then.Level.Temperature()
		}
		if err != nil {
			return nil
		}
		all.Places = append(all.Places, one)
	}
	return all
}
