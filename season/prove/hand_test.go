package prove

import (
	"math"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/season"
)

// TestTwelveClumpsByHand: twelve mid-season clumps, a lit shelf of 0.3 m² and half a square
// metre of glass that is left cold. A plant whose leaves meet takes 0.057 m², so that the
// shelf holds 0.3 / 0.057 = 5.26, five plants; they gain most and go there. The other seven
// take 7 × 0.03 = 0.21 m² in the cold glass. Weeks, pots and light are then added up.
func TestTwelveClumpsByHand(t *testing.T) {
	b := crowded(t)
	b.Given.Today = civil.MustOn(2027, time.April, 5)
	b.Given.Stock = b.Given.Stock[1:2]
	b.Given.Stock[0].Count, b.Given.Stock[0].Plant = 12, 12
	b.Given.Places[1].Room, b.Given.Places[1].Lit, b.Given.Places[2].Room = 0.3, 0.3, 0.5
	b.Given.HoursPerWeek = 20
	r := proved(t, b)
	one := r.proofs[season.NoHeat]
	ways := map[string]int{}
	weeks, pots := 0.0, 0.0
	for i, n := range one.best.counts[0] {
		if n > 0 {
			c := one.best.sub.choices[0][i]
			ways[c.Route()] += n
			weeks, pots = weeks+float64(n)*c.Gain, pots+float64(n)*c.Money
		}
	}
	if ways["room, under lamps"] != 5 || ways["glass"] != 7 {
		t.Errorf("five under lamps and seven in the cold glass, not %v", ways)
	}
	if math.Abs(weeks-28.5) > 1e-9 || math.Abs(one.best.gain-weeks) > 1e-9 { // 5 × 4.5 + 7 × 6/7
		t.Errorf("%v weeks gained, not 28.5", one.best.gain)
	}
	if want := pots + one.best.light - one.weight*weeks; math.Abs(r.prover.costAt(one)-want) > 1e-9 {
		t.Errorf("it counts for %v, not %v", r.prover.costAt(one), want)
	}
}
