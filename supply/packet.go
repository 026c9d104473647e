package supply

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"eyeup/culture"
	"eyeup/odds"
	"eyeup/quantity"
)

// Packet is seed stored in paper. A field with its zero value is unknown, and a usual range is
// used.
type Packet struct {
	Kind     string
	Years    float64               // age since harvest or test
	Began    quantity.Share        // germination at that time
	Kept     *quantity.Temperature // storage temperature; nil: unknown
	Humidity quantity.Share        // storage humidity of the air
	Moisture float64               // of the seed, if measured, percent of the fresh weight
}

// Aged returns the germination of an old packet by the equation of Ellis & Roberts. It fails
// for kinds without published constants, which need a test, and for storage outside the range
// of the equation.
func Aged(p Packet) (Germination, error) {
	if !(p.Years >= 0 && p.Years <= 50) {
		return Germination{}, fmt.Errorf("no figures for a packet %g years old; give 0 to 50 years", p.Years)
	}
	sets := AgeingOf(p.Kind)
	if len(sets) == 0 {
		return Germination{}, fmt.Errorf("how fast %s seed ages is not published%s; test ten or twenty seeds on damp paper and say how many came up",
			p.Kind, keepsWords(p.Kind))
	}
	if p.Began < 0 || p.Began >= 1 {
		return Germination{}, fmt.Errorf("seed with %g%% germination at the start can't be aged; give more than 0%% and less than 100%%", p.Began.Percent())
	}
	parts := []culture.Figure{began(p), orRange(p.Kept, "temperature"), orShare(p.Humidity, "humidity"), figure(p.Kind, "oil")}
	share, err := p.band(sets, parts)
	if err != nil {
		return Germination{}, err
	}
	return Germination{
		Share: share, Basis: fmt.Sprintf("%g years in store (%s)", p.Years, sources(sets)),
		reach: func(n, want int) float64 { return threePoint(share, n, want) },
	}, nil
}

// band returns the germination of a packet by every set of constants. The spread is computed
// in probits, in which ageing is linear, so that shares stay within 0 to 1.
func (p Packet) band(sets []Ageing, parts []culture.Figure) (odds.Amount, error) {
	var failed error
	low, middle, high := math.Inf(1), 0.0, math.Inf(-1)
	for _, a := range sets {
		band := odds.Combined(amounts(parts...), func(x []float64) float64 {
			v, err := p.aged(a, x)
			failed = cmp.Or(failed, err)
			return v
		})
		low, high = min(low, band.Low), max(high, band.High)
		middle += band.Middle / float64(len(sets))
	}
	return odds.Amount{Low: chance(low), Middle: chance(middle), High: chance(high)}, failed
}

// aged returns the probit of the remaining viability for one set of values: initial
// germination, temperature, humidity, oil.
func (p Packet) aged(a Ageing, x []float64) (float64, error) {
	t := quantity.Celsius(x[1])
	moisture := p.Moisture
	if moisture == 0 {
		var err error
		if moisture, err = Moisture(quantity.Share(x[2]), t, x[3]); err != nil {
			return math.NaN(), err
		}
	}
	spread, err := a.Spread(moisture, t)
	if err != nil {
		return math.NaN(), err
	}
	return probit(x[0]) - p.Years*365.25/spread, nil
}

// began returns the germination of the fresh seed.
func began(p Packet) culture.Figure {
	if p.Began != 0 {
		return exactly(float64(p.Began))
	}
	return figure("fresh seed", "germination")
}

func orRange(t *quantity.Temperature, key string) culture.Figure {
	if t != nil {
		return exactly(t.Celsius())
	}
	return figure("packet", key)
}

func orShare(s quantity.Share, key string) culture.Figure {
	if s != 0 {
		return exactly(float64(s))
	}
	return figure("packet", key)
}

// Keeps returns the years that seed of a kind is said to keep under good storage; NaN if
// unknown.
func Keeps(kind string) culture.Figure { return figure(kind, "keeps") }

// Standard returns the lowest germination at which seed of a kind may be sold in the United
// States; NaN if the table has none.
func Standard(kind string) culture.Figure { return figure(kind, "standard") }

func keepsWords(kind string) string {
	if f := Keeps(kind); known(f) {
		return fmt.Sprintf(" (it is said to keep about %g years)", f.Value)
	}
	return ""
}

func sources(sets []Ageing) string {
	names := make([]string, len(sets))
	for i, a := range sets {
		names[i] = a.Source
	}
	return strings.Join(names, "; ")
}
