package prove

import (
	"sync"

	"eyeup/solve"
)

// relax solves settings without whole numbers, at the same time, for their prices.
func (p *prover) relax(all ...*node) error {
	if p.problem.planner.Ports.Relax == nil {
		for _, n := range all {
			p.count()
			p.addDuals(p.subgradient(n), n)
		}
		return nil
	}
	programmes, found, errs := make([]*programme, len(all)), make([]solve.Relaxation, len(all)), make([]error, len(all))
	var wait sync.WaitGroup
	for i, n := range all {
		programmes[i] = p.problem.newProgramme(n.sub, n.allowed, p.weight, n.heatCost)
		p.addHeaterRows(programmes[i], n)
		wait.Go(func() { found[i], errs[i] = p.problem.planner.Ports.Relax(p.problem.ctx, &programmes[i].Programme) })
	}
	wait.Wait()
	for i, n := range all {
		if errs[i] != nil {
			return errs[i]
		}
		if found[i].State != solve.Proved {
			continue
		}
		p.count()
		p.addDuals(p.dualsOf(n, programmes[i], found[i].Prices), n)
		if p.problem.planner.Ports.Solver != nil {
			p.consider(p.rounded(n, programmes[i], found[i].Values))
		}
	}
	return nil
}

// addDuals adds prices to those that serve.
func (p *prover) addDuals(x *duals, n *node) {
	x.foundAt = p.weight
	p.pool = append(p.pool, x)
	p.active, p.solvedDuals = append(p.active, len(p.pool)-1), append(p.solvedDuals, len(p.pool)-1)
	p.tryDuals(n, len(p.pool)-1)
}
