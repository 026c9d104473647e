package season

import (
	"sync"

	"eyeup/solve"
)

// relax solves settings without whole numbers, at the same time, for their prices.
func (p *prover) relax(all ...*node) error {
	if p.Relax == nil {
		for _, n := range all {
			p.count()
			p.learn(p.pricing(n), n)
		}
		return nil
	}
	programmes, found, errs := make([]*stated, len(all)), make([]solve.Relaxation, len(all)), make([]error, len(all))
	var wait sync.WaitGroup
	for i, n := range all {
		programmes[i] = p.state(p.counting, p.groups, n.f, n.may, p.weight, n.burning)
		p.burn(programmes[i], n)
		wait.Go(func() { found[i], errs[i] = p.Relax(p.ctx, &programmes[i].Programme) })
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
		p.learn(p.priced(n, programmes[i], found[i].Prices), n)
		if p.Solver != nil {
			p.consider(p.rounded(n, programmes[i], found[i].Values))
		}
	}
	return nil
}

// learn adds prices to those that serve.
func (p *prover) learn(x *prices, n *node) {
	x.from = p.weight
	p.pool = append(p.pool, x)
	p.serve, p.latest = append(p.serve, len(p.pool)-1), append(p.latest, len(p.pool)-1)
	p.try(n, len(p.pool)-1)
}
