package season

import (
	"cmp"
	"fmt"
	"slices"

	"eyeup/civil"
	"eyeup/odds"
	"eyeup/stock"
)

// inOrder sorts the parts by kinds and varieties and gives each its name.
func (r *realized) inOrder() {
	slices.SortStableFunc(r.parts, func(a, b *part) int {
		return cmp.Or(cmp.Compare(a.Variety.Kind, b.Variety.Kind), cmp.Compare(a.Variety.Name, b.Variety.Name),
			cmp.Compare(a.id, b.id), cmp.Compare(a.start, b.start))
	})
	ways := map[*batch]int{}
	for _, p := range r.parts {
		ways[p.batch]++
		p.name = p.id
		if n := ways[p.batch]; n > 1 {
			p.name = fmt.Sprintf("%s/%d", p.id, n)
		}
	}
}

// batchPlans describes what every part does, in the order of kinds and varieties.
func (r *realized) batchPlans() {
	r.inOrder()
	for _, p := range r.parts {
		plan := r.batchPlan(p)
		if r.planner.Asked.Explain != "" && plan.ID == r.planner.Asked.Explain {
			plan.Steps = r.explain(p)
		}
		r.plan.Batches = append(r.plan.Batches, plan)
	}
}

func (r *realized) batchPlan(p *part) BatchPlan {
	plan := BatchPlan{
		ID: p.name, Code: p.Code, Kind: p.Variety.Kind, Variety: p.Variety.Name, Timing: string(p.Variety.Timing),
		Colour: p.Variety.Colour, Form: string(p.Form), Count: p.Count, Container: p.life.container, How: string(p.how), Parents: p.parents,
		Gain: odds.AmountOf(p.gains), Assumed: p.life.assumed,
	}
	if p.Form != stock.Seed {
		plan.Place = p.Place
	}
	out := r.planner.when(p.pick(func(f fate) int { return f.out }))
	plan.Dates = Dates{
		Start: r.planner.Date(p.start), PlantOut: out,
		Eyed:        r.planner.when(p.pickLot(func(f fate) int { return f.eyed })),
		Up:          r.planner.when(p.pickLot(func(f fate) int { return f.up })),
		FirstFlower: r.planner.when(p.pickLot(func(f fate) int { return f.flower })),
	}
	switch {
	case p.route.direct:
		plan.Container = ""
		plan.Dates.Start = out.Middle
		if lack := r.short[p.batch]; lack != nil {
			plan.NoRoom = &Crowded{Place: r.planner.BenchName(lack.bench), Week: r.planner.Date(r.planner.FirstMonday + 7*lack.week), ShortM2: Hundredth(lack.short)}
		}
	case p.route.stays && p.route.firstPlace == p.route.onPlace:
		plan.Container = ""
	case p.route.firstPlace != p.route.onPlace:
		plan.Dates.HandOn = r.planner.when(p.pick(func(f fate) int { return f.handOn }))
	}
	if p.route.framePlace >= 0 {
		plan.Dates.Frame = r.planner.when(p.pick(func(f fate) int { return f.framed }))
	}
	if passed := p.containers(); plan.Container != "" {
		plan.BeginsIn, plan.Container = passed[0], passed[len(passed)-1]
	}
	if p.route.pot != nil {
		plan.Dates.PotUp = r.planner.when(p.pick(func(f fate) int { return f.potted }))
	}
	r.yearDates(&plan, p)
	plan.Stored = r.stored(p, plan.Dates.Start)
	plan.Starts = []Start{{Week: plan.Dates.Start.Monday(), Count: p.Count, Route: p.route.name}}
	plan.Stays = r.stays(p)
	nights, drawn := make([]float64, len(p.fates)), make([]float64, len(p.fates))
	for i, f := range p.fates {
		nights[i], drawn[i] = float64(f.coldNights), float64(f.stretched)
		if f.died < r.planner.ends[i] {
			plan.Lost++
		}
		if f.flower >= r.planner.ends[i] {
			plan.NoFlower++
		}
	}
	plan.ColdNights, plan.Stretched = odds.AmountOf(nights), odds.AmountOf(drawn)
	return plan
}

// yearDates describes what became of a part's middle plant in every year.
func (r *realized) yearDates(plan *BatchPlan, p *part) {
	plan.OutFrom = r.planner.Date(p.outFrom)
	if p.route.firstPlace != p.route.onPlace {
		plan.SafeFrom = r.planner.Date(p.route.onFrom(p.life))
	}
	for i, f := range p.fates {
		start := p.start
		if p.route.direct {
			start = f.out
		}
		plan.Years = append(plan.Years, YearDates{
			r.planner.Given.Years[i], r.planner.Date(start), r.planner.Date(f.eyed), r.planner.Date(f.up), r.planner.Date(f.handOn), r.planner.Date(f.potted), r.planner.Date(f.framed), r.planner.Date(f.out), r.planner.Date(f.flower), r.planner.Date(r.planner.ends[i]),
		})
	}
}

// benchName names a bench as the grower would.
func (m *Planner) BenchName(bench int) string {
	if bench >= len(m.Given.Places) {
		return m.Given.Places[bench-len(m.Given.Places)].Name + " under lamps"
	}
	return m.Given.Places[bench].Name
}

// stays lists where a part stands, by the middle dates over the years.
func (r *realized) stays(p *part) []Stay {
	out := r.planner.dateOf(middle(p.pick(func(f fate) int { return f.out })))
	stay := func(at int, from, to civil.Date) Stay {
		most := 0.0
		for _, area := range p.room(float64(r.planner.Asked.Fits), r.planner.Weeks, r.planner)[at] {
			most = max(most, area)
		}
		return Stay{Place: r.planner.Given.Places[at].Name, From: from, To: to, AreaM2: Hundredth(most * float64(p.Count) * p.bedShare(r.planner.Given.Places[at].Sort))}
	}
	end := r.planner.dateOf(middle(slices.Clone(r.planner.ends)))
	ground := stay(r.planner.placeOf(Ground), out, end)
	if p.route.direct {
		return []Stay{ground}
	}
	if p.route.stays {
		from := r.planner.Date(p.start)
		var first []Stay
		if p.route.firstPlace != p.route.onPlace {
			from = r.planner.dateOf(middle(p.pick(func(f fate) int { return f.handOn })))
			first = []Stay{stay(p.route.firstPlace, r.planner.Date(p.start), from)}
		}
		gone := middle(p.pick(func(f fate) int { return min(f.flower, f.died) })) + float64(p.life.cutFor)
		return append(first, stay(p.route.onPlace, from, r.planner.dateOf(gone)))
	}
	first := []Stay{stay(p.route.firstPlace, r.planner.Date(p.start), out)}
	move := func(to int, day func(fate) int) {
		on := r.planner.dateOf(middle(p.pick(day)))
		first[len(first)-1].To = on
		first = append(first, stay(to, on, out))
	}
	if p.route.firstPlace != p.route.onPlace {
		move(p.route.onPlace, func(f fate) int { return f.handOn })
	}
	if p.route.framePlace >= 0 {
		move(p.route.framePlace, func(f fate) int { return f.framed })
	}
	return append(first, ground)
}
