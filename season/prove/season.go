package prove

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"eyeup/season"
)

// errNoProver is what Prove returns where it is not given a solver.
var errNoProver = errors.New("the best plans want something to find them with: set the brief's Solver, or ask for plans without it")

// Result is a season with the proofs of its plans.
type Result struct {
	Season *season.Result
	prover *prover
	proofs map[string]*provedPlan // by plan
}

// Prove works out the plans of a season like Make, but looks for the best ones and says how
// much better any other could be. The brief's Solver is needed; without its Relax bounds are
// reckoned by plain arithmetic, and are wider. say may be nil.
// When ctx ends it takes the best so far, and the proofs tell of a wider gap.
func Prove(ctx context.Context, b season.Brief, say func(Progress)) (*Result, error) {
	if b.Ports.Solver == nil {
		return nil, errNoProver
	}
	m, err := season.NewPlanner(&b)
	if err != nil {
		return nil, err
	}
	p := newProver(newProblem(ctx, m, say))
	p.problem.columns.AllSteps = true
	s, err := p.proveSeason()
	if err != nil {
		return nil, fmt.Errorf("prove the season: %w", err)
	}
	return p.result(s)
}

// Make works out the plans of a season like Make. Unless the brief asks for plans
// unproved, it says by plain arithmetic how much better any other plan could be that heats and
// lights as each does.
func Make(b season.Brief) (*season.Result, error) {
	b.Ports.Solver, b.Ports.Relax = nil, nil
	m, err := season.NewPlanner(&b)
	if err != nil {
		return nil, err
	}
	r, made := m.Make()
	if !b.Asked.Unproved {
		err = boundPlans(m, r.Plans, made)
	}
	m.Settle()
	return r, err
}

// boundPlans gives plans that were made otherwise their proofs.
func boundPlans(m *season.Planner, plans []*season.Plan, made []season.Made) error {
	p := newProver(newProblem(context.Background(), m, nil))
	own, top := p.weights(p.evaluate(made[1].Levels, made[1].Assignment))
	var proofs []*season.Proof
	for _, one := range made {
		weight := top
		if one.Name == season.Usual {
			weight = own
		}
		proof, err := p.boundPlan(one.Levels, one.Assignment, weight)
		if err != nil {
			return err
		}
		proofs = append(proofs, p.proofOf(proof, season.ItsOwn))
	}
	for i, proof := range proofs {
		plans[i].Proof = proof
	}
	return nil
}

// boundPlan proves nothing best, but says by plain arithmetic how much better than a plan that was
// made otherwise any other at its levels could be.
func (p *prover) boundPlan(at season.Levels, a season.Assignment, weight float64) (*provedPlan, error) {
	p.problem.columns.StepDays = nil
	for _, s := range a.Steps {
		p.problem.columns.StepDays = append(p.problem.columns.StepDays, s.Day)
	}
	slices.Sort(p.problem.columns.StepDays)
	p.problem.columns.StepDays = slices.Compact(p.problem.columns.StepDays)
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
	pays               *season.HeatPays
	second             *prover // that worked beside
}

// proveSeason proves the named plans and those along the price of early.
func (p *prover) proveSeason() (*provedSeason, error) {
	m := p.problem.planner
	usual, unheated := p.evaluate(m.AssignUsual()), p.evaluate(m.AssignUnheated())
	seeds := []*solution{usual, unheated}
	if p.problem.planner.Ports.Relax == nil { // fewer settings can be tried, so that more must be known beforehand
		for _, at := range m.AllLevels() {
			seeds = append(seeds, p.evaluate(at, m.AssignBest(at)))
		}
	}
	own, top := p.weights(usual)
	s := &provedSeason{}
	var err error
	if s.early, err = p.proveAll(top, season.AsEarly, seeds); err != nil {
		return nil, err
	}
	if s.cold, err = p.prove(s.early.weight, season.NoHeat, seeds[1:2], p.unheatedRoots); err != nil {
		return nil, err
	}
	if s.usual, err = p.prove(own, season.Usual, []*solution{usual}, p.onlySettingOf(usual)); err != nil {
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
	cold := *p.subproblem(season.Steady(make(season.Levels, len(p.problem.planner.Given.Places))))
	cold.onDays, cold.offDays = slices.Clone(cold.onDays), slices.Clone(cold.offDays)
	for i, b := range cold.heaters {
		if p.problem.planner.Given.Places[b.Place].Sort == season.Room && !b.Lamps {
			cold.onDays[i], cold.offDays[i] = []int{season.Never}, []int{0}
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
	m := p.problem.planner
	r := &Result{Season: &season.Result{FrostOdds: m.FrostOdds(), OutFrom: m.Date(m.OutFrom), Early: []season.EarlyPoint{}, Pays: s.pays}, prover: p, proofs: map[string]*provedPlan{}}
	for _, one := range []struct {
		name, settings string
		proved         *provedPlan
	}{
		{season.NoHeat, season.Unheated, s.cold}, {season.Usual, season.ItsOwn, s.usual}, {season.AsEarly, season.AllSettings, s.early},
	} {
		plan, err := p.fitting(one.name, season.Says(one.name), one.proved)
		if err != nil {
			return nil, err
		}
		plan.Proof = p.proofOf(one.proved, one.settings)
		r.Season.Plans, r.proofs[one.name] = append(r.Season.Plans, plan), one.proved
	}
	m.SideBySide(r.Season.Plans)
	var err error
	r.Season.Early, err = p.points(s.second, distinct(s.curve), s.early) // on a wider basis one may have fallen behind
	return r, err
}

// fitting describes a plan. Where its benches suffice in fewer years than was asked for, it is
// found again at its own settings on a wider basis of room, a few times at most; the bound
// holds for that too, since it has less room.
func (p *prover) fitting(name, says string, one *provedPlan) (*season.Plan, error) {
	plan := p.problem.planner.Realize(name, says, one.best.at.Levels(), p.assignmentOf(one.best))
	if one.best.counts == nil {
		return plan, nil
	}
	for _, basis := range p.problem.planner.WiderBases() {
		if plan.FitsYears >= p.problem.planner.AskedYears() || p.problem.ctx.Err() != nil {
			break
		}
		p.setWeight(one.weight, name)
		if err := p.solveWhole(p.settingOf(p.newSubproblem(one.best.at, basis), one.best)); err != nil {
			return nil, err
		}
		if p.incumbent == nil {
			break
		}
		if other := p.problem.planner.Realize(name, says, p.incumbent.at.Levels(), p.assignmentOf(p.incumbent)); other.FitsYears > plan.FitsYears {
			plan, one.best = other, p.incumbent
		}
	}
	return plan, nil
}
