package supply

import (
	"fmt"
	"math"

	"eyeup/odds"
)

// Labels returns how many labels to have: one for each container or crate of each lot,
// and some over for those that fade, break or are written wrongly.
func Labels(pieces int) (int, error) {
	if err := checkCount(pieces, "labels can't be had"); err != nil {
		return 0, err
	}
	return int(math.Ceil(float64(pieces)*(1+figure("labels", "spare").Value) - 1e-9)), nil
}

// SlowFeed returns how many grams of slow-release feed to blend into so many litres of
// mix, which is then not fed otherwise for as long as its label says.
func SlowFeed(litres odds.Amount) odds.Amount { return litres.Times(figure("slow feed", "rate").Value) }

// LiquidFeed returns how many grams of a soluble feed, with a share of nitrogen (0 to 1,
// as the three numbers on its label tell), bring so many litres of water to the usual
// strength for leafy plants. It fails for a share outside 0 to 1 and for less than no water.
func LiquidFeed(water, nitrogen float64) (odds.Amount, error) {
	if !(nitrogen > 0 && nitrogen <= 1) {
		return odds.Amount{}, fmt.Errorf("a feed can't hold %g%% of nitrogen; take the first of the numbers on its label", 100*nitrogen)
	}
	if !(water >= 0) || math.IsInf(water, 0) {
		return odds.Amount{}, fmt.Errorf("%g L of water can't be fed; give 0 or more", water)
	}
	f := figure("liquid feed", "nitrogen")
	perPPM := water / nitrogen / 1000 // a part in a million is a milligram in a litre
	return odds.Amount{Low: f.Low * perPPM, Middle: f.Value * perPPM, High: f.High * perPPM}, nil
}

// Water returns how many litres one watering of so many filled containers takes.
func (n Need) Water() odds.Amount {
	c := n.Container
	held := float64(n.Count*c.Cells) * c.Volume.Value * c.Filled()
	f := figure("watering", "share")
	return odds.Amount{Low: f.Low * held, Middle: f.Value * held, High: f.High * held}
}

// Bench returns the bench in m² that so many of the containers take pot-tight; it is
// not-a-number where the container's own is not known.
func (n Need) Bench() odds.Amount {
	count, b := float64(n.Count), n.Container.Bench
	return odds.Amount{Low: count * b.Low, Middle: count * b.Value, High: count * b.High}
}
