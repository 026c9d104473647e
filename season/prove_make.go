package season

import (
	"context"
	"errors"
	"fmt"
	"slices"
)

// errNoProver is what Prove returns where it is not told how.
var errNoProver = errors.New("the best plans want something to find them with: set the brief's Solver, or ask for plans without it")

// Prove works out the plans of a season like Make, but looks for the best ones and says how
// much better any other could be. The brief's Solver is needed; without its Relax bounds are
// reckoned by plain arithmetic, and are wider. say may be nil.
// When ctx ends it takes the best so far, and the proofs tell of a wider gap.
func Prove(ctx context.Context, b Brief, say func(Progress)) (*Result, error) {
	if b.Ports.Solver == nil {
		return nil, errNoProver
	}
	m, err := plannerFor(&b)
	if err != nil {
		return nil, err
	}
	p := newProver(newProblem(ctx, m, say))
	p.problem.columns.allSteps = true
	s, err := p.proveSeason()
	if err != nil {
		return nil, fmt.Errorf("prove the season: %w", err)
	}
	return p.result(s)
}

// boundPlan proves nothing best, but says by plain arithmetic how much better than a plan that was
// made otherwise any other at its levels could be.
func (p *prover) boundPlan(at levels, a assignment, weight float64) (*provedPlan, error) {
	p.problem.columns.stepDays = nil
	for _, s := range a.steps {
		p.problem.columns.stepDays = append(p.problem.columns.stepDays, s.day)
	}
	slices.Sort(p.problem.columns.stepDays)
	p.problem.columns.stepDays = slices.Compact(p.problem.columns.stepDays)
	made := p.evaluate(at, a)
	one, err := p.prove(weight, "", []*solution{made}, p.onlySettingOf(made))
	if err == nil {
		one.best = made
	}
	return one, err
}

// provedSeason are the plans of a season as proved.
type provedSeason struct {
	cold, usual, early *provedPlan
	curve              []*provedPlan
	pays               *HeatPays
	second             *prover // that worked beside
}

// proveSeason proves the named plans and those along the price of early.
func (p *prover) proveSeason() (*provedSeason, error) {
	at := p.problem.planner.usualLevels()
	cold := make(levels, len(p.problem.planner.Given.Places))
	usual := p.evaluate(at, p.problem.planner.assign(at, byCustom(p.problem.planner.usualWeeks)))
	seeds := []*solution{usual, p.evaluate(cold, p.problem.planner.assign(cold, p.problem.planner.unheated(byGain)))}
	if p.problem.planner.Ports.Relax == nil { // fewer settings can be tried, so that more must be known beforehand
		for _, at := range p.problem.planner.allLevels() {
			seeds = append(seeds, p.evaluate(at, p.problem.planner.assign(at, byGain)))
		}
	}
	own, top := p.weights(usual)
	s := &provedSeason{}
	var err error
	if s.early, err = p.proveAll(top, AsEarly, seeds); err != nil {
		return nil, err
	}
	if s.cold, err = p.prove(s.early.weight, NoHeat, seeds[1:2], p.unheatedRoots); err != nil {
		return nil, err
	}
	if s.usual, err = p.prove(own, Usual, []*solution{usual}, p.onlySettingOf(usual)); err != nil {
		return nil, err
	}
	s.usual.best = usual
	if err = p.curve(s, own, append(seeds, s.cold.best)); err == nil && p.problem.planner.Asked.Pays {
		s.pays, err = p.heatPays(s, own)
	}
	return s, err
}

// unheatedRoots is all settings of which no heat is paid: the houses are off, and a room whose heat
// costs money is not used.
func (p *prover) unheatedRoots() []*node {
	cold := *p.subproblem(steady(make(levels, len(p.problem.planner.Given.Places))))
	cold.onDays, cold.offDays = slices.Clone(cold.onDays), slices.Clone(cold.offDays)
	for i, b := range cold.heaters {
		if p.problem.planner.Given.Places[b.place].Sort == Room && !b.lamps {
			cold.onDays[i], cold.offDays[i] = []int{never}, []int{0}
		}
	}
	return []*node{p.root(&cold)}
}

// weekCost is what a week of flower gained costs a plan; 0 where it gains none.
func weekCost(f *solution) float64 {
	if f.gain <= 0 {
		return 0
	}
	return f.money() / f.gain
}

// weights returns what a week of a plant in flower is worth, and what it counts for when all
// is to be as early as can be. It is worth the garden's own price, and where there is none
// what it costs in the usual plan.
func (p *prover) weights(usual *solution) (own, top float64) {
	own = 1
	if worth := p.problem.planner.Given.Prices.PlantWeek.Amount; p.problem.planner.Given.Prices.PlantWeek.Known && worth > 0 {
		own = worth
	} else if weekCost(usual) > 0 {
		own = weekCost(usual)
	}
	return own, dearest * max(own, weekCost(usual))
}

// result makes the plans out of their proofs.
func (p *prover) result(s *provedSeason) (*Result, error) {
	r := &Result{FrostOdds: p.problem.planner.frostOdds(), OutFrom: p.problem.planner.date(p.problem.planner.outFrom), Early: []EarlyPoint{}, Pays: s.pays, prover: p, proofs: map[string]*provedPlan{}}
	for _, one := range []struct {
		name, says, settings string
		*provedPlan
	}{
		{NoHeat, coldSays, Unheated, s.cold}, {Usual, usualSays, ItsOwn, s.usual}, {AsEarly, earlySays, AllSettings, s.early},
	} {
		plan, err := p.fitting(one.name, one.says, one.provedPlan)
		if err != nil {
			return nil, err
		}
		plan.Proof = p.proofOf(one.provedPlan, one.settings)
		r.Plans, r.proofs[one.name] = append(r.Plans, plan), one.provedPlan
	}
	p.problem.planner.sideBySide(r.Plans)
	var err error
	r.Early, err = p.points(s.second, distinct(s.curve), s.early) // on a wider basis one may have fallen behind
	return r, err
}

// fitting tells a plan. Where its benches suffice in fewer years than was asked for, it is
// found again at its own settings on a wider basis of room, a few times at most; the bound
// holds for that too, since it has less room.
func (p *prover) fitting(name, says string, one *provedPlan) (*Plan, error) {
	plan := p.problem.planner.realize(name, says, one.best.at.levels(), p.assignmentOf(one.best))
	if one.best.counts == nil {
		return plan, nil
	}
	for _, basis := range p.problem.planner.widerBases() {
		if plan.FitsYears >= p.problem.planner.askedYears() || p.problem.ctx.Err() != nil {
			break
		}
		p.setWeight(one.weight, name)
		if err := p.solveWhole(p.settingOf(p.newSubproblem(one.best.at, basis), one.best)); err != nil {
			return nil, err
		}
		if p.incumbent == nil {
			break
		}
		if other := p.problem.planner.realize(name, says, p.incumbent.at.levels(), p.assignmentOf(p.incumbent)); other.FitsYears > plan.FitsYears {
			plan, one.best = other, p.incumbent
		}
	}
	return plan, nil
}
