package supply

import (
	"fmt"
	"math"

	"eyeup/odds"
)

// Labels returns how many labels to have: one for each container or crate of each lot, and
// some spare for those that fade, break or are miswritten.
func Labels(pieces int) (int, error) {
	if err := checkCount(pieces, "labels can't be had"); err != nil {
		return 0, err
	}
	return int(math.Ceil(float64(pieces)*(1+figure("labels", "spare").Value) - 1e-9)), nil
}

// SlowFeed returns the grams of slow-release feed for the litres of mix, which then needs no
// other feed for as long as its label says.
func SlowFeed(litres odds.Amount) odds.Amount { return litres.Times(figure("slow feed", "rate").Value) }

// LiquidFeed returns the grams of a soluble feed that bring the litres of water to the usual
// strength for leafy plants. nitrogen is its share of nitrogen, 0 to 1, the first of the three
// numbers on the label. It fails for a share outside that range and for negative water.
func LiquidFeed(water, nitrogen float64) (odds.Amount, error) {
	if !(nitrogen > 0 && nitrogen <= 1) {
		return odds.Amount{}, fmt.Errorf("a feed can't contain %g%% nitrogen; give the first of the numbers on its label", 100*nitrogen)
	}
	if !(water >= 0) || math.IsInf(water, 0) {
		return odds.Amount{}, fmt.Errorf("%g L of water is not possible; give 0 or more", water)
	}
	f := figure("liquid feed", "nitrogen")
	perPPM := water / nitrogen / 1000 // a part in a million is a milligram in a litre
	return odds.Amount{Low: f.Low * perPPM, Middle: f.Value * perPPM, High: f.High * perPPM}, nil
}

// Water returns the litres of one watering of the filled containers.
func (n Need) Water() odds.Amount {
	c := n.Container
	held := float64(n.Count*c.Cells) * c.Volume.Value * c.Filled()
	f := figure("watering", "share")
	return odds.Amount{Low: f.Low * held, Middle: f.Value * held, High: f.High * held}
}

// Bench returns the bench area in m² of the containers standing pot to pot; NaN if unknown.
func (n Need) Bench() odds.Amount {
	count, b := float64(n.Count), n.Container.Bench
	return odds.Amount{Low: count * b.Low, Middle: count * b.Value, High: count * b.High}
}
