package odds

import (
	"errors"
	"fmt"
)

// ErrNever is returned when no number, up to a million, makes as sure as was asked.
var ErrNever = errors.New("no number up to a million makes that sure")

const most = 1_000_000

// Least returns the smallest n with which at least want turn out well with the given
// sureness, when each has the odds share. It fails when the figures are no odds and
// with ErrNever.
func Least(want int, share, sure float64) (int, error) {
	if !(share > 0 && share <= 1) {
		return 0, fmt.Errorf("odds of %g can't be reckoned with; give more than 0%% and at most 100%%", share)
	}
	return LeastBy(want, sure, func(n int) float64 { return Of(n, share).AtLeast(want) })
}

// LeastBelieved is Least when the odds are only believed, and so the honest one after a
// test of a few: it asks for more, as a test by chance may have come out too well.
func LeastBelieved(want int, belief Beta, sure float64) (int, error) {
	if !belief.valid() {
		return 0, fmt.Errorf("a belief of %g for and %g against can't be reckoned with; give numbers above 0", belief.A, belief.B)
	}
	return LeastBy(want, sure, func(n int) float64 { return Among(n, belief).AtLeast(want) })
}

// LeastBy is Least by any other reckoning: reach returns the odds that among n at least
// want turn out well, and must not fall as n grows.
func LeastBy(want int, sure float64, reach func(n int) float64) (int, error) {
	if want < 0 {
		return 0, fmt.Errorf("%d can't be wanted; give 0 or more", want)
	}
	if err := checkSure(sure); err != nil {
		return 0, err
	}
	enough := func(n int) bool { return reach(n) >= sure }
	low, high := want-1, max(want, 1)
	for !enough(high) {
		if high >= most {
			return 0, fmt.Errorf("%d with a sureness of %g%%: %w", want, 100*sure, ErrNever)
		}
		low, high = high, min(2*high, most)
	}
	if want == 0 {
		return 0, nil
	}
	for high-low > 1 {
		middle := (low + high) / 2
		if enough(middle) {
			high = middle
		} else {
			low = middle
		}
	}
	return high, nil
}
