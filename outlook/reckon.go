package outlook

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"

	"eyeup/civil"
	"eyeup/keeping"
	"eyeup/odds"
	"eyeup/quantity"
	"eyeup/stock"
)

// draws is the number of random futures of a variety.
const draws = 2000

// seed is the random seed: the same question has the same answer.
const seed = 1

// variety returns what to count on of one variety.
func (r *reckoning) variety(key sort, p *paces, y *yields) Variety {
	v := Variety{Kind: key.kind, Name: key.name, Elsewhere: r.elsewhere[key], Wanted: r.wanted[key], Divided: y.divided[key], Pieces: y.varieties[key].amount()}
	lots := r.lying[key]
	beliefs := make([]odds.Beta, len(lots))
	for i := range lots {
		if lots[i].at.Spot.Form == stock.Clump {
			v.Clumps += lots[i].alive
		} else {
			v.Others += lots[i].alive
		}
		belief, err := lots[i].through(p.varieties[key], r.At)
		if why := p.why[key.kind]; why != nil {
			err = why
		}
		if err != nil || math.IsNaN(belief.A) {
			v.Why = "no forecast of what survives: not computed"
			if err != nil {
				v.Why = "no forecast of what survives: " + plainWhy(err)
			}
			v.Through, v.Good, v.Enough = unknown(), unknown(), math.NaN()
			return v
		}
		beliefs[i] = belief
	}
	v.draw(lots, beliefs, y.varieties[key])
	return v
}

func unknown() odds.Amount { return odds.Exactly(math.NaN()) }

// draw simulates the future of a variety many times and summarises it.
func (v *Variety) draw(lots []lying, beliefs []odds.Beta, each pieces) {
	chance := odds.Stream(seed, "outlook/"+v.Kind+"/"+v.Name)
	through, good := make([]float64, draws), make([]float64, draws)
	enough := 0
	for d := range draws {
		clumps, others := 0, 0
		for i := range lots {
			alive := drawAlive(lots[i].alive, beliefs[i], chance)
			if lots[i].at.Spot.Form == stock.Clump {
				clumps += alive
			} else {
				others += alive
			}
		}
		n := others + each.draw(clumps, chance)
		if each.clumps == 0 {
			n = others + clumps
		}
		through[d], good[d] = float64(clumps+others), float64(n)
		if n+v.Elsewhere >= v.Wanted {
			enough++
		}
	}
	v.Through, v.Good, v.Enough = odds.AmountOf(through), odds.AmountOf(good), float64(enough)/draws
}

// drawAlive draws from the beta-binomial distribution.
func drawAlive(n int, belief odds.Beta, chance *rand.Rand) int {
	share := distuv.Beta{Alpha: belief.A, Beta: belief.B, Src: chance}.Rand()
	alive := 0
	for range n {
		if chance.Float64() < share {
			alive++
		}
	}
	return alive
}

// crates returns what each heap has lost so far, driest first.
func (r *reckoning) crates() []Crate {
	var all []Crate
	for _, key := range r.order {
		for i := range r.lying[key] {
			y := &r.lying[key][i]
			dried, err := keeping.Loss(y.stored, y.spells(r.Today))
			if err != nil {
				continue // its variety says why
			}
			c := Crate{Code: string(y.lot.Code), Name: key.name, Spot: y.at.Spot, Count: y.at.Count, Pack: y.at.Pack, Since: y.at.Since, Lost: dried.Lost, State: dried.State}
			now := r.Today.Month() - 1
			c.ToDo = keeping.ToDo(dried.State, y.store.Temperature[now])
			days, err := keeping.DaysTo(y.stored, dried.Lost.Middle, keeping.WrinkledAt().Value, y.store.Temperature[now], y.store.Humidity[now])
			if err == nil {
				c.Wrinkles = civil.When{Early: r.after(days.Low), Middle: r.after(days.Middle), Late: r.after(days.High)}
			}
			all = append(all, c)
		}
	}
	slices.SortStableFunc(all, func(a, b Crate) int { return cmp.Compare(b.Lost.Middle, a.Lost.Middle) })
	return all
}

// longest is how many days ahead a store is forecast.
const longest = 730

// after returns the day that many days from today; zero if that is beyond longest.
func (r *reckoning) after(days float64) civil.Date {
	if !(days < longest) {
		return civil.Date{}
	}
	return r.Today.AddDays(civil.Days(math.Round(days)))
}

// mostProposed is how many rounds are proposed.
const mostProposed = 8

// proposals returns the rounds that would tell most: where the number alive today is least
// certain.
func (r *reckoning) proposals(p *paces) []Proposal {
	type weighed struct {
		Proposal
		unsure float64
	}
	var all []weighed
	for _, key := range r.order {
		for i := range r.lying[key] {
			y := &r.lying[key][i]
			belief, err := y.through(p.varieties[key], r.Today)
			if err != nil || p.why[key.kind] != nil || y.alive == 0 || !(belief.A > 0) {
				continue
			}
			count := odds.Among(y.alive, belief)
			all = append(all, weighed{Proposal{string(y.lot.Code), key.name, y.at.Spot, y.alive, y.last, count.Amount()}, count.Variance()})
		}
	}
	slices.SortStableFunc(all, func(a, b weighed) int { return cmp.Compare(b.unsure, a.unsure) })
	var best []Proposal
	for _, w := range all[:min(len(all), mostProposed)] {
		if w.unsure > leastUnsure {
			best = append(best, w.Proposal)
		}
	}
	return best
}

// leastUnsure is the variance of a count below which a round is not worth proposing.
const leastUnsure = 0.05

func celsiusOf(c float64) quantity.Temperature {
	if math.IsNaN(c) {
		return quantity.Unknown()
	}
	return quantity.Celsius(c)
}

func shareOf(x float64) quantity.Share { return quantity.Share(x) }
