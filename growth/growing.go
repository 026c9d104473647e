package growth

import (
	"fmt"

	"eyeup/quantity"
)

// Growing is how the growth of a leafy plant depends on temperature: nothing at Base
// and below, 1 at Best, nothing at Ceiling and above.
type Growing struct{ Base, Best, Ceiling quantity.Temperature }

// Check reports temperatures that are unknown or out of order.
func (g Growing) Check() error {
	if !g.Base.Below(g.Best) || !g.Best.Below(g.Ceiling) {
		return fmt.Errorf("growing needs base < best < ceiling, not %.1f, %.1f, %.1f °C; put the three in order",
			g.Base.Celsius(), g.Best.Celsius(), g.Ceiling.Celsius())
	}
	return nil
}

// Rate returns the share of the best growth at a steady temperature, 0 to 1, which is
// also the days at best temperature that a day counts for.
func (g Growing) Rate(celsius float64) float64 {
	return Beta(celsius, g.Base.Celsius(), g.Best.Celsius(), g.Ceiling.Celsius())
}
