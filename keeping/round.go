package keeping

import (
	"fmt"
	"math"

	"eyeup/odds"
)

// Round is the result of checking a store: how many of those examined were firm, wrinkled,
// soft or lost. Soft and lost ones are removed.
type Round struct {
	Day                        float64 // days since packing
	Firm, Wrinkled, Soft, Lost int
}

func (r Round) seen() int  { return r.Firm + r.Wrinkled + r.Soft + r.Lost }
func (r Round) alive() int { return r.Firm + r.Wrinkled }

// Pace is the belief about how many times faster than computed a stock is lost. It is
// lognormal: Middle is the median, Spread the standard deviation of the logarithm.
type Pace struct {
	Middle float64
	Spread float64
}

// Reckoned returns the pace before any round: median 1, with the uncertainty of the figures.
// It fails as Survival does.
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
	const oneInTen = 1.2815515655446004 // standard deviations between the median and the 10 % quantile
	return Pace{1, math.Log(gone.High/gone.Low) / (2 * oneInTen)}, nil
}

// pacePriorSpread is used where no spread can be computed, as on the first day.
const pacePriorSpread = 1.0

// OfVariety returns the prior pace of one variety from that of its kind, so that a variety's
// own rounds are weighed against all others'.
func (p Pace) OfVariety() Pace {
	return Pace{p.Middle, math.Hypot(p.Spread, figure("pace spread").Value)}
}

// After returns the pace updated by the rounds, in order of their days, in a store whose air
// since packing was that of the spells. Each round says how many of those left after the
// previous day's round survived since; rounds on the same day are independent samples. To add
// another lot, call After on the result. It fails as Survival does, and for rounds that are
// out of order, after the last spell, or negative.
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

// heapsAt returns the cumulative hazard between successive rounds.
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
			return nil, fmt.Errorf("the round of day %g is before that of day %g or after day %g, the last day with known air; put the rounds in order", r.Day, last, Days(spells))
		case min(r.Firm, r.Wrinkled, r.Soft, r.Lost) < 0:
			return nil, fmt.Errorf("the round of day %g has negative counts; give 0 or more", r.Day)
		}
		heaps, last = append(heaps, h.middle(until(spells, r.Day))), r.Day
	}
	return heaps, nil
}

// until returns the spells of the given number of first days.
func until(spells []Spell, days float64) []Spell {
	var all []Spell
	for _, s := range spells {
		s.Days = min(s.Days, days)
		days -= s.Days
		all = append(all, s)
	}
	return all
}

// likelihood returns the log-likelihood of a round, given the cumulative hazard since the
// previous one.
func likelihood(r Round, heap float64) float64 {
	sum := -heap * float64(r.alive())
	if gone := r.seen() - r.alive(); gone > 0 {
		sum += float64(gone) * math.Log(max(-math.Expm1(-heap), math.SmallestNonzeroFloat64))
	}
	return sum
}

// weighed returns the pace updated by a log-likelihood, fitted by a lognormal again.
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

// points are the logarithms of the pace used for integration, wide enough for unexpected
// rounds.
func (p Pace) points() []float64 {
	const each, reach = 401, 6.0
	all := make([]float64, each)
	for i := range all {
		all[i] = math.Log(p.Middle) + p.Spread*reach*(2*float64(i)/(each-1)-1)
	}
	return all
}

// Through returns the belief about the share of stock alive on day from after packing that is
// alive on day to. odds.Among then gives how many of a number to expect. It fails as Survival
// does, and for days out of order or beyond the spells.
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
