package season

import (
	"math"
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
