package season

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"eyeup/civil"
	"eyeup/growth"
	"eyeup/odds"
	"eyeup/place"
)

// realized is a plan on its way: the portions as they fare with the settings as they are.
type realized struct {
	*maker
	plan     *Plan
	parts    []*part
	short    map[*batch]*lack
	left     map[*batch]int
	at       levels
	steps    map[int]step    // by place
	settings []place.Setting // by place
	days     map[int]span    // by place: its days of use, where they are decided
	used     []span          // by place: days in use in any year
	heats    []*heatSums     // by place; nil where it is not heated
}

// part is one portion with the fates of its middle plant and of its individuals.
type part struct {
	portion
	name  string // by which the plan tells of it
	life  *life
	fates []fate   // middle plant, by year
	lot   [][]fate // individuals, by year
	gains []float64
}

// span is a run of days of the season; to is the day after the last.
type span struct{ from, to int }

// realize turns an assignment into a plan: heated places are heated only while they are
// in use, every lot is walked with its own spread, and all is added up.
func (m *maker) realize(name, says string, at levels, a assignment) *Plan {
	r := m.begin(name, says, at, a)
	r.use()
	r.set(at)
	r.walk()
	return r.told()
}

// begin is a plan of which nothing is told yet.
func (m *maker) begin(name, says string, at levels, a assignment) *realized {
	r := &realized{maker: m, short: a.short, left: a.left, at: at, steps: a.steps, plan: &Plan{
		Name: name, Says: says, Years: len(m.Weather), PlantOutFrom: m.date(m.outFrom), NotCovered: m.left,
		Work: []WorkWeek{}, Shortfalls: []Shortfall{}, ToGet: []Need{}, Shared: []string{}, Dividing: []Dividing{}, Batches: []BatchPlan{}, Places: []PlacePlan{},
		Baseline: "stock and seed put into the open when soil and frost allow",
	}}
	for _, p := range a.portions {
		r.parts = append(r.parts, &part{portion: p, life: p.batch.life, fates: p.fates})
	}
	return r
}

// told tells a plan whose lots were walked.
func (r *realized) told() *Plan {
	r.batchPlans()
	r.plan.Decisions = r.decisions()
	r.placePlans()
	r.totals()
	return r.plan
}

// use finds the days on which each place is in use in some year, or takes those decided.
func (r *realized) use() {
	r.used = make([]span, len(r.Places))
	for i := range r.used {
		decided, is := r.days[i]
		if r.used[i] = decided; is {
			continue
		}
		r.used[i] = span{never, 0}
		for _, p := range r.parts {
			for _, f := range p.fates {
				r.used[i] = r.used[i].with(p.option, p.life, f, i, int(r.Span.Days()))
			}
		}
	}
}

// warming is how many days before its first plants a house is heated.
const warming = 3

// set makes the settings: each heated place is held at its level while it is in use.
func (r *realized) set(at levels) {
	r.settings = make([]place.Setting, len(r.Places))
	for i := range r.Places {
		r.settings[i] = r.setting(i, 0)
		if r.Places[i].Sort != Glass || at[i] == 0 || r.used[i].from == never {
			continue
		}
		r.settings[i] = r.heldWhile(i, at[i])
	}
	for i := range r.Places {
		if house := r.houseOf(i); house >= 0 {
			r.settings[i] = r.settings[house]
		}
	}
}

// heldWhile is the setting of a place that is held at a level while it is in use, with the
// step that saves heat, if there is one.
func (r *realized) heldWhile(at, level int) place.Setting {
	on, off := r.date(r.used[at].from-warming), r.date(r.used[at].to)
	all := r.Places[at].Level
	first, second := all[level], all[level]
	change, stepped := r.steps[at]
	if stepped {
		second = all[change.level]
		if change.up {
			first, second = second, first
		}
	}
	steps := []place.Step{{From: on, Level: first}}
	switch day := r.date(change.day); {
	case !stepped || !day.Before(off):
	case day.After(on):
		steps = append(steps, place.Step{From: day, Level: second})
	default:
		steps[0].Level = second
	}
	return place.Setting{Steps: append(steps, place.Step{From: off, Off: true})}
}

// individuals stand for a lot: its plants between the slowest tenth and the quickest,
// each with its own haste to come up and to flower.
var individuals = []struct{ up, flower float64 }{{0.1, 0.7}, {0.3, 0.1}, {0.5, 0.5}, {0.7, 0.9}, {0.9, 0.3}}

