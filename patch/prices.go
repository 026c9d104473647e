package patch

import "math"

// prices are the Lagrange multipliers of the room and of each share of a mix, in places. With
// them every variety can be optimised by itself, and the sum is a lower bound on the cost of
// any list that fits, whatever the prices are (Lagrangian relaxation; Held, Wolfe and Crowder,
// Validation of subgradient optimization, Mathematical Programming 6 (1974), 62-88).
type prices struct {
	room, plants float64   // of the room of a mean plant, and of a plant; never negative
	over, under  []float64 // of a place in a group, from 0 to the cost of a place outside
}

// subgradient is the state of the search for good prices.
type subgradient struct {
	s     *sums
	alone [][]float64 // by variety: its own cost with x places; infinite if x is not allowed
	mean  float64     // room of a mean plant, m²
	now   prices
	bound float64   // the best so far
	trend []float64 // smoothed subgradient: room, plants, over and under of each group
	drift []float64 // running mean of the places chosen, by variety
	x     []int     // the last places chosen

	boldness float64
	missed   int // steps since the bound last rose
}

// Parameters of the subgradient search: number of steps, step size, and when to shrink it.
const (
	seeks    = 1200
	bold     = 1.2
	patience = 12
	inertia  = 0.6
	fresh    = 0.05
	tries    = 24 // how often the mean is rounded to a list

	worthBettering = 3 // places above the best within which a list is improved
)

func newSubgradient(s *sums) *subgradient {
	k := &subgradient{s: s, bound: math.Inf(-1), boldness: bold, x: make([]int, len(s.places)), drift: make([]float64, len(s.places))}
	k.now = prices{over: make([]float64, len(s.groups)), under: make([]float64, len(s.groups))}
	k.trend = make([]float64, 2+2*len(s.groups))
	area, n := 0.0, 0
	for i := range s.b.Varieties {
		v := &s.b.Varieties[i]
		counts := make([]float64, v.most()+1)
		for x := range counts {
			counts[x] = v.lost(x) + shortCounts*float64(v.short(x))
			if x == 0 && s.firm[i] || x > 0 && x < s.least[i] {
				counts[x] = math.Inf(1)
			}
		}
		k.alone = append(k.alone, counts)
		area, n = area+float64(v.Plant)*v.area(), n+v.Plant
	}
	if k.mean = area / float64(max(1, n)); k.mean == 0 {
		k.mean = 1
	}
	return k
}

// choose optimises every variety by itself under the prices and returns the total, with the
// excess or lack of room and places as the subgradient.
func (k *subgradient) choose() (total float64, slope []float64) {
	slope = make([]float64, len(k.trend))
	for i, counts := range k.alone {
		price := k.price(i)
		best, least := 0, math.Inf(1)
		for x, c := range counts {
			if c += price * float64(x); c < least {
				best, least = x, c
			}
		}
		k.x[i] = best
		total += least
		k.lay(i, float64(best), slope)
	}
	if k.s.b.Room > 0 {
		slope[0] -= float64(k.s.b.Room) / k.mean
		total -= k.now.room * float64(k.s.b.Room) / k.mean
	}
	if k.s.b.Places > 0 {
		slope[1] -= float64(k.s.b.Places)
		total -= k.now.plants * float64(k.s.b.Places)
	}
	return total, slope
}

// price returns the price of a place of a variety.
func (k *subgradient) price(i int) float64 {
	price := 0.0
	if k.s.b.Room > 0 {
		price += k.now.room * k.s.b.Varieties[i].area() / k.mean
	}
	if k.s.b.Places > 0 {
		price += k.now.plants
	}
	for g := range k.s.groups {
		over, under := k.s.parts(g, i)
		price += k.now.over[g]*over + k.now.under[g]*under
	}
	return price
}

// parts returns what one place of variety i adds to the excess and the lack of group g.
func (s *sums) parts(g, i int) (over, under float64) {
	group := &s.groups[g]
	switch {
	case group.in[i]:
		return 1 - group.high, group.low - 1
	case s.of[group.mix][i]:
		return -group.high, group.low
	}
	return 0, 0
}

// lay adds x places of a variety to the subgradient.
func (k *subgradient) lay(i int, x float64, slope []float64) {
	if k.s.b.Room > 0 {
		slope[0] += x * k.s.b.Varieties[i].area() / k.mean
	}
	if k.s.b.Places > 0 {
		slope[1] += x
	}
	for g := range k.s.groups {
		over, under := k.s.parts(g, i)
		slope[2+2*g] += x * over
		slope[3+2*g] += x * under
	}
}

// move moves the prices along the smoothed subgradient, within their limits.
func (k *subgradient) move(far float64) {
	k.now.room = max(0, k.now.room+far*k.trend[0])
	k.now.plants = max(0, k.now.plants+far*k.trend[1])
	for g := range k.s.groups {
		k.now.over[g] = min(overCounts, max(0, k.now.over[g]+far*k.trend[2+2*g]))
		k.now.under[g] = min(underCounts, max(0, k.now.under[g]+far*k.trend[3+2*g]))
	}
}

// seek searches for prices that give a high bound, and for a better list among those that the
// prices suggest. It returns both; the list is the given one if none is better.
func (s *sums) seek(bound float64) (*sums, float64) {
	k, best := newSubgradient(s), s
	least := s.count().Total()
	for n := range seeks {
		total, slope := k.choose()
		far := k.learn(n, total, slope)
		if (n+1)%(seeks/tries) == 0 {
			list := k.list()
			if list.count().Total() < least+worthBettering {
				list.better()
			}
			if count := list.count().Total(); count < least-telling {
				best, least = list, count
			}
		}
		if far == 0 || least-k.bound < telling {
			break
		}
		k.move(far * max(least-total, telling))
	}
	return best, max(bound, k.bound-telling) // minus the possible rounding error
}

// learn adds a choice to the smoothed subgradient and the mean, and returns the step length
// per place between the choice and the best list; 0 if the subgradient vanishes.
func (k *subgradient) learn(n int, total float64, slope []float64) float64 {
	if k.missed++; total > k.bound {
		k.bound, k.missed = total, 0
	}
	if k.missed >= patience {
		k.boldness, k.missed = k.boldness/2, 0
	}
	square := 0.0
	for j, x := range slope {
		k.trend[j] = inertia*k.trend[j] + (1-inertia)*x
		square += k.trend[j] * k.trend[j]
	}
	for i, x := range k.x {
		k.drift[i] += max(fresh, 1/float64(n+1)) * (float64(x) - k.drift[i])
	}
	if square < 1e-12 {
		return 0
	}
	return k.boldness / square
}

// list rounds the mean of the places chosen to a list.
func (k *subgradient) list() *sums {
	list := newSums(k.s.b)
	for i, mean := range k.drift {
		x := int(math.Round(mean))
		if x < list.least[i] && (list.firm[i] || 2*x >= list.least[i]) {
			x = list.least[i]
		} else if x < list.least[i] {
			x = 0
		}
		list.add(i, min(x, k.s.b.Varieties[i].most())-list.places[i])
	}
	list.shrink()
	list.fill()
	return list
}

// shrink removes places until the list fits, each from the variety that loses least for the
// room it frees.
func (s *sums) shrink() {
	for !s.fits() {
		t, found := s.cheapest(-1)
		if !found {
			return
		}
		s.add(t.i, t.by)
	}
}
