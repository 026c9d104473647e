package growth

import (
	"fmt"
	"math"

	"eyeup/odds"
	"eyeup/quantity"
)

// Sprouting is how a lot of tubers, corms or seeds comes up in the warmth. The rate is
// nothing at Base and below, rises in a line to WarmFrom, is level to WarmTo and falls
// in a line to nothing at Ceiling. Within a lot the sums of warmth are lognormal about
// Sum; a share Never does not come up at all.
type Sprouting struct {
	Base, WarmFrom, WarmTo, Ceiling quantity.Temperature

	Sum   float64        // °C·d above Base at which half of those that ever come are up; > 0
	Eyed  float64        // share of Sum at which eyes show, 0 to 1; 1 where the two are not told apart
	Sigma float64        // spread of the sums within a lot, standard deviation of their logarithm; > 0
	Never quantity.Share // share that never comes up, 0 to below 1
}

// Check reports the first figure that cannot be.
func (s Sprouting) Check() error {
	switch {
	case !s.Base.IsKnown() || !s.Base.Below(s.WarmFrom) || s.WarmFrom.Above(s.WarmTo) || !s.WarmTo.Below(s.Ceiling):
		return fmt.Errorf("sprouting needs base < warm from ≤ warm to < ceiling, not %.1f, %.1f, %.1f, %.1f °C; put the four in order",
			s.Base.Celsius(), s.WarmFrom.Celsius(), s.WarmTo.Celsius(), s.Ceiling.Celsius())
	case !(s.Sum > 0) || math.IsInf(s.Sum, 0):
		return fmt.Errorf("sprouting needs a sum of warmth above 0 °C·d, not %g", s.Sum)
	case !(s.Eyed > 0 && s.Eyed <= 1):
		return fmt.Errorf("eyes show at a share of the sum above 0 and up to 1, not %g", s.Eyed)
	case !(s.Sigma > 0) || math.IsInf(s.Sigma, 0):
		return fmt.Errorf("the spread within a lot must be above 0, not %g", s.Sigma)
	case !(s.Never >= 0 && s.Never < 1):
		return fmt.Errorf("the share that never comes up is 0 to below 1, not %g", float64(s.Never))
	}
	return nil
}

// Rate returns the warmth counted in a day at a steady temperature, in °C·d per day.
func (s Sprouting) Rate(celsius float64) float64 {
	base, from := s.Base.Celsius(), s.WarmFrom.Celsius()
	return (from - base) * Trapezoid(celsius, base, from, s.WarmTo.Celsius(), s.Ceiling.Celsius())
}

// ShareUp returns the share of all that is up when sum °C·d have been counted.
func (s Sprouting) ShareUp(sum float64) float64 {
	return (1 - float64(s.Never)) * Lognormal{s.Sum, s.Sigma}.Below(sum)
}

// ShareEyed returns the share of all that shows eyes when sum °C·d have been counted.
func (s Sprouting) ShareEyed(sum float64) float64 { return s.ShareUp(sum / s.Eyed) }

// SumFor returns the °C·d at which a share of all is up. It is false, and infinite, where
// so many never come up.
func (s Sprouting) SumFor(share float64) (float64, bool) {
	coming := 1 - float64(s.Never)
	if !(share < coming) {
		return math.Inf(1), false
	}
	return Lognormal{s.Sum, s.Sigma}.At(share / coming), true
}

// UpDays returns the days from nothing to up at a steady temperature. See UpDaysAt.
func (s Sprouting) UpDays(at quantity.Temperature) odds.Amount {
	return s.UpDaysAt(s.Rate(at.Celsius()))
}

// UpDaysAt returns the days from nothing to up where rate °C·d are counted each day, of
// those that ever come up: one in ten sooner than Low, one in ten later than High. They
// are infinite where nothing is counted.
func (s Sprouting) UpDaysAt(rate float64) odds.Amount {
	l := Lognormal{s.Sum, s.Sigma}
	return odds.Amount{Low: daysFor(l.At(0.1), rate), Middle: daysFor(s.Sum, rate), High: daysFor(l.At(0.9), rate)}
}

// EyedDays returns the days from nothing to eyes showing at a steady temperature.
func (s Sprouting) EyedDays(at quantity.Temperature) odds.Amount { return s.UpDays(at).Times(s.Eyed) }

func daysFor(sum, rate float64) float64 {
	if rate <= 0 {
		return math.Inf(1)
	}
	return sum / rate
}