// flowerSpread is the spread of the days to flower within a lot. Assumption: agrees with
// first flowers of one variety in one bed over two to three weeks.
const flowerSpread = 0.08

// walk leads the middle plant and the lot of every part through the places as set.
func (r *realized) walk() {
	for _, p := range r.parts {
		o := p.option
		o.route = r.as(p.route)
		base := r.baseline(p.batch)
		as := r.liveOnce(p.life, o, base)
		own := *p.outcome
		own.fates, own.later = as.fates, as.later
		p.outcome, p.fates, p.lot = &own, as.fates, as.individually()
		for year, f := range p.fates {
			p.gains = append(p.gains, weeksOfFlower(f, r.ends[year])-weeksOfFlower(base.fates[year], r.ends[year]))
		}
	}
}

// individually walks the individuals of a lot through every year, moved as its middle plant
// decides.
func (o *outcome) individually() [][]fate {
	o.later.lot.Do(func() {
		o.lots = make([][]fate, len(o.fates))
		for year, f := range o.fates {
			w, moves := walker{life: o.life, option: &o.option, year: year}, &schedule{f.handOn, f.framed, f.potted, f.out}
			for _, i := range individuals {
				one := individual{
					growth.Lognormal{Middle: 1, Sigma: o.life.Sprout.Sigma}.At(i.up),
					growth.Lognormal{Middle: 1, Sigma: flowerSpread}.At(i.flower),
				}
				o.lots[year] = append(o.lots[year], w.walk(one, moves))
			}
		}
	})
	return o.lots
}

// as returns a route with its places at the settings of the plan.
func (r *realized) as(way *route) *route {
	if way.direct {
		return way
	}
	set := *way
	set.first = r.climate(way.firstPlace, r.settings[way.firstPlace])
	set.on = r.climate(way.onPlace, r.settings[way.onPlace])
	return &set
}

// when sums up days of the span over years and individuals.
func (m *maker) when(days []int) civil.When {
	figures := make([]float64, len(days))
	for i, d := range days {
		figures[i] = float64(d)
		if d == never {
			figures[i] = math.Inf(1)
		}
	}
	a := odds.AmountOf(figures)
	return civil.When{Early: m.dateOf(a.Low), Middle: m.dateOf(a.Middle), Late: m.dateOf(a.High)}
}

func (m *maker) dateOf(day float64) civil.Date {
	if math.IsInf(day, 0) || math.IsNaN(day) {
		return civil.Date{}
	}
	return m.date(int(math.Round(day)))
}

// pick returns one day of every fate, of the middle plants or of the whole lot.
func (p *part) pick(day func(fate) int) []int {
	days := make([]int, len(p.fates))
	for i, f := range p.fates {
		days[i] = day(f)
	}
	return days
}

func (p *part) pickLot(day func(fate) int) []int {
	var days []int
	for _, year := range p.lot {
		for _, f := range year {
			days = append(days, day(f))
		}
	}
	return days
}

// inOrder sorts the parts by kinds and varieties and tells each what it is called.
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

// batchPlans tells what every part does, in the order of kinds and varieties.
func (r *realized) batchPlans() {
	r.inOrder()
	for _, p := range r.parts {
		plan := r.batchPlan(p)
		if r.Explain != "" && plan.ID == r.Explain {
			plan.Steps = r.explain(p)
		}
		r.plan.Batches = append(r.plan.Batches, plan)
	}
}

