package patch

import (
	"context"
	"math"

	"eyeup/solve"
)

// Proof is how good a list is proved to be, in places (see Count).
type Proof struct {
	Places float64 `json:"places" jsonschema_description:"cost of the list: missing places and places outside the mix, weighted"`
	Bound  float64 `json:"bound" jsonschema_description:"no list costs less"`
	Gap    float64 `json:"gap" jsonschema_description:"no list is better by more places than this"`
	Proved bool    `json:"proved" jsonschema_description:"whether the gap is as small as was asked for"`
}

// Near is the gap between a list and its bound that counts as proved, in places: no other list
// is better by half a place of a variety that the grower would like.
const Near = 0.5

// List is a finished planting list.
type List struct {
	Places []int   // by variety, in the order of the brief
	Used   float64 // room taken, m²
	Count  Count
	Proof  Proof
	Lacks  float64 // by how many m² the musts alone exceed the room; 0 if they fit
	Crowd  int     // by how many plants they exceed the places; 0 if they fit

	s *sums
}

// Make makes the list. The solver is called only if the list found without it is not close
// enough to its bound; nil means no solver. When ctx ends, Make returns the best list so far
// with its true gap. progress, if not nil, is called when the cost or its bound improves.
func Make(ctx context.Context, b *Brief, solver solve.Solver, progress func(Proof)) (*List, error) {
	if err := b.Check(); err != nil {
		return nil, err
	}
	s := newSums(b)
	s.fill()
	s.better()
	bound := s.alone()
	if s.count().Total()-bound > telling {
		s, bound = s.seek(bound)
	}
	if solver != nil && s.count().Total()-bound > Near {
		var err error
		if s, bound, err = s.solved(ctx, solver, bound, progress); err != nil {
			return nil, err
		}
	}
	return s.list(bound), nil
}

// alone returns a bound that needs no search: every variety by itself at its best, ignoring
// the mix. It is the optimum if all wishes fit.
func (s *sums) alone() float64 {
	total := 0.0
	for i := range s.b.Varieties {
		v := &s.b.Varieties[i]
		least := math.Inf(1)
		for x := 0; x <= v.most(); x++ {
			if x == 0 && s.firm[i] || x > 0 && x < s.least[i] {
				continue
			}
			least = min(least, v.lost(x)+shortCounts*float64(v.short(x)))
		}
		total += least
	}
	return total
}

// solved solves the programme from the list so far, and returns the better list.
func (s *sums) solved(ctx context.Context, solver solve.Solver, bound float64, progress func(Proof)) (*sums, float64, error) {
	p := s.programme()
	limits := solve.Limits{Apart: Near}
	if progress != nil {
		limits.Progress = func(g *solve.Progress) {
			progress(proof(min(g.Objective, s.count().Total()), max(bound, g.Bound)))
		}
	}
	answer, err := solver(ctx, &p.Programme, limits, p.values(s))
	if err != nil {
		return nil, 0, err
	}
	best := s
	if answer.Values != nil {
		places := p.read(answer.Values)
		if c, ok := s.b.Count(places); ok && c.Total() < s.count().Total() {
			best = newSums(s.b)
			for i, n := range places {
				best.add(i, n-best.places[i])
			}
			best.better()
		}
	}
	return best, max(bound, answer.Bound), nil
}

// proof makes a Proof from a cost and its bound, which it limits to the cost.
func proof(count, bound float64) Proof {
	bound = min(bound, count)
	return Proof{Places: count, Bound: bound, Gap: count - bound, Proved: count-bound <= Near}
}

func (s *sums) list(bound float64) *List {
	l := &List{Places: s.places, Used: s.used, Count: s.count(), s: s}
	l.Proof = proof(l.Count.Total(), bound)
	if over := s.b.MustRoom() - s.b.room(); over > slight {
		l.Lacks = over
	}
	if s.b.Places > 0 {
		l.Crowd = max(0, s.b.mustPlants()-s.b.Places)
	}
	return l
}
