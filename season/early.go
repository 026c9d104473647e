package season

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// EarlyPoint is one point of the price of early: what holding the heated places at some
// levels costs, and what it gains. Points that cost more and gain no more are left out.
type EarlyPoint struct {
	Plan      string   `json:"plan,omitempty" jsonschema_description:"the plan that stands there; left out for what only the levels were tried of"`
	Levels    []string `json:"levels" jsonschema_description:"place and level of what is heated; empty for no added heat"`
	HeatCost  float64  `json:"heat_cost" jsonschema_description:"in the middle of the years, while the places are in use"`
	GainWeeks float64  `json:"gain_weeks" jsonschema_description:"a plant, all batches together"`
	Held      []Held   `json:"held,omitempty" jsonschema_description:"what is heated at what level, and when; left out where the season is not proved"`
	TotalCost float64  `json:"total_cost,omitempty" jsonschema_description:"heat, light, mix, pots and paid hands; left out where the season is not proved"`
	LeftOut   int      `json:"left_out,omitempty" jsonschema_description:"plants that find no way"`
	Proof     *Proof   `json:"proof,omitempty"`

	Decisions *Decisions `json:"-"` // what is decided in the plan that stands there; nil where the season is not proved

	Limits []LimitWorth `json:"limits,omitempty" jsonschema_description:"what a little more of what is short would be worth, the dearest first"`
}

// mostHeated is how many heated places are tried at every level; the others stay off.
const mostHeated = 2

// earlyLevels tries every level of the heated places and returns the coolest of those
// that gain the most, with the points of the price of early.
func (m *Planner) earlyLevels() (Levels, []EarlyPoint) {
	best, bestValue := make(Levels, len(m.Given.Places)), math.Inf(-1)
	plants := 0
	for _, b := range m.batches {
		plants += b.want
	}
	var points []EarlyPoint
	for _, at := range m.AllLevels() {
		a := m.assign(at, byGain)
		if a.Value > bestValue+alike*float64(plants) {
			best, bestValue = at, a.Value
		}
		points = append(points, m.pointOf(at, a, plants))
	}
	return best, points
}

// pointOf describes what levels cost and gain.
func (m *Planner) pointOf(at Levels, a Assignment, plants int) EarlyPoint {
	p := EarlyPoint{Levels: []string{}, GainWeeks: Hundredth(a.Value / float64(max(plants, 1)))}
	for i, level := range at {
		if level == 0 {
			continue
		}
		used := m.UsedBy(i, a)
		if used.From == Never && m.Given.Places[i].Sort == Bench {
			continue
		}
		p.Levels = append(p.Levels, fmt.Sprintf("%s %.1f °C", m.Given.Places[i].Name, m.Given.Places[i].Level[level].Celsius()))
		if used.From != Never && m.Given.Places[i].Sort != Bench {
			p.HeatCost += m.Given.Places[i].Energy.Times(m.heatOf(m.climateAt(i, at), used))
		}
	}
	for _, one := range a.Portions {
		p.HeatCost += float64(one.Count) * m.benchMoney(one.outcome)
	}
	p.HeatCost = Hundredth(p.HeatCost)
	return p
}

// withPlans adds to the points what the plans side by side come to themselves.
func (m *Planner) withPlans(points []EarlyPoint, plans []*Plan, all []Made) []EarlyPoint {
	for i, plan := range plans {
		p := m.pointOf(all[i].Levels, all[i].Assignment, 1)
		p.Plan, p.HeatCost, p.GainWeeks = plan.Name, Hundredth(plan.Cost.Heat), Hundredth(plan.GainAll.Middle)
		points = append(points, p)
	}
	return undominated(points)
}

// undominated leaves out the points that another beats or equals in both cost and gain.
func undominated(points []EarlyPoint) []EarlyPoint {
	slices.SortStableFunc(points, func(a, b EarlyPoint) int {
		return cmp.Or(cmp.Compare(a.HeatCost, b.HeatCost), cmp.Compare(b.GainWeeks, a.GainWeeks))
	})
	kept := []EarlyPoint{}
	for _, p := range points {
		if len(kept) == 0 || p.GainWeeks > kept[len(kept)-1].GainWeeks {
			kept = append(kept, p)
		}
	}
	return kept
}

// allLevels returns every combination of levels of the heated places, cool ones first.
func (m *Planner) AllLevels() []Levels {
	all := []Levels{m.benchesOn(make(Levels, len(m.Given.Places)))}
	heated := 0
	for i, p := range m.Given.Places {
		if p.Sort == Bench || len(p.Levels) < 2 || heated == mostHeated {
			continue
		}
		heated++
		var next []Levels
		for j := range p.Levels {
			for _, at := range all {
				at = slices.Clone(at)
				at[i] = j
				next = append(next, at)
			}
		}
		all = next
	}
	return all
}

// benchesOn lets the warm benches be used: each is on while anything stands on it, and at
// one warmth.
func (m *Planner) benchesOn(at Levels) Levels {
	for i, p := range m.Given.Places {
		if p.Sort == Bench {
			at[i] = 1
		}
	}
	return at
}