func (r *realized) batchPlan(p *part) BatchPlan {
	plan := BatchPlan{
		ID: p.name, Code: p.Code, Kind: p.Variety.Kind, Variety: p.Variety.Name, Timing: string(p.Variety.Timing),
		Colour: p.Variety.Colour, Form: string(p.Form), Count: p.count, Container: p.life.container, How: string(p.how), Parents: p.parents,
		Gain: odds.AmountOf(p.gains), Assumed: p.life.assumed,
	}
	out := r.when(p.pick(func(f fate) int { return f.out }))
	plan.Dates = Dates{
		Start: r.date(p.start), PlantOut: out,
		Eyed:        r.when(p.pickLot(func(f fate) int { return f.eyed })),
		Up:          r.when(p.pickLot(func(f fate) int { return f.up })),
		FirstFlower: r.when(p.pickLot(func(f fate) int { return f.flower })),
	}
	switch {
	case p.route.direct:
		plan.Container = ""
		plan.Dates.Start = out.Middle
		if lack := r.short[p.batch]; lack != nil {
			plan.Why = fmt.Sprintf("no room: %s is %.1f m² short in the week of %v", r.benchName(lack.bench), lack.short, r.date(r.firstMonday+7*lack.week))
		}
	case p.route.stays && p.route.firstPlace == p.route.onPlace:
		plan.Container = ""
	case p.route.firstPlace != p.route.onPlace:
		plan.Dates.HandOn = r.when(p.pick(func(f fate) int { return f.handOn }))
	}
	if p.route.framePlace >= 0 {
		plan.Dates.Frame = r.when(p.pick(func(f fate) int { return f.framed }))
	}
	if passed := p.containers(); plan.Container != "" {
		plan.BeginsIn, plan.Container = passed[0], passed[len(passed)-1]
	}
	if p.route.pot != nil {
		plan.Dates.PotUp = r.when(p.pick(func(f fate) int { return f.potted }))
	}
	r.yearDates(&plan, p)
	plan.Stored = r.stored(p)
	plan.Starts = []Start{{Week: plan.Dates.Start.Monday(), Count: p.count, Route: p.route.name}}
	plan.Stays = r.stays(p)
	nights, drawn := make([]float64, len(p.fates)), make([]float64, len(p.fates))
	for i, f := range p.fates {
		nights[i], drawn[i] = float64(f.coldNights), float64(f.stretched)
		if f.died < r.ends[i] {
			plan.Lost++
		}
		if f.flower >= r.ends[i] {
			plan.NoFlower++
		}
	}
	plan.ColdNights, plan.Stretched = odds.AmountOf(nights), odds.AmountOf(drawn)
	return plan
}

// yearDates tells what became of a part's middle plant in every year.
func (r *realized) yearDates(plan *BatchPlan, p *part) {
	plan.OutFrom = r.date(p.outFrom)
	if p.route.firstPlace != p.route.onPlace {
		plan.SafeFrom = r.date(p.route.onFrom(p.life))
	}
	for i, f := range p.fates {
		start := p.start
		if p.route.direct {
			start = f.out
		}
		plan.Years = append(plan.Years, YearDates{
			r.Years[i], r.date(start), r.date(f.eyed), r.date(f.up), r.date(f.handOn), r.date(f.potted), r.date(f.framed), r.date(f.out), r.date(f.flower), r.date(r.ends[i]),
		})
	}
}

// benchName names a bench as the grower would.
func (m *maker) benchName(bench int) string {
	if bench >= len(m.Places) {
		return m.Places[bench-len(m.Places)].Name + " under lamps"
	}
	return m.Places[bench].Name
}

// stays lists where a part stands, by the middle dates over the years.
func (r *realized) stays(p *part) []Stay {
	out := r.dateOf(middle(p.pick(func(f fate) int { return f.out })))
	stay := func(at int, from, to civil.Date) Stay {
		most := 0.0
		for _, area := range p.room(float64(r.Fits), r.weeks, r.maker)[at] {
			most = max(most, area)
		}
		return Stay{Place: r.Places[at].Name, From: from, To: to, AreaM2: hundredth(most * float64(p.count) * p.bedShare(r.Places[at].Sort))}
	}
	end := r.dateOf(middle(slices.Clone(r.ends)))
	ground := stay(r.placeOf(Ground), out, end)
	if p.route.direct {
		return []Stay{ground}
	}
	if p.route.stays {
		from := r.date(p.start)
		var first []Stay
		if p.route.firstPlace != p.route.onPlace {
			from = r.dateOf(middle(p.pick(func(f fate) int { return f.handOn })))
			first = []Stay{stay(p.route.firstPlace, r.date(p.start), from)}
		}
		gone := middle(p.pick(func(f fate) int { return min(f.flower, f.died) })) + float64(p.life.cutFor)
		return append(first, stay(p.route.onPlace, from, r.dateOf(gone)))
	}
	first := []Stay{stay(p.route.firstPlace, r.date(p.start), out)}
	move := func(to int, day func(fate) int) {
		on := r.dateOf(middle(p.pick(day)))
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

func middle(days []int) float64 {
	figures := make([]float64, len(days))
	for i, d := range days {
		figures[i] = float64(d)
		if d == never {
			figures[i] = math.Inf(1)
		}
	}
	return odds.Sorted(figures).At(0.5)
}

func hundredth(x float64) float64 { return math.Round(x*100) / 100 }
