package season

import "sync"

// A second prover works at the next weight beside the first. They are always two, so that a
// season comes out the same on one core as on two.

// mate is a second prover for the same season. It shares the ways through the places, has fields
// and sums of its own, and knows what p has learnt.
func (p *prover) mate() *prover {
	m := *p
	m.fields, m.burning, m.swept, m.pool, m.latest, m.serve = map[string]*field{}, nil, sweep{}, nil, nil, nil
	m.hear(p, 0)
	return &m
}

// hear learns the prices that another has solved for, from the one of that number on.
func (p *prover) hear(from *prover, first int) {
	for _, i := range from.latest[first:] {
		p.pool = append(p.pool, from.pool[i].again())
		p.latest = append(p.latest, len(p.pool)-1)
	}
}

// proveBeside looks for the best plans at one weight and, at the same time, by a mate at another,
// if there is one. Afterwards each knows what the other has learnt.
func (p *prover) proveBeside(m *prover, weights []float64, name string, seeds []*found) ([]*proven, error) {
	all, errs := make([]*proven, len(weights)), make([]error, len(weights))
	mine, theirs := len(p.latest), len(m.latest)
	p.paired, m.paired = len(weights) > 1, true
	var wait sync.WaitGroup
	for i, one := range []*prover{p, m}[:len(weights)] {
		wait.Go(func() { all[i], errs[i] = one.proveAll(weights[i], name, seeds) })
	}
	wait.Wait()
	p.paired = false
	for _, err := range errs {
		if err != nil {
			return nil, err
		}
	}
	now := len(p.latest)
	p.hear(m, theirs)
	m.hear(&prover{pool: p.pool, latest: p.latest[:now]}, mine)
	return all, nil
}
