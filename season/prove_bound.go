package season

import (
	"math"

	"eyeup/solve"
)

// prices say what one unit more of each limit would be worth; by row, none below nothing.
// Whoever found them, they give a bound on every setting: see bound.
type prices struct {
	by   []float64
	lean map[*field][][]float64 // what each choice costs in money and in limits leaned on
	rest float64                // what the limits themselves come to
}

// priced takes prices over from the answer of a programme without whole numbers.
func (p *prover) priced(s *stated, found []float64) *prices {
	by := make([]float64, p.rowCount())
	for i, row := range s.rows {
		if row >= 0 && found != nil {
			by[row] = max(0, -found[i])
		}
	}
	return p.pricesOf(by)
}

func (p *prover) pricesOf(by []float64) *prices {
	c, x := p.counting, &prices{by: by, lean: map[*field][][]float64{}}
	for row, price := range by {
		switch {
		case c.lamp[row] > 0: // a week of lamps gives its room, or none
			x.rest += min(0, c.lamp[row]-price*c.limit[row])
			continue
		case row >= p.hoursRow(0): // hired hands are never worth more than they cost
			by[row] = min(price, c.hired)
		}
		x.rest -= by[row] * c.limit[row]
	}
	return x
}

// leanOf returns what every choice of a field costs in money and in limits leaned on.
func (x *prices) leanOf(f *field) [][]float64 {
	if x.lean[f] != nil {
		return x.lean[f]
	}
	lean := make([][]float64, len(f.choices))
	for g, all := range f.choices {
		lean[g] = make([]float64, len(all))
		for i := range all {
			cost := all[i].money
			for _, list := range [][]take{all[i].takes, all[i].hours} {
				for _, t := range list {
					cost += x.by[t.row] * t.amount
				}
			}
			lean[g][i] = cost
		}
	}
	x.lean[f] = lean
	return lean
}

// boundOf returns a cost below which no plan within a node can lie, whoever found the prices:
// every plant takes the way that is cheapest once the limits it leans on are paid for, and
// heat costs what the shortest heating of the node takes. Valid by weak duality.
func (p *prover) boundOf(n *node, x *prices) float64 {
	lean, total := x.leanOf(n.f), x.rest+n.heat
	for g, all := range n.f.choices {
		least, always := math.Inf(1), false
		for i := range all {
			if c := &all[i]; n.allows(c) {
				always = always || c.route.direct
				least = min(least, lean[g][i]-p.weight*c.gain)
			}
		}
		if !always {
			least = min(least, p.counting.leaving(p.maker, p.weight))
		}
		total += float64(p.groups[g].want) * least
	}
	return total
}

// tighten raises the bound of a node by all prices known.
func (p *prover) tighten(n *node) {
	for ; n.tried < len(p.pool); n.tried++ {
		if bound := p.boundOf(n, p.pool[n.tried]); bound > n.bound {
			n.bound, n.by = bound, n.tried
		}
	}
}

// relax solves a node without whole numbers, for its prices.
func (p *prover) relax(n *node) error {
	n.relaxed = true
	s := p.state(p.counting, p.groups, n.f, n.allows, p.weight, n.heat)
	found, err := p.Relax(p.ctx, &s.Programme)
	if err != nil || found.State != solve.Proved {
		return err
	}
	p.told.Solves++
	p.pool = append(p.pool, p.priced(s, found.Prices))
	p.tighten(n)
	return nil
}
