package prove

import (
	"cmp"
	"sync"
)

// A second prover works at the next weight beside the first. They are always two, so that a
// season comes out the same on one core as on two.

// second is another prover of the same problem. It knows what p has learnt, and nothing else of p.
func (p *prover) second() *prover {
	other := bareProver(p.problem)
	other.learnFrom(p.pool, p.solvedDuals)
	return other
}

// learnFrom adds the dual prices that another prover has solved for: those of its pool that are
// named.
func (p *prover) learnFrom(pool []*duals, named []int) {
	for _, i := range named {
		p.pool = append(p.pool, pool[i].fresh())
		p.solvedDuals = append(p.solvedDuals, len(p.pool)-1)
	}
}

// provePair looks for the best plans at one weight and, at the same time, by a second prover at another,
// if there is one. Afterwards each knows what the other has learnt.
func (p *prover) provePair(m *prover, weights []float64, name string, seeds []*solution) ([]*provedPlan, error) {
	all := make([]*provedPlan, len(weights))
	mine, theirs := len(p.solvedDuals), len(m.solvedDuals)
	p.paired, m.paired = len(weights) > 1, true
	err := inTwo(p, m, len(weights), func(one *prover, i int) (err error) {
		all[i], err = one.proveAll(weights[i], name, seeds)
		return err
	})
	p.paired = false
	if err != nil {
		return nil, err
	}
	now := len(p.solvedDuals)
	p.learnFrom(m.pool, m.solvedDuals[theirs:])
	m.learnFrom(p.pool, p.solvedDuals[mine:now])
	return all, nil
}

// inTwo does so many things by two provers at once, every other one by each.
func inTwo(p, m *prover, things int, do func(one *prover, thing int) error) error {
	var wait sync.WaitGroup
	var errs [2]error
	for i, one := range []*prover{p, m} {
		wait.Go(func() {
			for thing := i; thing < things && errs[i] == nil; thing += 2 {
				errs[i] = do(one, thing)
			}
		})
	}
	wait.Wait()
	return cmp.Or(errs[0], errs[1])
}
