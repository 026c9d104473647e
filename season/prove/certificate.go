package prove

import (
	"fmt"
	"math"
	"slices"

	"eyeup/season"
	"eyeup/season/certificate"
	"eyeup/solve"
)

// Certificate returns what proves a plan, by its name. It fails for plans that are not proved.
func (r *Result) Certificate(plan string) (*certificate.Certificate, error) {
	one, err := r.proofNamed(plan)
	if err != nil {
		return nil, err
	}
	return r.prover.certify(plan, one)
}

// Programme returns a plan's programme at its own settings, by the plan's name. Its least
// cost is that of the best plan there.
func (r *Result) Programme(plan string) (*solve.Programme, error) {
	one, err := r.proofNamed(plan)
	if err != nil {
		return nil, err
	}
	p := r.prover
	p.weight = one.weight
	n := p.onlySettingOf(one.best)()[0]
	s := p.problem.newProgramme(n.sub, n.allowed, p.weight, n.heatCost)
	p.requireSteps(s, n) // its own plan does
	return &s.Programme, nil
}

func (r *Result) proofNamed(plan string) (*provedPlan, error) {
	var one *provedPlan
	if r != nil {
		one = r.proofs[plan]
	}
	if one == nil || one.best == nil {
		return nil, fmt.Errorf("there is no proof of a plan %q; have the season proved, and name one of its plans", plan)
	}
	return one, nil
}

// writer writes down the proof of one plan.
type writer struct {
	p      *prover
	c      *certificate.Certificate
	fields []*subproblem // that stand in Levels
	pool   []*duals      // that stand in Prices
}

// certify writes down a proof.
func (p *prover) certify(plan string, one *provedPlan) (*certificate.Certificate, error) {
	p.weight = one.weight
	c := &certificate.Certificate{
		Plan: plan, Currency: p.problem.planner.Given.Prices.Currency, WeekWorth: one.weight, LeftOut: p.problem.limits.leftOutCost(one.weight), Hired: p.problem.limits.hired,
		Monday: p.problem.planner.FirstMonday, Hours: p.problem.planner.HoursRow(0), Limits: p.problem.limits.limit, Cost: p.costOf(one.best), Bound: math.Inf(1),
	}
	for _, g := range p.problem.groups {
		c.Groups = append(c.Groups, certificate.Group{Name: g.Name(), Plants: g.Want})
	}
	w := &writer{p: p, c: c}
	for _, n := range one.leaves {
		leaf := certificate.Leaf{Levels: w.levelsOf(n.sub), On: n.on, Off: n.off, Step: n.step, Houses: n.houses, Prices: w.pricesOf(p.bestOf(n, one.pool))}
		if n.duals < 0 {
			found := n.bound
			leaf.Search = &found
		}
		var err error
		if leaf.Bound, err = c.LeafBound(leaf); err != nil {
			return nil, err
		}
		c.Bound = math.Min(c.Bound, leaf.Bound)
		c.Leaves = append(c.Leaves, leaf)
	}
	return c, nil
}

// bestOf returns the prices that bound a node best.
func (p *prover) bestOf(n *node, pool []*duals) *duals {
	if n.duals >= 0 {
		return pool[n.duals]
	}
	best, bound := pool[0], math.Inf(-1)
	for _, x := range pool {
		if b := p.boundOf(n, x); b > bound {
			best, bound = x, b
		}
	}
	return best
}

// levelsOf returns the place of a subproblem's levels in the certificate, adding them when first met.
func (w *writer) levelsOf(f *subproblem) int {
	if at := slices.Index(w.fields, f); at >= 0 {
		return at
	}
	l := certificate.Levels{On: f.onDays, Off: f.offDays, Step: f.stepDays, Costs: f.heaterCosts()}
	for i := range w.p.problem.planner.Given.Places {
		l.Held = append(l.Held, w.p.problem.planner.HoldWords(i, f.at[i]))
	}
	for g, may := range w.p.root(f).listAllowed().allowed {
		var ways []certificate.Way
		for _, i := range may {
			ways = append(ways, w.p.certified(f.choices[g][i], w.c.Hours))
		}
		l.Ways = append(l.Ways, ways)
	}
	w.fields, w.c.Levels = append(w.fields, f), append(w.c.Levels, l)
	return len(w.fields) - 1
}

func (p *prover) certified(o *season.Choice, hours int) certificate.Way {
	w := certificate.Way{Start: o.Start(), Route: o.Route(), Direct: o.IsDirect(), Money: o.Money + o.BenchHeat + o.StretchCost, Gain: o.Gain, Takes: map[int]float64{}}
	for _, list := range [][]season.Take{o.Takes, o.Hours} {
		for _, t := range list {
			if t.Row < hours || p.problem.limits.hired > 0 {
				w.Takes[t.Row] = t.Amount
			}
		}
	}
	for _, used := range o.Use {
		w.Wanted = append(w.Wanted, [2]int{used.From, used.To})
	}
	if o.Place >= 0 {
		w.Steps = &certificate.Steps{Heater: slices.Index(p.problem.columns.HeaterKeys, season.HeaterKey{Place: o.Place}), First: o.Steps[0], Last: o.Steps[1]}
	}
	return w
}

// heaterCosts says what every heater of a subproblem costs.
func (f *subproblem) heaterCosts() [][][][]float64 {
	var all [][][][]float64
	for i, b := range f.heaters {
		var of [][][]float64
		for _, step := range f.stepDays[i] {
			var costs [][]float64
			for _, from := range f.onDays[i] {
				var row []float64
				for _, to := range f.offDays[i] {
					row = append(row, b.Cost(season.Days{From: from, To: to}, step))
				}
				costs = append(costs, row)
			}
			of = append(of, costs)
		}
		all = append(all, of)
	}
	return all
}

// pricesOf returns the place of prices in the certificate, adding them when first met.
func (w *writer) pricesOf(x *duals) int {
	if at := slices.Index(w.pool, x); at >= 0 {
		return at
	}
	by, shared := map[int]float64{}, []certificate.HeaterPrices{}
	for row, price := range x.row {
		if price > 0 {
			by[row] = price
		}
	}
	for i, d := range x.heaters {
		if d != nil {
			shared = append(shared, d.certified(i))
		}
	}
	w.pool, w.c.Prices, w.c.Shared = append(w.pool, x), append(w.c.Prices, by), append(w.c.Shared, shared)
	return len(w.c.Prices) - 1
}

// certified writes dual prices of heaters week by week.
func (d *heaterDuals) certified(heater int) certificate.HeaterPrices {
	one := certificate.HeaterPrices{Heater: heater, Room: d.room, Limit: d.row}
	for _, upTo := range d.upTo {
		weeks := make([]float64, len(upTo)-1)
		for i := range weeks {
			weeks[i] = max(0, upTo[i+1]-upTo[i])
		}
		one.Plants = append(one.Plants, weeks)
	}
	return one
}
