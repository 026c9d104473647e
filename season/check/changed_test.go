package check

import (
	"slices"
	"testing"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/season"
)

// copyOf returns a plan that can be changed without changing the other.
func copyOf(p *season.Plan) *season.Plan {
	q := *p
	q.Batches, q.Places = slices.Clone(p.Batches), slices.Clone(p.Places)
	for i := range q.Batches {
		q.Batches[i].Starts, q.Batches[i].Stays = slices.Clone(q.Batches[i].Starts), slices.Clone(q.Batches[i].Stays)
	}
	for i, at := range q.Places {
		q.Places[i].Weeks = slices.Clone(at.Weeks)
		for w, week := range at.Weeks {
			if week.Cost != nil {
				cost := *week.Cost
				q.Places[i].Weeks[w].Cost = &cost
			}
		}
		if at.Heat != nil {
			heat := *at.Heat
			q.Places[i].Heat = &heat
		}
	}
	for i, b := range q.Batches {
		if b.Stored != nil {
			stored := *b.Stored
			q.Batches[i].Stored = &stored
		}
	}
	if p.Worst != nil {
		worst := *p.Worst
		q.Worst = &worst
	}
	q.Dividing = slices.Clone(p.Dividing)
	q.Work, q.ToGet, q.Shortfalls, q.NotCovered = slices.Clone(p.Work), slices.Clone(p.ToGet), slices.Clone(p.Shortfalls), slices.Clone(p.NotCovered)
	return &q
}

// potted returns the first batch of a plan that is handed on, and glass its heated place.
func potted(p *season.Plan) *season.BatchPlan {
	return &p.Batches[slices.IndexFunc(p.Batches, func(b season.BatchPlan) bool { return len(b.Stays) == 3 })]
}

func heated(p *season.Plan) *season.PlacePlan {
	return &p.Places[slices.IndexFunc(p.Places, func(at season.PlacePlan) bool { return at.Heat != nil })]
}

// busiest returns the week of a place with the most room used.
func busiest(at *season.PlacePlan) *season.PlaceWeek {
	week := &at.Weeks[0]
	for i := range at.Weeks {
		if at.Weeks[i].UsedM2 > week.UsedM2 {
			week = &at.Weeks[i]
		}
	}
	return week
}

// change is a single figure of a plan put wrong, and what the report must speak of.
type change struct {
	name, tells string
	make        func(p *season.Plan)
}

