package growth

import "math"

// Beta returns a beta curve of growth against temperature, all in °C: 0 at base and
// below, 1 at best, 0 at ceiling and above. It needs base < best < ceiling.
//
// The curve is rise·fall^q with rise = (T-base)/(best-base), fall = (ceiling-T)/(ceiling-best)
// and q = (ceiling-best)/(best-base): nearly a line above the base, bending at the best.
// The curve of Yan & Hunt 1999 (Annals of Botany 84:607, eq. 1) has the same three
// temperatures and is this one raised to the power 1/q; it starts far more slowly from the
// base, which the flowering of dahlias in cool summers contradicts.
func Beta(celsius, base, best, ceiling float64) float64 {
	if celsius <= base || celsius >= ceiling {
		return 0
	}
	rise := (celsius - base) / (best - base)
	fall := (ceiling - celsius) / (ceiling - best)
	return min(1, rise*math.Pow(fall, (ceiling-best)/(best-base)))
}

// Trapezoid returns a response that rises linearly from base to from, is 1 up to to, and falls
// linearly to ceiling, all in °C. It needs base < from ≤ to < ceiling.
func Trapezoid(celsius, base, from, to, ceiling float64) float64 {
	return max(0, min(1, (celsius-base)/(from-base), (ceiling-celsius)/(ceiling-to)))
}
