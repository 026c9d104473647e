package week

import (
	"math"
	"slices"

	"eyeup/civil"
	"eyeup/culture"
	"eyeup/season"
	"eyeup/stock"
)

// maker makes the jobs of one plan.
type maker struct {
	season.Brief
	plan *season.Plan
	list
}

// Of lists the jobs of a plan by its median dates, from the start of the season to its end.
func Of(b season.Brief, p *season.Plan) []Job {
	m := &maker{Brief: b, plan: p, list: list{index: map[key]*Job{}}}
	m.rounds()
	for _, batch := range p.Batches {
		kind, known := b.Given.Kinds(batch.Kind)
		if !known {
			continue
		}
		m.raise(batch, kind)
		m.autumn(batch, kind)
	}
	m.growing()
	m.mites()
	return m.sorted()
}

// RoundEvery is the interval between rounds of a store.
var RoundEvery = days("store.round")

// rounds adds a round of every store each month while stock is in it.
func (m *maker) rounds() {
	for _, p := range m.Given.Places {
		if p.Sort != season.Store {
			continue
		}
		waiting, minutes := 0, 0.0
		for _, h := range m.Given.Stock {
			if h.Place == p.Name && h.Form != stock.Seed {
				waiting += h.Count
				if kind, known := m.Given.Kinds(h.Variety.Kind); known {
					minutes += work(kind, "round") * float64(h.Count)
				}
			}
		}
		if waiting == 0 {
			continue
		}
		first := m.Given.Span.From.AddDays(packed).Monday()
		for day := first; day.Before(m.plan.PlantOutFrom); day = day.AddDays(RoundEvery) {
			m.add(day, "go through the crates", "", p.Name, "", 0, 0, "monthly round: count firm, wrinkled, soft, lost")
			m.index[key{day, "go through the crates", "", p.Name}].Minutes = minutes
		}
	}
}

// packed is when stock is in store: mid-October, or mid-April in the south.
var packed = days("store.packed")

// days is a general figure of culture in days.
func days(figure string) civil.Days { return civil.Days(culture.Usual(figure)) }

// raise lists the jobs from start to planting out.
func (m *maker) raise(b season.BatchPlan, k *culture.Kind) {
	ground := b.Stays[len(b.Stays)-1].Place
	out := b.Dates.PlantOut.Middle
	add := func(day civil.Date, what, step, where, why string) {
		m.add(day, what, b.Kind, where, b.Variety, b.Count, work(k, step), why)
	}
	if len(b.Stays) == 1 && b.Container == "" {
		add(b.Dates.Start, "plant", "plant", ground, "in a median year the soil is warm enough by now")
		return
	}
	first := b.Stays[0].Place
	m.begin(b, k, first)
	if k.Life == culture.Sow {
		if days := k.SowToPot; days > 0 && !b.Dates.Up.Middle.IsZero() {
			add(b.Dates.Up.Middle.AddDays(civil.Days(days)), "prick out", "prick", first, "the true leaves show")
		}
	}
	if late := lookAfter(k); late > 0 {
		add(b.Dates.Start.AddDays(late), "look at what is not up", "", first, "not up after five weeks: rotten, blind, or only slow")
	}
	if hand := b.Dates.HandOn.Middle; !hand.IsZero() {
		add(hand, "hand on", "hand_on", b.Stays[1].Place, "half are up and need light")
	}
	if potted := b.Dates.PotUp.Middle; !potted.IsZero() {
		add(potted, "pot up", "pot_up", placeOn(b, potted), "roots fill the small pot")
	}
	if framed := b.Dates.Frame.Middle; !framed.IsZero() {
		add(framed, "harden", "hand_on", lastBefore(b, ground), "in the frame until planted out: open by day, shut when frost threatens")
	} else if !out.IsZero() {
		add(out.AddDays(-civil.Days(harden(k))), "harden", "harden", lastBefore(b, ground), "out by day, in by night, for a week")
	}
	if !out.IsZero() {
		add(out, "plant out", "plant", ground, "frost and soil allow")
	}
}

