package season

import (
	"math"

	"eyeup/civil"
	"eyeup/odds"
	"eyeup/place"
)

// realized is a plan on its way: the portions as they fare with the settings as they are.
type realized struct {
	planner  *Planner
	plan     *Plan
	parts    []*part
	short    map[*batch]*lack
	left     map[*batch]int
	at       Levels
	steps    map[int]Step    // by place
	settings []place.Setting // by place
	days     map[int]Days    // by place: its days of use, where they are decided
	used     []Days          // by place: days in use in any year
	heats    []*heatSums     // by place; nil where it is not heated
}

// part is one portion with the fates of its middle plant and of its individuals.
type part struct {
	Portion
	name  string // by which the plan names it
	life  *life
	fates []fate   // middle plant, by year
	lot   [][]fate // individuals, by year
	gains []float64
}

// begin is a plan that is still empty.
func (m *Planner) begin(name, says string, at Levels, a Assignment) *realized {
	r := &realized{planner: m, short: a.short, left: a.Left, at: at, steps: a.Steps, plan: &Plan{
		Name: name, Says: says, Years: len(m.Given.Weather), PlantOutFrom: m.Date(m.OutFrom), NotCovered: m.left, Growing: append([]Growing{}, m.Given.Growing...),
		Work: []WorkWeek{}, Shortfalls: []Shortfall{}, ToGet: []Need{}, Shared: []string{}, Dividing: []Dividing{}, Batches: []BatchPlan{}, Places: []PlacePlan{},
		Baseline: "stock and seed put into the open when soil and frost allow",
	}}
	for _, p := range a.Portions {
		r.parts = append(r.parts, &part{Portion: p, life: p.batch.life, fates: p.fates()})
	}
	return r
}

// use finds the days on which each place is in use in some year, or takes those decided.
func (r *realized) use() {
	r.used = make([]Days, len(r.planner.Given.Places))
	for i := range r.used {
		decided, is := r.days[i]
		if r.used[i] = decided; is {
			continue
		}
		r.used[i] = Days{Never, 0}
		for _, p := range r.parts {
			for _, f := range p.fates {
				r.used[i] = r.used[i].with(p.option, p.life, f, i, int(r.planner.Given.Span.Days()))
			}
		}
	}
}

// set makes the settings: each heated place is held at its level while it is in use.
func (r *realized) set(at Levels) {
	r.settings = make([]place.Setting, len(r.planner.Given.Places))
	for i := range r.planner.Given.Places {
		r.settings[i] = r.planner.setting(i, 0)
		if r.planner.Given.Places[i].Sort != Glass || at[i] == 0 || r.used[i].From == Never {
			continue
		}
		r.settings[i] = r.heldWhile(i, at[i])
	}
	for i := range r.planner.Given.Places {
		if house := r.planner.houseOf(i); house >= 0 {
			r.settings[i] = r.settings[house]
		}
	}
}

// heldWhile is the setting of a place that is held at a level while it is in use, with the
// step that saves heat, if there is one.
func (r *realized) heldWhile(at, level int) place.Setting {
	on, off := r.planner.Date(r.used[at].From-Warming), r.planner.Date(r.used[at].To)
	all := r.planner.Given.Places[at].Level
	first, second := all[level], all[level]
	change, stepped := r.steps[at]
	if stepped {
		second = all[change.Level]
		if change.Up {
			first, second = second, first
		}
	}
	steps := []place.Step{{From: on, Level: first}}
	switch day := r.planner.Date(change.Day); {
	case !stepped || !day.Before(off):
	case day.After(on):
		steps = append(steps, place.Step{From: day, Level: second})
	default:
		steps[0].Level = second
	}
	return place.Setting{Steps: append(steps, place.Step{From: off, Off: true})}
}

// when sums up days of the span over years and individuals.
func (m *Planner) when(days []int) civil.When {
	figures := make([]float64, len(days))
	for i, d := range days {
		figures[i] = float64(d)
		if d == Never {
			figures[i] = math.Inf(1)
		}
	}
	a := odds.AmountOf(figures)
	return civil.When{Early: m.dateOf(a.Low), Middle: m.dateOf(a.Middle), Late: m.dateOf(a.High)}
}

func (m *Planner) dateOf(day float64) civil.Date {
	if math.IsInf(day, 0) || math.IsNaN(day) {
		return civil.Date{}
	}
	return m.Date(int(math.Round(day)))
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

func middle(days []int) float64 {
	figures := make([]float64, len(days))
	for i, d := range days {
		figures[i] = float64(d)
		if d == Never {
			figures[i] = math.Inf(1)
		}
	}
	return odds.Sorted(figures).At(0.5)
}
