package season

import (
	"cmp"
	"slices"

	"eyeup/civil"
)

// LimitWorth is what a little more of something that is short would be worth in one week.
type LimitWorth struct {
	Of    string     `json:"of"`
	Week  civil.Date `json:"week"`
	Unit  string     `json:"unit" jsonschema:"enum=m2,enum=hour"`
	Worth float64    `json:"worth" jsonschema_description:"money for the next little bit of one more, with heat and lamps as they are"`
}

// The worths that are told: so many, and none below this.
const (
	mostWorths = 4
	leastWorth = 0.01
)

// limitsOf tells the worth of what is short in a plan, with what burns settled.
func (p *prover) limitsOf(one *provedPlan) ([]LimitWorth, error) {
	p.setWeight(one.weight, "")
	p.incumbent = one.best
	n := p.onlySettingOf(one.best)()[0]
	p.startDuals([]*node{n})
	if err := p.relax(n); err != nil {
		return nil, err
	}
	var all []LimitWorth
	for row, price := range p.pool[n.duals].row {
		if price < leastWorth {
			continue
		}
		w := LimitWorth{Week: p.problem.planner.date(p.problem.planner.firstMonday + 7*(row%p.problem.planner.weeks)), Worth: hundredth(price)}
		if w.Of, w.Unit = p.problem.planner.benchName(min(row, p.problem.planner.hoursRow(0)-1)/p.problem.planner.weeks), "m2"; row >= p.problem.planner.hoursRow(0) {
			w.Of, w.Unit = "hands", "hour"
		}
		all = append(all, w)
	}
	slices.SortStableFunc(all, func(a, b LimitWorth) int { return cmp.Compare(b.Worth, a.Worth) })
	return all[:min(len(all), mostWorths)], nil
}
