package season

import (
	"context"
	"errors"
	"fmt"
)

// errNoProver is what Prove returns where it is not told how.
var errNoProver = errors.New("a proof wants something to prove with: set the brief's Solver and Relax, or ask for plans without it")

// Prove works out the plans of a season like Make, but looks for the best ones and says how
// much better any other could be. The brief's Solver and Relax are needed. say may be nil.
// When ctx ends it takes the best so far, and the proofs tell of a wider gap.
func Prove(ctx context.Context, b Brief, say func(Progress)) (*Result, error) {
	if b.Solver == nil || b.Relax == nil {
		return nil, errNoProver
	}
	m, err := makerFor(&b)
	if err != nil {
		return nil, err
	}
	p := m.newProver(ctx, say)
	for _, at := range m.allLevels() {
		p.field(at)
	}
	s, err := p.season()
	if err != nil {
		return nil, fmt.Errorf("prove the season: %w", err)
	}
	return p.result(s)
}

// proofs are the plans of a season as proved.
type proofs struct {
	cold, usual, early *proven
	curve              []*proven
}

// season proves the named plans and those along the price of early.
func (p *prover) season() (*proofs, error) {
	at := p.usualLevels()
	cold := make(levels, len(p.Places))
	usual := p.weigh(at, p.assign(at, byCustom(p.usualWeeks)))
	seeds := []*found{usual, p.weigh(cold, p.assign(cold, p.unheated(byGain)))}
	own := p.ownWeight(usual)
	s := &proofs{}
	var err error
	if s.early, err = p.prove(dearest*max(own, ratio(usual)), AsEarly, seeds, p.everything); err != nil {
		return nil, err
	}
	unheated := func() []*node { return []*node{p.whole(p.field(cold))} }
	if s.cold, err = p.prove(s.early.weight, NoHeat, seeds[1:], unheated); err != nil {
		return nil, err
	}
	if s.usual, err = p.prove(own, Usual, []*found{usual}, p.only(usual)); err != nil {
		return nil, err
	}
	s.usual.best = usual
	s.curve, err = p.curve(own, s.early, append(seeds, s.cold.best))
	return s, err
}

// ratio is what a week of flower gained costs a plan; 0 where it gains none.
func ratio(f *found) float64 {
	if f.gain <= 0 {
		return 0
	}
	return f.money() / f.gain
}

// ownWeight is what a week of a plant in flower is worth: the garden's own price, and where
// there is none what it costs in the usual plan.
func (p *prover) ownWeight(usual *found) float64 {
	switch worth := p.Prices.PlantWeek.Amount; {
	case p.Prices.PlantWeek.Known && worth > 0:
		return worth
	case ratio(usual) > 0:
		return ratio(usual)
	}
	return 1
}

// result makes the plans out of their proofs.
func (p *prover) result(s *proofs) (*Result, error) {
	r := &Result{FrostOdds: p.frostOdds(), OutFrom: p.date(p.outFrom), Early: []EarlyPoint{}}
	for _, one := range []struct {
		name, says, settings string
		*proven
	}{
		{NoHeat, coldSays, Unheated, s.cold}, {Usual, usualSays, ItsOwn, s.usual}, {AsEarly, earlySays, AllSettings, s.early},
	} {
		plan := p.realize(one.name, one.says, one.best.at, p.assignmentOf(one.best))
		plan.Proof = p.proofOf(one.proven, one.settings)
		r.Plans = append(r.Plans, plan)
	}
	for _, one := range s.curve {
		r.Early = append(r.Early, p.pointOfPlan(one))
	}
	p.sideBySide(r.Plans)
	return r, nil
}
