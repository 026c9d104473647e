package season

import (
	"math"

	"eyeup/culture"
	"eyeup/growth"
)

// span is a run of days of the season; to is the day after the last.
type Days struct{ From, To int }

// warming is how many days before its first plants a house is heated.
var Warming = int(culture.Usual("house.ahead"))

// individuals stand for a lot: its plants between the slowest tenth and the quickest,
// each with its own haste to come up and to flower.
var individuals = culture.Individuals()

// flowerSpread is the spread of the days to flower within a lot.
var flowerSpread = culture.Usual("flower.spread")

// individually walks the individuals of a lot through every year, moved as its middle plant
// decides.
func (o *outcome) individually() [][]fate {
	o.later.lot.Do(func() {
		o.lots = make([][]fate, len(o.fates()))
		for year, f := range o.fates() {
			w, moves := walker{life: o.life, option: &o.option, year: year}, &schedule{f.handOn, f.framed, f.potted, f.out}
			for _, i := range individuals {
				one := individual{
					growth.Lognormal{Middle: 1, Sigma: o.life.Sprout.Sigma}.At(i.Up),
					growth.Lognormal{Middle: 1, Sigma: flowerSpread}.At(i.Flower),
				}
				o.lots[year] = append(o.lots[year], w.walk(one, moves))
			}
		}
	})
	return o.lots
}

func Hundredth(x float64) float64 { return math.Round(x*100) / 100 }
