package supply

import (
	"fmt"

	"eyeup/odds"
	"eyeup/quantity"
)

// Germination is the estimated germination of a batch of seed.
type Germination struct {
	Share odds.Amount // share that will come up
	Basis string      // its source, in words
	reach func(n, want int) float64
}

// Told returns the germination given on a packet, without uncertainty. It fails for a share of
// 0 or above 1.
func Told(share quantity.Share) (Germination, error) {
	if !(share > 0 && share <= 1) {
		return Germination{}, fmt.Errorf("a germination of %g%% is not possible; give more than 0%% and at most 100%%", share.Percent())
	}
	p := float64(share)
	return Germination{
		Share: odds.Exactly(p), Basis: "as given, taken as exact",
		reach: func(n, want int) float64 { return odds.Of(n, p).AtLeast(want) },
	}, nil
}

// Tested returns the germination of seed from a test in which good of of seeds came up. A
// small test leaves much uncertainty, so more must be sown. It fails unless 0 <= good <= of
// and of >= 1.
func Tested(good, of int) (Germination, error) {
	if of < 1 || good < 0 || good > of {
		return Germination{}, fmt.Errorf("%d of %d seeds is not a test; give how many came up of how many", good, of)
	}
	belief := odds.Unseen.After(good, of)
	return Germination{
		Share: belief.Amount(), Basis: fmt.Sprintf("%d of %d came up in a test", good, of),
		reach: func(n, want int) float64 { return odds.Among(n, belief).AtLeast(want) },
	}, nil
}

// Sowing is how many seeds to sow.
type Sowing struct {
	Want        int            // plants
	Sure        quantity.Share // probability asked for
	Germination Germination
	Seeds       int
	Reached     quantity.Share // probability of at least the plants wanted
}

// mostPlants is the largest number accepted: more than a garden raises from one packet.
const mostPlants = 100_000

// Sow returns the fewest seeds from which the wanted number of plants come up with the given
// probability (between 0 and 1, exclusive). It fails with odds.ErrNever for seed that may be
// nearly dead.
func Sow(want int, g Germination, sure quantity.Share) (Sowing, error) {
	if g.reach == nil {
		return Sowing{}, fmt.Errorf("the seed's germination is unknown; give its germination, a test, or its age")
	}
	if want > mostPlants {
		return Sowing{}, fmt.Errorf("%d plants are too many to sow for; give at most %d", want, mostPlants)
	}
	n, err := odds.LeastBy(want, float64(sure), func(n int) float64 { return g.reach(n, want) })
	if err != nil {
		return Sowing{}, err
	}
	return Sowing{Want: want, Sure: sure, Germination: g, Seeds: n, Reached: quantity.Share(g.reach(n, want))}, nil
}

// threePoint returns the probability of want among n when the share is low, median or high
// with weights of 0.3, 0.4 and 0.3: Swanson's rule for the 10 %, 50 % and 90 % quantiles
// (Hurst, Brown & Swanson 2000, AAPG Bulletin 84:1883).
func threePoint(share odds.Amount, n, want int) float64 {
	return 0.3*odds.Of(n, share.Low).AtLeast(want) +
		0.4*odds.Of(n, share.Middle).AtLeast(want) +
		0.3*odds.Of(n, share.High).AtLeast(want)
}
