package season

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"sync"

	"eyeup/civil"
	"eyeup/culture"
)

// Result is a season worked out: plans side by side, from the one without added heat to
// the earliest.
type Result struct {
	Plans     []*Plan
	FrostOdds []FrostWeek
	OutFrom   civil.Date // the Monday before which nothing leafy is planted out
	Early     []EarlyPoint
	Pays      *HeatPays // nil where it was not asked for, and where no plan heats a house
}

// FrostWeek is how often it freezes in the patch in one week of the span.
type FrostWeek struct {
	Week  civil.Date `json:"week"`
	Share float64    `json:"share_of_years"`
}

// The names of the plans.
const (
	NoHeat  = "no added heat"
	Usual   = "usual for the trade"
	AsEarly = "as early as can be"
)

// ErrNoYears is returned for a brief without a year of weather.
var ErrNoYears = errors.New("there is no whole year of weather to reckon with; give a longer record, or let the weather be made up")

// usualGlass is the level, °C, at which the trade keeps glass for young plants.
var usualGlass = culture.Usual("house.usual")

// What the plans do, in a sentence.
const (
	coldSays  = "Only places that are warm anyway, and covers without heat."
	usualSays = "Started as many weeks before planting out as is common, warm till up, then bright and cool."
	earlySays = "The most weeks of flower that the benches have room for, whatever the heat costs."
)

// Says is what a named plan does, in a sentence.
func Says(name string) string {
	return map[string]string{NoHeat: coldSays, Usual: usualSays, AsEarly: earlySays}[name]
}

// Make works out the plans of a season by filling the benches batch by batch. It says nothing of
// how much better they could be: see package season/prove.
func Make(b Brief) (*Result, error) {
	m, err := NewPlanner(&b)
	if err != nil {
		return nil, err
	}
	r, _ := m.Make()
	m.Settle()
	return r, nil
}

// Make fills the benches plan by plan.
func (m *Planner) Make() (*Result, []Made) {
	cold, usual := make(Levels, len(m.Given.Places)), m.usualLevels()
	early, points := m.earlyLevels()
	r := &Result{FrostOdds: m.FrostOdds(), OutFrom: m.Date(m.OutFrom), Plans: make([]*Plan, 3)}
	all := []Made{
		{Name: NoHeat, says: coldSays, Levels: cold, fill: func(fits float64) Assignment { return m.assignOn(fits, cold, m.unheated(byGain)) }},
		{Name: Usual, says: usualSays, Levels: usual, fill: func(fits float64) Assignment { return m.assignOn(fits, usual, byCustom(m.usualWeeks)) }},
		{Name: AsEarly, says: earlySays, Levels: early, fill: func(fits float64) Assignment {
			return m.stepped(fits, early, m.assignOn(fits, early, byGain))
		}},
	}
	var wait sync.WaitGroup
	for i := range all {
		all[i].Assignment = all[i].fill(float64(m.Asked.Fits))
		wait.Go(func() { r.Plans[i] = m.fitting(&all[i]) })
	}
	wait.Wait()
	r.Early = m.withPlans(points, r.Plans, all)
	m.SideBySide(r.Plans)
	return r, all
}

// Settle bounds what the garden's memory keeps by what its first season asked for.
func (m *Planner) Settle() { m.recall.settle() }

// AssignUnheated fills the benches without added heat.
func (m *Planner) AssignUnheated() (Levels, Assignment) {
	cold := make(Levels, len(m.Given.Places))
	return cold, m.assign(cold, m.unheated(byGain))
}

// AssignUsual fills the benches as is usual for the trade.
func (m *Planner) AssignUsual() (Levels, Assignment) {
	at := m.usualLevels()
	return at, m.assign(at, byCustom(m.usualWeeks))
}

// AssignBest fills the benches at some levels with what gains most.
func (m *Planner) AssignBest(at Levels) Assignment { return m.assign(at, byGain) }

func NewPlanner(b *Brief) (*Planner, error) {
	if len(b.Given.Weather) == 0 {
		return nil, ErrNoYears
	}
	m, err := newPlanner(b)
	if err != nil {
		return nil, err
	}
	if len(m.batches) == 0 {
		return nil, fmt.Errorf("none of the stock can be taken into a season: %s", m.reasons())
	}
	m.liveAll(m.AllLevels())
	return m, nil
}

// sideBySide notes for each plan what it shares with the others, and when its heat pays.
func (m *Planner) SideBySide(plans []*Plan) {
	beside(plans)
	for _, p := range plans[1:] {
		m.breakEven(p, plans[0])
	}
}

func (m *Planner) reasons() string {
	if len(m.left) == 0 {
		return "there is no stock"
	}
	return fmt.Sprintf("%s (%s)", m.left[0].Why, m.left[0].Variety)
}

// stepped adds to an assignment the step of each heated place that saves the most heat.
func (m *Planner) stepped(fits float64, at Levels, a Assignment) Assignment {
	a.Steps = map[int]Step{}
	for i := range m.Given.Places {
		if change, lived, found := m.bestStep(i, at, a, fits); found {
			a.Steps[i], a.Portions = change, lived
		}
	}
	_, a.Value = a.worth()
	return a
}

// unheated leaves out what passes a place heated for the season's sake.
func (m *Planner) unheated(rank func([]*outcome) []*outcome) func([]*outcome) []*outcome {
	return func(all []*outcome) []*outcome {
		return slices.DeleteFunc(rank(all), func(o *outcome) bool { return o.route.heated })
	}
}

// usualWeeks is the usual time from start to planting out, in weeks: for stock from the
// store so many before the average last frost as is common practice, for seed and
// corms the kind's own.
func (m *Planner) usualWeeks(l *life) (from, to float64) {
	if f, ok := l.Figure("start.weeks"); ok && l.Life != culture.Store {
		return f.Low, f.High
	}
	f := culture.General("start.frost")
	return m.wait + f.Low, m.wait + f.High
}

// usualLevels holds every heated place at the level nearest to what is usual.
func (m *Planner) usualLevels() Levels {
	at := m.benchesOn(make(Levels, len(m.Given.Places)))
	for i, p := range m.Given.Places {
		if p.Sort == Bench {
			continue
		}
		best := math.Inf(1)
		for j, level := range p.Level {
			if off := math.Abs(level.Celsius() - usualGlass); level.IsKnown() && off < best {
				at[i], best = j, off
			}
		}
	}
	return at
}

// frostOdds returns for each week of the span the share of years in which it freezes.
func (m *Planner) FrostOdds() []FrostWeek {
	ground := m.climate(m.placeOf(Ground), m.setting(m.placeOf(Ground), 0))
	odds := make([]FrostWeek, m.Weeks)
	for w := range odds {
		odds[w].Week = m.Date(m.FirstMonday + 7*w)
		for _, y := range ground.years {
			if slices.Min(m.weekOf(y.low, w)) <= 0 {
				odds[w].Share += 1 / float64(len(ground.years))
			}
		}
	}
	return odds
}

// weekOf returns the days of one week.
func (m *Planner) weekOf(daily []float64, week int) []float64 {
	from := m.FirstMonday + 7*week
	return daily[from:min(from+7, len(daily))]
}
