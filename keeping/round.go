package keeping

import (
	"fmt"
	"math"

	"eyeup/odds"
)

// Round is what was found on going through a store: how many were firm, wrinkled, soft or
// lost, of all that were looked at. What is soft or lost is taken out.
type Round struct {
	Day                        float64 // since it was packed
	Firm, Wrinkled, Soft, Lost int
}

func (r Round) seen() int  { return r.Firm + r.Wrinkled + r.Soft + r.Lost }
func (r Round) alive() int { return r.Firm + r.Wrinkled }

// Pace is what is believed of how many times faster than reckoned a stock is lost. It is
// lognormal: Middle at even odds, Spread the standard deviation of the logarithm.
type Pace struct {
	Middle float64
	Spread float64
}

// Reckoned returns the pace of which nothing has been seen yet: 1, as uncertain as the
// figures are. It fails as Survival does.
func Reckoned(s Stock, spells []Spell) (Pace, error) {
	h, err := s.hazard()
	if err != nil {
		return Pace{}, err
	}
	if err := checkSurvival(spells); err != nil {
		return Pace{}, err
	}
	gone := h.over(spells)
	if !(gone.Low > 0) {
		return Pace{1, pacePriorSpread}, nil
	}
	const oneInTen = 1.2815515655446004 // standard deviations from the middle to one in ten
	return Pace{1, math.Log(gone.High/gone.Low) / (2 * oneInTen)}, nil
}

// pacePriorSpread stands where none can be reckoned, as before any day has passed.
const pacePriorSpread = 1.0

// OfVariety returns the pace of one variety, of which nothing has been seen, from that of
// its kind: so a variety's rounds are weighed against all others'.
func (p Pace) OfVariety() Pace {
	return Pace{p.Middle, math.Hypot(p.Spread, figure("pace spread").Value)}
}

// After returns the pace once the rounds were seen, in the order of their days, in a store
// whose air was that of the spells since it was packed. Each tells how many of those still
// there at the round of an earlier day came through since; rounds of one day stand side by
// side. Other lots are folded in by calling it again on what it returned. It fails as
// Survival does, and for rounds out of order, after the last spell, or of less than nothing.
func (p Pace) After(s Stock, spells []Spell, rounds []Round) (Pace, error) {
	heaps, err := heapsAt(s, spells, rounds)
	if err != nil {
		return Pace{}, err
	}
	return p.weighed(func(times float64) float64 {
		sum, before := 0.0, 0
		for i, r := range rounds {
			if i > 0 && r.Day > rounds[i-1].Day {
				before = i
			}
			sum += likelihood(r, times*(heaps[i+1]-heaps[before]))
		}
		return sum
	}), nil
}

// heapsAt returns the hazard heaped up until each round, with nothing before the first.
func heapsAt(s Stock, spells []Spell, rounds []Round) ([]float64, error) {
	h, err := s.hazard()
	if err != nil {
		return nil, err
	}
	if err := checkSurvival(spells); err != nil {
		return nil, err
	}
	heaps, last := []float64{0}, 0.0
	for _, r := range rounds {
		switch {
		case !(r.Day >= last) || r.Day > Days(spells)+1e-9:
			return nil, fmt.Errorf("the round of day %g lies before the one of day %g or after day %g, the last that the store is known for; put them in order", r.Day, last, Days(spells))
		case min(r.Firm, r.Wrinkled, r.Soft, r.Lost) < 0:
			return nil, fmt.Errorf("the round of day %g found less than nothing; give counts of 0 or more", r.Day)
		}
		heaps, last = append(heaps, h.middle(until(spells, r.Day))), r.Day
	}
	return heaps, nil
}

// until returns the spells of the first so many days.
func until(spells []Spell, days float64) []Spell {
	var all []Spell
	for _, s := range spells {
		s.Days = min(s.Days, days)
		days -= s.Days
		all = append(all, s)
	}
	return all
}

// likelihood returns the logarithm of the odds of what a round found, when so much hazard
// had been heaped up since the one before.
func likelihood(r Round, heap float64) float64 {
	sum := -heap * float64(r.alive())
	if gone := r.seen() - r.alive(); gone > 0 {
		sum += float64(gone) * math.Log(max(-math.Expm1(-heap), math.SmallestNonzeroFloat64))
	}
	return sum
}

// weighed returns the pace weighed by the logarithm of a likelihood of each value, summed
// up again as a lognormal.
func (p Pace) weighed(likelihood func(times float64) float64) Pace {
	points := p.points()
	weights := make([]float64, len(points))
	best := math.Inf(-1)
	for i, x := range points {
		z := (x - math.Log(p.Middle)) / p.Spread
		weights[i] = likelihood(math.Exp(x)) - z*z/2
		best = max(best, weights[i])
	}
	var sum, mean, square float64
	for i, x := range points {
		w := math.Exp(weights[i] - best)
		sum += w
		mean += w * x
		square += w * x * x
	}
	mean /= sum
	return Pace{math.Exp(mean), math.Sqrt(max(square/sum-mean*mean, 1e-12))}
}

// points are the logarithms of the pace over which is summed: wide enough for rounds that
// find what was not expected.
func (p Pace) points() []float64 {
	const each, reach = 401, 6.0
	all := make([]float64, each)
	for i := range all {
		all[i] = math.Log(p.Middle) + p.Spread*reach*(2*float64(i)/(each-1)-1)
	}
	return all
}

// Through returns what is believed of the share, of what is alive on one day since
// packing, that comes through to another. With odds.Among it tells how many of so many to
// count on. It fails as Survival does, and for days out of order or beyond the spells.
func (p Pace) Through(s Stock, spells []Spell, from, to float64) (odds.Beta, error) {
	heaps, err := heapsAt(s, spells, []Round{{Day: from}, {Day: to}})
	if err != nil {
		return odds.Beta{}, err
	}
	heap := heaps[2] - heaps[1]
	var sum, mean, square float64
	for _, x := range p.points() {
		z := (x - math.Log(p.Middle)) / p.Spread
		w, share := math.Exp(-z*z/2), math.Exp(-heap*math.Exp(x))
		sum += w
		mean += w * share
		square += w * share * share
	}
	mean /= sum
	return odds.Matching(mean, max(square/sum-mean*mean, 1e-12)), nil
}
