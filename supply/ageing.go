package supply

import (
	_ "embed"
	"fmt"
	"math"

	"gonum.org/v1/gonum/mathext"

	"eyeup/quantity"
)

// Ageing holds the constants of the seed viability equation for a kind in closed storage.
// Source of the equation: Ellis & Roberts 1980, Annals of Botany 45:13; of the constants:
// Source.
type Ageing struct {
	Kind           string
	KE, CW, CH, CQ float64
	Source         string
}

//go:embed data/ageing.csv
var ageingCSV string

var ageings = readAgeings()

func readAgeings() []Ageing {
	var all []Ageing
	for _, row := range rows(ageingCSV, "kind,ke,cw,ch,cq,source") {
		all = append(all, Ageing{row[0], number(row[1]), number(row[2]), number(row[3]), number(row[4]), row[5]})
	}
	return all
}

// AgeingOf returns every published set of constants for a kind; none for most kinds.
func AgeingOf(kind string) []Ageing {
	var sets []Ageing
	for _, a := range ageings {
		if a.Kind == kind {
			sets = append(sets, a)
		}
	}
	return sets
}

// Spread returns the days in which seed loses one probit of viability: the standard deviation
// of the seeds' time of death. moisture is in percent of the fresh weight. It fails outside 5
// to 25 % and -20 to 90 °C, the range of the equation.
func (a Ageing) Spread(moisture float64, t quantity.Temperature) (float64, error) {
	c := t.Celsius()
	if !(moisture >= 5 && moisture <= 25) {
		return 0, fmt.Errorf("no figures for seed at %g%% moisture; give 5%% to 25%% of the fresh weight", moisture)
	}
	if !(c >= -20 && c <= 90) {
		return 0, fmt.Errorf("no figures for seed stored at %g °C; give -20 to 90 °C", c)
	}
	return math.Pow(10, a.KE-a.CW*math.Log10(moisture)-a.CH*c-a.CQ*c*c), nil
}

// After returns the share of seed still viable after days, from a share viable at the start
// (between 0 and 1, exclusive). It fails as Spread does.
func (a Ageing) After(viable quantity.Share, days, moisture float64, t quantity.Temperature) (quantity.Share, error) {
	if !(viable > 0 && viable < 1) || !(days >= 0) {
		return 0, fmt.Errorf("seed with %g%% viable at the start can't be aged by %g days; give more than 0%% and less than 100%%, and 0 days or more", viable.Percent(), days)
	}
	spread, err := a.Spread(moisture, t)
	if err != nil {
		return 0, err
	}
	return quantity.Share(chance(probit(float64(viable)) - days/spread)), nil
}

// Moisture returns the water content of seed in equilibrium with open air, in percent of the
// fresh weight; oil is the share of oil in its dry matter. It fails outside 10 to 70 %
// humidity and 0 to 40 °C, the range of the equation. Source: Cromarty, Ellis & Roberts 1982,
// The Design of Seed Storage Facilities (IBPGR, Rome).
func Moisture(humidity quantity.Share, t quantity.Temperature, oil float64) (float64, error) {
	if !(humidity >= 0.1 && humidity <= 0.7) || !(t.Celsius() >= 0 && t.Celsius() <= 40) || !(oil >= 0 && oil < 1) {
		return 0, fmt.Errorf("no figures for the moisture of seed in air of %g %% and %g °C; give 10 to 70 %% and 0 to 40 °C", humidity.Percent(), t.Celsius())
	}
	dry := math.Sqrt(-440*math.Log1p(-float64(humidity))) * (1 - oil) / (1.1 + t.Celsius()/90)
	return 100 * dry / (100 + dry), nil
}

// probit returns the standard normal quantile of a share; chance is its inverse.
func probit(share float64) float64 { return mathext.NormalQuantile(share) }
func chance(probit float64) float64 {
	return math.Erfc(-probit/math.Sqrt2) / 2
}
