package place

import (
	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/sun"
	"eyeup/weather"
)

// Peak returns the highest heat in any hour of the span that a heater of unlimited power uses
// to hold the setting. A heater of that power holds it in this weather.
func (c Covered) Peak(h *weather.Hours, site sun.Site, s Setting, within civil.Span) quantity.Power {
	if c.Heater == nil {
		c.Heater = &Heater{}
	}
	boundless := *c.Heater
	boundless.Power = boundlessPower
	c.Heater = &boundless
	var most float64
	from := 24 * int(within.From.Sub(h.Span.From))
	to := 24 * (int(within.To.Sub(h.Span.From)) + 1)
	c.Watch(h, site, s, func(hour Hour) {
		if hour.Index >= from && hour.Index < to {
			most = max(most, hour.Given)
		}
	})
	return quantity.Power(most)
}

// boundlessPower is more than any house needs.
const boundlessPower = 1e12 * quantity.Watt

// AtMost returns the setting with every level limited to the given one: a heater that only
// keeps frost out.
func (s Setting) AtMost(level quantity.Temperature) Setting {
	steps := make([]Step, len(s.Steps))
	for i, step := range s.Steps {
		if !step.Off && step.Level.Above(level) {
			step.Level = level
		}
		steps[i] = step
	}
	return Setting{Steps: steps}
}
