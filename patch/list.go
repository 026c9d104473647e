package patch

import (
	"context"
	"math"

	"eyeup/solve"
)

// Proof says how good a list is proved to be, in places (see Count).
type Proof struct {
	Places float64 `json:"places" jsonschema_description:"what the list counts for: places lacking of wishes and outside the mix, weighed"`
	Bound  float64 `json:"bound" jsonschema_description:"no list counts for less"`
	Gap    float64 `json:"gap" jsonschema_description:"no list is better by more places than this"`
	Proved bool    `json:"proved" jsonschema_description:"whether the gap is as small as was asked for"`
}

// Near is how close a list and its bound must be to count as proved, in places: no other
// list is better by half a place of a variety that is liked.
const Near = 0.5

// List is a planting list worked out.
type List struct {
	Places []int   // by variety, in the order of the brief
	Used   float64 // room taken, m²
	Count  Count
	Proof  Proof
	Lacks  float64 // by how many m² the musts alone overstep the room; 0 where they fit
	Crowd  int     // by how many plants they overstep the places; 0 where they fit

	s *sums
}

// Make works out the list. A solver is asked only where the list found without one is not
// near enough its bound; nil asks none. When ctx ends it returns the best so far, with its
// honest gap. progress is told when the count or its bound got better; it may be nil.
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

// alone returns a bound that needs no search: every variety by itself at its best, no mix
// missed. It is the count where all wishes fit.
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

// solved has the programme solved from the list so far, and returns the better list.
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

// proof makes a proof of a count and its bound, which never lies above it.
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
