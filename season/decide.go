package season

import (
	"strings"

	"eyeup/quantity"
)

// batch is the id of the batch that is raised in one way or several.
func (d Decided) batch() string {
	id, _, _ := strings.Cut(d.ID, "/")
	return id
}

// decide describes what is decided in an assignment, without leading its lots through the years.
func (m *Planner) Decide(name, says string, at Levels, a Assignment) *Decisions {
	r := m.begin(name, says, at, a)
	r.use()
	r.set(at)
	r.inOrder()
	return r.decisions()
}

// decisions describes what is decided in a plan whose places are set and whose parts are named.
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

// heldPlace says how a place is held. A room has no level, and a bench but one.
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
