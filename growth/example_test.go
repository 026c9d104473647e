package growth_test

import (
	"fmt"

	"eyeup/growth"
	"eyeup/quantity"
)

// Harrington 1962, as quoted in Brewster, Onions and Other Vegetable Alliums: half of a lot
// of onion seed germinates after 80 °C·d above 2.5 °C, 4 days at 22.5 °C, 16 at 7.5 °C.
func ExampleSprouting_UpDays() {
	c := quantity.Celsius
	onion := growth.Sprouting{Base: c(2.5), WarmFrom: c(25), WarmTo: c(30), Ceiling: c(37), Sum: 80, Eyed: 1, Sigma: 0.2}
	fmt.Println(onion.UpDays(c(22.5)).Middle, onion.UpDays(c(7.5)).Middle)
	// Output: 4 16
}
