package supply

import (
	"fmt"

	"eyeup/odds"
	"eyeup/quantity"
)

// Germination is what is known of a batch of seed.
type Germination struct {
	Share odds.Amount // share that will come up
	Basis string      // where that comes from, in words
	reach func(n, want int) float64
}

// Told returns the germination that a packet tells, taken at its word. It fails for a
// share of nothing or above the whole.
func Told(share quantity.Share) (Germination, error) {
	if !(share > 0 && share <= 1) {
		return Germination{}, fmt.Errorf("a germination of %g%% can't be sown by; give more than 0%% and at most 100%%", share.Percent())
	}
	p := float64(share)
	return Germination{
		Share: odds.Exactly(p), Basis: "as told, taken at its word",
		reach: func(n, want int) float64 { return odds.Of(n, p).AtLeast(want) },
	}, nil
}

// Tested returns the germination of seed of which good came up in a test of so many: a
// test of a few leaves much open, and more must be sown for the same sureness. It fails
// unless 0 <= good <= of and of >= 1.
func Tested(good, of int) (Germination, error) {
	if of < 1 || good < 0 || good > of {
		return Germination{}, fmt.Errorf("%d of %d seeds is no test; give how many came up of how many", good, of)
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
	Sure        quantity.Share // as asked
	Germination Germination
	Seeds       int
	Reached     quantity.Share // the odds of as many plants as wanted, or more
}

// mostPlants is more than a garden raises of one packet, and few enough to be sure of.
const mostPlants = 100_000

// Sow returns the fewest seeds of which as many come up as are wanted, with the given
// sureness (0 to 1, both ends left out). It fails, with odds.ErrNever, for seed that may
// be all but dead.
func Sow(want int, g Germination, sure quantity.Share) (Sowing, error) {
	if g.reach == nil {
		return Sowing{}, fmt.Errorf("nothing is known of the seed; say its germination, a test of it, or its age")
	}
	if want > mostPlants {
		return Sowing{}, fmt.Errorf("%d plants can't be sown for; give at most %d", want, mostPlants)
	}
	n, err := odds.LeastBy(want, float64(sure), func(n int) float64 { return g.reach(n, want) })
	if err != nil {
		return Sowing{}, err
	}
	return Sowing{Want: want, Sure: sure, Germination: g, Seeds: n, Reached: quantity.Share(g.reach(n, want))}, nil
}

// threePoint returns the odds of want among n when the share is low, middle or high with
// weights of 0.3, 0.4 and 0.3: the rule of three points for figures at one in ten, even
// odds and nine in ten (Swanson's; Hurst, Brown & Swanson 2000, AAPG Bulletin 84:1883).
func threePoint(share odds.Amount, n, want int) float64 {
	return 0.3*odds.Of(n, share.Low).AtLeast(want) +
		0.4*odds.Of(n, share.Middle).AtLeast(want) +
		0.3*odds.Of(n, share.High).AtLeast(want)
}