// growing lists the remaining jobs of plants started before the plan: harden them and plant
// them out when frost allows.
func (m *maker) growing() {
	at := slices.IndexFunc(m.Given.Places, func(p season.Place) bool { return p.Sort == season.Ground })
	for _, g := range m.plan.Growing {
		kind, known := m.Given.Kinds(g.Kind)
		if !known || at < 0 || g.Place == m.Given.Places[at].Name {
			continue
		}
		out := m.plan.PlantOutFrom
		m.add(out.AddDays(-civil.Days(harden(kind))), "harden", g.Kind, g.Place, g.Variety, g.Count, work(kind, "harden"), "out by day, in by night, for a week")
		m.add(out, "plant out", g.Kind, m.Given.Places[at].Name, g.Variety, g.Count, work(kind, "plant"), "frost allows; it is already growing")
	}
}

// begin lists how a batch is started: clumps to be cut wake in trays first, and so do
// divisions; all else goes into its container at once.
func (m *maker) begin(b season.BatchPlan, k *culture.Kind, first string) {
	add := func(day civil.Date, what string, count int, step, why string) {
		m.add(day, what, b.Kind, first, b.Variety, count, work(k, step), why)
	}
	switch {
	case b.How == string(season.Divided):
		add(b.Dates.Start, "wake", b.Parents, "wake", "in trays, four to six clumps to each, "+m.waking(first)+", until eyes show")
		add(b.Dates.Eyed.Middle, "divide", b.Parents, "divide", "eyes show: each piece needs body, neck and eye; clean the knife between lots")
		add(b.Dates.Eyed.Middle, "pot", b.Count, "start", "the cuts are dry; leave the eye of each piece uncovered")
	case k.Life == culture.Store && b.Form == string(stock.Division):
		add(b.Dates.Start, "wake", b.Count, "wake", "side by side in trays, "+m.waking(first)+", until shoots show")
		add(b.Dates.Up.Middle, "pot", b.Count, "start", "shoots show")
	default:
		add(b.Dates.Start, m.startWord(b, k), b.Count, "start", "the start of the plan")
	}
}

// waking says how stock is woken in a place; in a warm room it may stand in the dark.
func (m *maker) waking(place string) string {
	for _, p := range m.Given.Places {
		if p.Name == place && p.Sort == season.Room {
			return "dark and barely damp, 60 to 70 °F (16 to 21 °C)"
		}
	}
	return "barely damp"
}

// startWord is the name of the job of starting.
func (m *maker) startWord(b season.BatchPlan, k *culture.Kind) string {
	switch {
	case k.Life == culture.Sow:
		return "sow"
	case b.How == "cuttings":
		return "start mothers for"
	}
	return "start"
}

func lookAfter(k *culture.Kind) civil.Days {
	if math.IsNaN(k.LookAfter) {
		return 0
	}
	return civil.Days(k.LookAfter)
}

func harden(k *culture.Kind) float64 {
	if math.IsNaN(k.HardenDays) {
		return 0
	}
	return k.HardenDays
}

// placeOn returns the place of a batch on a day.
func placeOn(b season.BatchPlan, d civil.Date) string {
	at := b.Stays[0].Place
	for _, s := range b.Stays {
		if !s.From.IsZero() && !s.From.After(d) {
			at = s.Place
		}
	}
	return at
}

// lastBefore returns the place of a batch before it is planted out.
func lastBefore(b season.BatchPlan, ground string) string {
	for i := len(b.Stays) - 1; i >= 0; i-- {
		if b.Stays[i].Place != ground {
			return b.Stays[i].Place
		}
	}
	return ground
}

// work returns the minutes of a step; 0 if unknown.
func work(k *culture.Kind, step string) float64 {
	each, known := k.Work(step)
	if !known {
		return 0
	}
	return each
}
