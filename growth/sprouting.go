package growth

import (
	"fmt"
	"math"

	"eyeup/odds"
	"eyeup/quantity"
)

// Sprouting is how a lot of tubers, corms or seeds emerges in the warmth. The rate is 0 at
// Base and below, rises linearly to WarmFrom, is constant to WarmTo and falls linearly to 0 at
// Ceiling. Within a lot the thermal times are lognormal about Sum; a share Never does not
// emerge at all.
type Sprouting struct {
	Base, WarmFrom, WarmTo, Ceiling quantity.Temperature

	Sum   float64        // °C·d above Base at which half of those that ever emerge are up; > 0
	Eyed  float64        // share of Sum at which eyes show, 0 to 1; 1 if not distinguished from up
	Sigma float64        // spread within a lot: standard deviation of the logarithm of the sum; > 0
	Never quantity.Share // share that never emerges, 0 to below 1
}

// Check returns an error for the first impossible figure.
func (s Sprouting) Check() error {
	switch {
	case !s.Base.IsKnown() || !s.Base.Below(s.WarmFrom) || s.WarmFrom.Above(s.WarmTo) || !s.WarmTo.Below(s.Ceiling):
		return fmt.Errorf("sprouting needs base < warm from ≤ warm to < ceiling, not %.1f, %.1f, %.1f, %.1f °C; put the four in order",
			s.Base.Celsius(), s.WarmFrom.Celsius(), s.WarmTo.Celsius(), s.Ceiling.Celsius())
	case !(s.Sum > 0) || math.IsInf(s.Sum, 0):
		return fmt.Errorf("sprouting needs a thermal time above 0 °C·d, not %g", s.Sum)
	case !(s.Eyed > 0 && s.Eyed <= 1):
		return fmt.Errorf("eyes show at a share of the sum above 0 and up to 1, not %g", s.Eyed)
	case !(s.Sigma > 0) || math.IsInf(s.Sigma, 0):
		return fmt.Errorf("the spread within a lot must be above 0, not %g", s.Sigma)
	case !(s.Never >= 0 && s.Never < 1):
		return fmt.Errorf("the share that never comes up is 0 to below 1, not %g", float64(s.Never))
	}
	return nil
}

// Rate returns the thermal time of one day at a constant temperature, in °C·d.
func (s Sprouting) Rate(celsius float64) float64 {
	base, from := s.Base.Celsius(), s.WarmFrom.Celsius()
	return (from - base) * Trapezoid(celsius, base, from, s.WarmTo.Celsius(), s.Ceiling.Celsius())
}

// ShareUp returns the share of the lot that is up after sum °C·d.
func (s Sprouting) ShareUp(sum float64) float64 {
	return (1 - float64(s.Never)) * Lognormal{s.Sum, s.Sigma}.Below(sum)
}

// ShareEyed returns the share of the lot that shows eyes after sum °C·d.
func (s Sprouting) ShareEyed(sum float64) float64 { return s.ShareUp(sum / s.Eyed) }

// SumFor returns the °C·d at which a share of the lot is up; infinite and false if that many
// never emerge.
func (s Sprouting) SumFor(share float64) (float64, bool) {
	coming := 1 - float64(s.Never)
	if !(share < coming) {
		return math.Inf(1), false
	}
	return Lognormal{s.Sum, s.Sigma}.At(share / coming), true
}

// UpDays returns the days until plants are up at a constant temperature. See UpDaysAt.
func (s Sprouting) UpDays(at quantity.Temperature) odds.Amount {
	return s.UpDaysAt(s.Rate(at.Celsius()))
}

// UpDaysAt returns the days until plants are up at rate °C·d per day, for those that ever
// emerge: one in ten before Low, one in ten after High; infinite at a rate of 0.
func (s Sprouting) UpDaysAt(rate float64) odds.Amount {
	l := Lognormal{s.Sum, s.Sigma}
	return odds.Amount{Low: daysFor(l.At(0.1), rate), Middle: daysFor(s.Sum, rate), High: daysFor(l.At(0.9), rate)}
}

// EyedDays returns the days until eyes show at a constant temperature.
func (s Sprouting) EyedDays(at quantity.Temperature) odds.Amount { return s.UpDays(at).Times(s.Eyed) }

func daysFor(sum, rate float64) float64 {
	if rate <= 0 {
		return math.Inf(1)
	}
	return sum / rate
}
