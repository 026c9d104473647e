package season

import (
	"slices"

	"eyeup/culture"
)

// rates are the curves of all kinds over temperature, tabled so that an hour costs a look
// and not a power.
type rates struct {
	kinds        []*culture.Kind
	sprout, grow table
}

func ratesOf(kinds []*culture.Kind) rates {
	r := rates{kinds: kinds}
	var sprout, grow []func(celsius float64) float64
	for _, k := range kinds {
		sprout, grow = append(sprout, k.Sprout.Rate), append(grow, k.Grow.Rate)
	}
	r.sprout, r.grow = tableOf(sprout), tableOf(grow)
	return r
}

// indexOf returns where a kind stands among the curves, -1 where it does not.
func (r rates) indexOf(name string) int {
	return slices.IndexFunc(r.kinds, func(k *culture.Kind) bool { return k.Name == name })
}

// table holds curves over temperature, looked up between points a fiftieth of a kelvin apart.
// What all curves are at one point lies side by side: an hour finds its place once for all.
type table struct {
	curves int
	points []float64
}

const (
	tableFrom = -60.0
	tableTo   = 80.0
	tableStep = 0.02
)

func tableOf(curves []func(celsius float64) float64) table {
	t := table{curves: len(curves)}
	for i := range int((tableTo-tableFrom)/tableStep) + 2 {
		for _, rate := range curves {
			t.points = append(t.points, rate(tableFrom+tableStep*float64(i)))
		}
	}
	return t
}

// daily returns, curve by curve, the mean over the 24 hours of each day. Temperatures are in
// °C and begin at midnight.
func (t table) daily(hourly []float64) [][]float64 {
	if t.curves == 0 {
		return nil
	}
	days := len(hourly) / 24
	all, flat := make([][]float64, t.curves), make([]float64, t.curves*days)
	for k := range all {
		all[k] = flat[k*days : (k+1)*days : (k+1)*days]
	}
	sums := make([]float64, t.curves)
	for d := range days {
		clear(sums)
		for _, celsius := range hourly[24*d : 24*d+24] {
			t.add(sums, celsius)
		}
		for k, sum := range sums {
			all[k][d] = sum / 24
		}
	}
	return all
}

// add adds to every sum what its curve is at a temperature; beyond the table it stays as at
// the end.
func (t table) add(sums []float64, celsius float64) {
	x := (celsius - tableFrom) / tableStep
	x = min(max(x, 0), float64(len(t.points)/t.curves-2))
	i := int(x)
	part, at := x-float64(i), t.points[i*t.curves:]
	here, next := at[:len(sums)], at[t.curves:t.curves+len(sums)]
	for k := range sums {
		sums[k] += here[k] + part*(next[k]-here[k])
	}
}
