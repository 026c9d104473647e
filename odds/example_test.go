package odds_test

import (
	"fmt"

	"eyeup/odds"
)

// Fifty plants are wanted of seed of which 85 in 100 come up, nineteen times in twenty.
// R's pbinom agrees: 64 seeds reach it with odds of 0.9509.
func ExampleLeast() {
	seeds, _ := odds.Least(50, 0.85, 0.95)
	fmt.Printf("%d seeds, %.4f\n", seeds, odds.Of(seeds, 0.85).AtLeast(50))
	// Output: 64 seeds, 0.9509
}

// Of twenty looked at, none was soft: one may be sure, nineteen times in twenty, that fewer
// than 14 in 100 are. R's qbeta gives 0.13910834.
func ExampleUpperBound() {
	share, _ := odds.UpperBound(0, 20, 0.95)
	fmt.Printf("%.4f\n", share)
	// Output: 0.1391
}
