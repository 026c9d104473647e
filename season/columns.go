package season

import (
	"math"
	"sync"
)

// columns makes the columns of a season's programmes: every way to raise a plant of a group,
// with all that counts of it. It is safe for several provers at once.
type columns struct {
	planner    *planner
	groups     []*group
	heaterKeys []heaterKey
	open       []int // places with a thermostat
	stepDays   []int // on which levels may step
	allSteps   bool  // whether all steps are asked for, and not only those of a plan
	door       sync.Mutex
	ways       map[waysKey]*placeWays
}

func newColumns(m *planner, groups []*group) *columns {
	c := &columns{planner: m, groups: groups, heaterKeys: m.heaterKeys(), stepDays: m.stepMondays(), ways: map[waysKey]*placeWays{}}
	for i := range m.Given.Places {
		if m.isOpen(i) {
			c.open = append(c.open, i)
		}
	}
	return c
}

// dearestPots is the most that pots, bench heat and stretched days can cost a plant of a batch.
func (c *columns) dearestPots(b *batch) float64 {
	most, m := 0.0, c.planner
	for _, o := range m.options(b, m.benchesOn(make(levels, len(m.Given.Places)))) {
		most = math.Max(most, m.moneyFor(b, o)+m.benchMoney(o)+m.Given.Prices.Stretched.Times(float64(m.Given.Span.Days())))
	}
	return most
}
