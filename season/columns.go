package season

import (
	"math"
	"slices"
	"sync"
)

// columns makes the columns of a season's programmes: every way to raise a plant of a group,
// with all that counts of it. It is safe for several provers at once.
type Columns struct {
	planner    *Planner
	groups     []*Group
	HeaterKeys []HeaterKey
	Open       []int // places with a thermostat
	StepDays   []int // on which levels may step
	AllSteps   bool  // whether all steps are asked for, and not only those of a plan
	door       sync.Mutex
	ways       map[waysKey]*PlaceWays
}

func NewColumns(m *Planner, groups []*Group) *Columns {
	c := &Columns{planner: m, groups: groups, HeaterKeys: m.heaterKeys(), StepDays: m.stepMondays(), ways: map[waysKey]*PlaceWays{}}
	for i := range m.Given.Places {
		if m.IsOpen(i) {
			c.Open = append(c.Open, i)
		}
	}
	return c
}

// DearestPots is the most that pots, bench heat and stretched days can cost a plant of a group.
func (c *Columns) DearestPots(g *Group) float64 {
	most, m, b := 0.0, c.planner, g.batches[0]
	for _, o := range m.options(b, m.benchesOn(make(Levels, len(m.Given.Places)))) {
		most = math.Max(most, m.moneyFor(b, o)+m.benchMoney(o)+m.Given.Prices.Stretched.Times(float64(m.Given.Span.Days())))
	}
	return most
}

// ChoiceOf computes all that counts of how a portion of an assignment is raised, with places at
// some levels.
func (c *Columns) ChoiceOf(p Portion, at Levels) Choice {
	return c.choiceOf(p.batch, p.outcome, at, c.planner.takesOf(p.outcome, float64(c.planner.Asked.Fits)))
}

// choiceOf computes all that counts of an outcome of a batch, with places at some levels and so
// much room taken.
func (c *Columns) choiceOf(b *batch, o *outcome, at Levels, takes []Take) Choice {
	m := c.planner
	one := Choice{outcome: o, Gain: o.gain, Money: m.moneyFor(b, o), BenchHeat: m.benchMoney(o), StretchCost: m.Given.Prices.Stretched.Times(o.drawn), Hours: m.hoursFor(b, o), Takes: takes, Place: -1}
	for _, of := range c.HeaterKeys {
		used := Days{Never, 0}
		if of.Lamps || m.isHeated(of.Place, at) {
			used = of.wanted(o, int(m.Given.Span.Days()))
		}
		one.Use = append(one.Use, used)
	}
	return one
}

// undominated leaves out what another way, of the same or of those known already, beats or
// equals in all: gain, money, room, stretched days, hours, the days on which it wants heat and those of the
// steps that lead to it. Of two that are the same the first stays.
func (c *Columns) undominated(all, known []Choice) []Choice {
	var kept []Choice
	for i := range all {
		beats := func(c Choice) bool { return c.beats(&all[i]) }
		beaten := slices.ContainsFunc(known, beats) || slices.ContainsFunc(all[:i], beats) ||
			slices.ContainsFunc(all[i+1:], func(c Choice) bool { return c.beats(&all[i]) && !all[i].beats(&c) })
		if !beaten {
			kept = append(kept, all[i])
		}
	}
	return kept
}
