package growth

import (
	"fmt"

	"eyeup/quantity"
)

// Growing is the response of a leafy plant's growth to temperature: 0 at Base and below, 1 at
// Best, 0 at Ceiling and above.
type Growing struct{ Base, Best, Ceiling quantity.Temperature }

// Check reports temperatures that are unknown or out of order.
func (g Growing) Check() error {
	if !g.Base.Below(g.Best) || !g.Best.Below(g.Ceiling) {
		return fmt.Errorf("growing needs base < best < ceiling, not %.1f, %.1f, %.1f °C; put the three in order",
			g.Base.Celsius(), g.Best.Celsius(), g.Ceiling.Celsius())
	}
	return nil
}

// Rate returns the growth rate at a constant temperature as a share of the best, 0 to 1. It is
// also the number of days at best temperature that one day counts for.
func (g Growing) Rate(celsius float64) float64 {
	return Beta(celsius, g.Base.Celsius(), g.Best.Celsius(), g.Ceiling.Celsius())
}
