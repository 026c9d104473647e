package prove

import (
	"cmp"
	"slices"

	"eyeup/season"
)

// The worths that are listed: so many, and none below this.
const (
	mostWorths = 4
	leastWorth = 0.01
)

// limitsOf returns the worth of what is short in a plan, with what is on settled.
func (p *prover) limitsOf(one *provedPlan) ([]season.LimitWorth, error) {
	p.setWeight(one.weight, "")
	p.incumbent = one.best
	n := p.onlySettingOf(one.best)()[0]
	p.startDuals([]*node{n})
	if err := p.relax(n); err != nil {
		return nil, err
	}
	var all []season.LimitWorth
	for row, price := range p.pool[n.duals].row {
		if price < leastWorth {
			continue
		}
		w := season.LimitWorth{Week: p.problem.planner.Date(p.problem.planner.FirstMonday + 7*(row%p.problem.planner.Weeks)), Worth: season.Hundredth(price)}
		if w.Of, w.Unit = p.problem.planner.BenchName(min(row, p.problem.planner.HoursRow(0)-1)/p.problem.planner.Weeks), "m2"; row >= p.problem.planner.HoursRow(0) {
			w.Of, w.Unit = "hands", "hour"
		}
		all = append(all, w)
	}
	slices.SortStableFunc(all, func(a, b season.LimitWorth) int { return cmp.Compare(b.Worth, a.Worth) })
	return all[:min(len(all), mostWorths)], nil
}
