package season

import (
	"strings"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/stock"
)

// Decisions are all that is decided in a plan: what is raised by which way, how many and from
// when, and which places are held at what level, and when. All else follows from rules, and
// from the weather. See Follow.
type Decisions struct {
	Plan    string     `json:"plan"`
	Says    string     `json:"says"`
	OutFrom civil.Date `json:"out_from" jsonschema_description:"the Monday before which nothing leafy is planted out"`
	Batches []Decided  `json:"batches"`
	Places  []Held     `json:"places" jsonschema_description:"what is heated, at what level, and when"`
}

// Decided is what is decided of so many plants of a batch.
type Decided struct {
	ID      string     `json:"id" jsonschema_description:"of the batch; after a stroke the number of the way, where it is raised in several"`
	Code    string     `json:"code,omitempty"`
	Kind    string     `json:"kind"`
	Variety string     `json:"variety"`
	Form    stock.Form `json:"form" jsonschema_description:"in which the stock waits"`
	How     How        `json:"how"`
	Place   string     `json:"place,omitempty" jsonschema_description:"where the stock waits; left out of seed"`
	Pack    string     `json:"pack,omitempty" jsonschema_description:"what it is packed in"`
	Parents int        `json:"parents,omitempty" jsonschema_description:"clumps that are cut, or mothers of cuttings, of the whole batch"`
	Of      int        `json:"of" jsonschema_description:"plants of the whole batch"`
	Plant   int        `json:"plant" jsonschema_description:"of its lot, wanted in the patch"`
	Reserve int        `json:"reserve" jsonschema_description:"of its lot, kept back"`
	Count   int        `json:"count" jsonschema_description:"plants raised in this way"`
	Start   civil.Date `json:"start,omitzero" jsonschema_description:"the Monday of the week in which it is woken, started or sown; left out of what goes straight into the ground"`
	OutFrom civil.Date `json:"out_from,omitzero" jsonschema_description:"the Monday before which it is not planted out"`
	Way     Way        `json:"way"`
}

// Way is the places that plants pass, by their names. All are empty for what goes straight
// into the ground.
type Way struct {
	First   string `json:"first,omitempty" jsonschema_description:"where it is started"`
	On      string `json:"on,omitempty" jsonschema_description:"where it stands once it is up; the same where it is not handed on"`
	Frame   string `json:"frame,omitempty" jsonschema_description:"where it hardens; left out where it is carried out and in"`
	Pot     string `json:"pot,omitempty" jsonschema_description:"the small pot from which it is potted up"`
	ForGood bool   `json:"for_good,omitempty" jsonschema_description:"it stays under cover and flowers there"`
}

// IsDirect reports whether the stock goes straight into the ground.
func (w Way) IsDirect() bool { return w.First == "" }

// batch is the id of the batch that is raised in one way or several.
func (d Decided) batch() string {
	id, _, _ := strings.Cut(d.ID, "/")
	return id
}

// decide tells what is decided in an assignment, without leading its lots through the years.
func (m *Planner) Decide(name, says string, at Levels, a Assignment) *Decisions {
	r := m.begin(name, says, at, a)
	r.use()
	r.set(at)
	r.inOrder()
	return r.decisions()
}

// decisions tells what is decided in a plan whose places are set and whose parts are named.
func (r *realized) decisions() *Decisions {
	d := &Decisions{Plan: r.plan.Name, Says: r.plan.Says, OutFrom: r.plan.PlantOutFrom, Batches: []Decided{}, Places: []Held{}}
	raised := map[*batch]bool{}
	for _, p := range r.parts {
		d.Batches = append(d.Batches, r.decided(p))
		raised[p.batch] = true
	}
	for _, b := range r.planner.batches {
		if !raised[b] { // nothing of it finds a way
			d.Batches = append(d.Batches, b.decided(b.id, 0))
		}
	}
	for i := range r.planner.Given.Places {
		if r.isSet(i) {
			d.Places = append(d.Places, r.heldPlace(i))
		}
	}
	return d
}

func (b *batch) decided(id string, count int) Decided {
	return Decided{
		ID: id, Code: b.Code, Kind: b.Variety.Kind, Variety: b.Variety.Name, Form: b.Form, How: b.how, Place: b.Place, Pack: b.Pack,
		Parents: b.parents, Of: b.want, Plant: b.Plant, Reserve: b.Reserve, Count: count,
	}
}

func (r *realized) decided(p *part) Decided {
	d := p.batch.decided(p.name, p.Count)
	if way := p.route; !way.direct {
		d.Start, d.OutFrom = r.planner.Date(p.start), r.planner.Date(p.outFrom)
		d.Way = Way{First: r.planner.Given.Places[way.firstPlace].Name, On: r.planner.Given.Places[way.onPlace].Name, ForGood: way.stays}
		if way.framePlace >= 0 {
			d.Way.Frame = r.planner.Given.Places[way.framePlace].Name
		}
		if way.pot != nil {
			d.Way.Pot = way.pot.container
		}
	}
	return d
}

// heldPlace tells how a place is held. A room has no level, and a bench but one.
func (r *realized) heldPlace(at int) Held {
	place := r.planner.Given.Places[at]
	h := Held{Place: place.Name, Level: quantity.Unknown(), From: r.planner.Date(r.used[at].From - Warming), To: r.planner.Date(r.used[at].To)}
	switch place.Sort {
	case Bench:
		h.Level = place.Level[1]
	case Glass:
		steps := r.settings[at].Steps
		h.Level = steps[0].Level
		if len(steps) == 3 {
			h.Then = &LevelStep{steps[1].From, steps[1].Level}
		}
	}
	return h
}