// changes are figures of what becomes of the plants, and of what it takes.
var changes = []change{
	{"eyes a week late", "eyes showing", func(p *season.Plan) { later(&potted(p).Dates.Eyed.Middle) }},
	{"up a week late in early years", "coming up", func(p *season.Plan) { later(&potted(p).Dates.Up.Early) }},
	{"handed on a week late", "handing on", func(p *season.Plan) { later(&potted(p).Dates.HandOn.Middle) }},
	{"planted out a week late in late years", "planting out", func(p *season.Plan) { later(&potted(p).Dates.PlantOut.Late) }},
	{"planted out two days late", "planting out", func(p *season.Plan) {
		d := &potted(p).Dates.PlantOut.Middle
		*d = d.AddDays(2)
	}},
	{"flowers a week late", "first flower", func(p *season.Plan) { later(&potted(p).Dates.FirstFlower.Middle) }},
	{"never flowers in late years", "first flower", func(p *season.Plan) { potted(p).Dates.FirstFlower.Late = civil.Date{} }},
	{"two years' first flower a day late", "first flower in", func(p *season.Plan) {
		years := slices.Clone(potted(p).Years)
		years[3].First, years[7].First = years[3].First.AddDays(1), years[7].First.AddDays(1)
		potted(p).Years = years
	}},
	{"a year not told", "years told", func(p *season.Plan) { potted(p).Years = potted(p).Years[1:] }},
	{"the plan flowers a week late", "first flower", func(p *season.Plan) { later(&p.FirstFlower.Middle) }},
	{"started a week late", "coming up", func(p *season.Plan) {
		later(&potted(p).Starts[0].Week)
		later(&potted(p).Dates.Start)
	}},
	{"a start that is not the batch's", "start", func(p *season.Plan) { later(&potted(p).Dates.Start) }},
	{"a start gone by", "start", func(p *season.Plan) {
		early := autumn.Monday().AddDays(-civil.Week)
		potted(p).Starts[0].Week, potted(p).Dates.Start = early, early
	}},
	{"leafy plants out a week early", "planting out from", func(p *season.Plan) { p.PlantOutFrom = p.PlantOutFrom.AddDays(-civil.Week) }},
	{"a route not in the garden", "decision", func(p *season.Plan) { potted(p).Starts[0].Route = "loft, then glass" }},
	{"another route", "stays", func(p *season.Plan) { potted(p).Starts[0].Route = "cold frame" }},
	{"two starts", "decision", func(p *season.Plan) {
		b := potted(p)
		b.Starts = append(b.Starts, b.Starts[0])
	}},
	{"a plant more", "count", func(p *season.Plan) {
		potted(p).Count++
		potted(p).Starts[0].Count++
	}},
	{"a start of a plant more", "count", func(p *season.Plan) { potted(p).Starts[0].Count++ }},
	{"a plant of one lot for one of another", "count", func(p *season.Plan) {
		a, b := &p.Batches[0], &p.Batches[len(p.Batches)-1]
		a.Count, a.Starts[0].Count, b.Count, b.Starts[0].Count = a.Count+1, a.Starts[0].Count+1, b.Count-1, b.Starts[0].Count-1
	}},
	{"a batch dropped", "count", func(p *season.Plan) { p.Batches = p.Batches[1:] }},
	{"stock left alone that is not there", "not covered", func(p *season.Plan) {
		p.NotCovered = append(p.NotCovered, season.NotCovered{Kind: "dahlia", Variety: "Slow Ferry", Count: 3, Form: "clump"})
	}},
	{"a want of stock passed over", "short of stock", func(p *season.Plan) {
		p.Shortfalls = append(p.Shortfalls, season.Shortfall{Of: "stock", Variety: p.Batches[0].Variety, Short: 2})
	}},
	{"a stay a week long", "stay", func(p *season.Plan) { later(&potted(p).Stays[1].To) }},
	{"a stay in less room", "room", func(p *season.Plan) { potted(p).Stays[1].AreaM2 -= 0.05 }},
	{"a bench of less", "room used", func(p *season.Plan) { busiest(heated(p)).UsedM2 -= 0.03 }},
	{"room that is not there", "room there is", func(p *season.Plan) { busiest(heated(p)).RoomM2++ }},
	{"heat given off by 1 %", "heat given", func(p *season.Plan) { heated(p).Heat.GivenKWh.Middle *= 1.01 }},
	{"heat asked off by 0.2 %", "heat asked", func(p *season.Plan) { heated(p).Heat.AskedKWh.High *= 0.998 }},
	{"hours short left out", "hours short", func(p *season.Plan) { heated(p).Heat.HoursShort.High += 1 }},
	{"a level half a kelvin up", "heat given", func(p *season.Plan) {
		heated(p).Level = heated(p).Level.Add(quantity.Difference(0.5))
	}},
	{"heat off a week early", "heat given", func(p *season.Plan) { heated(p).HeatedTo = heated(p).HeatedTo.AddDays(-civil.Week) }},
	{"a week's bill off", "heat bill", func(p *season.Plan) {
		for _, w := range heated(p).Weeks {
			if w.Cost != nil && w.Cost.Middle > 1 {
				w.Cost.Middle *= 1.02
				return
			}
		}
	}},
	{"heat that costs more than it takes", "heat", func(p *season.Plan) { p.Cost.HeatSpread.High += 3 }},
	{"a total that does not add up", "total", func(p *season.Plan) { p.Cost.Total++ }},
	{"mix that does not add up", "mix", func(p *season.Plan) { p.Cost.Mix++ }},
	{"light off by ten", "light", func(p *season.Plan) { p.Cost.Light += 10 }},
	{"hands unpaid", "work", func(p *season.Plan) { p.Cost.Work++ }},
	{"a pot too cheap", "a pot", func(p *season.Plan) { p.Cost.PerPot -= 0.02 }},
	{"hours that do not add up", "hours", func(p *season.Plan) { p.Cost.WorkHours += 0.02 }},
	{"a week's hours off", "hours of work", func(p *season.Plan) { p.Work[0].Hours += 0.02 }},
	{"a week of work dropped", "hours of work", func(p *season.Plan) { p.Work = p.Work[1:] }},
	{"a pot too few to get", "amount", func(p *season.Plan) { p.ToGet[1].Amount.Middle-- }},
	{"mix too dear", "cost", func(p *season.Plan) { p.ToGet[0].Cost++ }},
	{"a gain of a week more", "weeks gained", func(p *season.Plan) { potted(p).Gain.Middle++ }},
	{"a plan's gain of a week more", "weeks gained", func(p *season.Plan) { p.GainWeeks.High++ }},
	{"years lost", "years lost", func(p *season.Plan) { potted(p).Lost += 2 }},
	{"a year left out", "years", func(p *season.Plan) { p.Years-- }},
	{"another container", "container", func(p *season.Plan) { potted(p).Container = "no5" }},
	{"a place left out", "place", func(p *season.Plan) { p.Places = p.Places[1:] }},
}

