package season

import (
	"math"
	"testing"

	"eyeup/growth"
)

// What the tabled curves give for a day is what the curves themselves give, to a part in two
// hundred thousand of the most they give, for every kind side by side, so that dates come to the same day.
func TestTabledCurvesAreTheCurves(t *testing.T) {
	m := makerOf(t, waterville(t))
	air := m.Given.Weather[0].Air
	for _, of := range []struct {
		table table
		curve func(kind int) func(float64) float64
	}{
		{m.recall.rates.sprout, func(k int) func(float64) float64 { return m.recall.rates.kinds[k].Sprout.Rate }},
		{m.recall.rates.grow, func(k int) func(float64) float64 { return m.recall.rates.kinds[k].Grow.Rate }},
	} {
		tabled := of.table.daily(air)
		if len(tabled) != len(m.recall.rates.kinds) || len(tabled) == 0 {
			t.Fatalf("%d curves of %d kinds", len(tabled), len(m.recall.rates.kinds))
		}
		for k, daily := range tabled {
			plain := growth.DailyRates(air, of.curve(k))
			most := 1e-9
			for _, rate := range plain {
				most = math.Max(most, rate)
			}
			for d, rate := range plain {
				if math.Abs(daily[d]-rate) > most/200000 {
					t.Errorf("%s, day %d: %v tabled, %v", m.recall.rates.kinds[k].Name, d, daily[d], rate)
				}
			}
		}
	}
}

// Beyond the table a curve stays as it is at the table's ends.
func TestTabledCurvesEndLevel(t *testing.T) {
	line := tableOf([]func(float64) float64{func(c float64) float64 { return c }, func(float64) float64 { return 1 }})
	for celsius, want := range map[float64]float64{-300: tableFrom, 12.34: 12.34, 500: tableTo} {
		sums := make([]float64, 2)
		line.add(sums, celsius)
		if math.Abs(sums[0]-want) > tableStep+1e-9 || math.Abs(sums[1]-1) > 1e-12 {
			t.Errorf("at %g: %v, want %g and 1", celsius, sums, want)
		}
	}
}