func later(d *civil.Date) { *d = d.AddDays(civil.Week) }

// TestChangesAreFound puts one figure of the example garden's earliest plan wrong at a time.
func TestChangesAreFound(t *testing.T) {
	found(t, exampleBrief(t), earliest(t), changes)
}

// TestNoPlanIsNoPanic replays what can't be replayed.
func TestNoPlanIsNoPanic(t *testing.T) {
	b := exampleBrief(t)
	plan := earliest(t)
	all := newCourses(&b)
	dark := b
	dark.Given.Weather = nil
	nowhere := b
	nowhere.Given.Places = b.Given.Places[:1]
	for name, r := range map[string]Report{
		"no plan": Plan(b, nil), "an empty plan": Plan(b, &season.Plan{}), "an empty brief": Plan(season.Brief{}, plan),
		"no weather": Plan(dark, plan), "no ground": Plan(nowhere, plan),
	} {
		if r.OK() {
			t.Errorf("%s holds", name)
		}
	}
	for name, spoil := range map[string]func(p *season.Plan){
		"a start before the season":       func(p *season.Plan) { p.Batches[0].Starts[0].Week = civil.Date{} },
		"a start after the season":        func(p *season.Plan) { p.Batches[0].Starts[0].Week = b.Given.Span.To.AddDays(9) },
		"heat that ends before it begins": func(p *season.Plan) { heated(p).HeatedTo = heated(p).HeatedFrom.AddDays(-9) },
		"heat beyond the season": func(p *season.Plan) {
			heated(p).HeatedFrom, heated(p).HeatedTo = b.Given.Span.To.AddDays(9), b.Given.Span.To.AddDays(99)
		},
		"heat before the season": func(p *season.Plan) {
			heated(p).HeatedFrom, heated(p).HeatedTo = b.Given.Span.From.AddDays(-99), b.Given.Span.From.AddDays(-9)
		},
		"no batches": func(p *season.Plan) { p.Batches = nil },
		"no weeks":   func(p *season.Plan) { heated(p).Weeks = nil },
	} {
		spoiled := copyOf(plan)
		spoil(spoiled)
		if all.replay(spoiled).OK() {
			t.Errorf("%s holds", name)
		}
	}
}
