package supply

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"eyeup/culture"
	"eyeup/odds"
	"eyeup/quantity"
)

// Packet is seed that has lain. What is left at its zero value is not known, and a range
// stands for it.
type Packet struct {
	Kind     string
	Years    float64               // since it was harvested or tested
	Began    quantity.Share        // germination then
	Moisture float64               // per cent of the fresh weight
	Kept     *quantity.Temperature // where it lay; nil is not known
}

// Aged returns the germination of an old packet by the equation of Ellis & Roberts. It
// fails for kinds of which no constants are published; those want a test.
func Aged(p Packet) (Germination, error) {
	if !(p.Years >= 0 && p.Years <= 50) {
		return Germination{}, fmt.Errorf("a packet %g years old can't be reckoned; give 0 to 50 years", p.Years)
	}
	sets := AgeingOf(p.Kind)
	if len(sets) == 0 {
		return Germination{}, fmt.Errorf("how fast %s seed ages is not published%s; test ten or twenty seeds on damp paper and say how many came up",
			p.Kind, keepsWords(p.Kind))
	}
	parts := []culture.Figure{began(p), moisture(p), kept(p)}
	if err := checkStore(sets[0], parts); err != nil {
		return Germination{}, err
	}
	share := bandOver(sets, parts, p.Years*365.25)
	return Germination{
		Share: share, Basis: fmt.Sprintf("%g years in store (%s)", p.Years, sources(sets)),
		reach: func(n, want int) float64 { return threePoint(share, n, want) },
	}, nil
}

// bandOver returns the germination after so many days, by every set of constants: the
// spread is reckoned in probits, in which ageing is a straight line, so that no share
// leaves 0 to 1.
func bandOver(sets []Ageing, parts []culture.Figure, days float64) odds.Amount {
	var bands []odds.Amount
	for _, a := range sets {
		bands = append(bands, odds.Combined(amounts(parts...), func(x []float64) float64 {
			s, _ := a.Spread(x[1], quantity.Celsius(x[2])) // checked before
			return probit(x[0]) - days/s
		}))
	}
	low := slices.MinFunc(bands, func(a, b odds.Amount) int { return cmp.Compare(a.Low, b.Low) }).Low
	high := slices.MaxFunc(bands, func(a, b odds.Amount) int { return cmp.Compare(a.High, b.High) }).High
	middle := 0.0
	for _, b := range bands {
		middle += b.Middle / float64(len(bands))
	}
	return odds.Amount{Low: chance(low), Middle: chance(middle), High: chance(high)}
}

// checkStore fails where the store lies outside what the equation was made for.
func checkStore(a Ageing, parts []culture.Figure) error {
	for _, m := range []float64{parts[1].Low, parts[1].High} {
		for _, t := range []float64{parts[2].Low, parts[2].High} {
			if _, err := a.Spread(m, quantity.Celsius(t)); err != nil {
				return err
			}
		}
	}
	if !(parts[0].Low > 0 && parts[0].High < 1) {
		return fmt.Errorf("seed that began at %g%% can't be aged; give more than 0%% and less than 100%%", 100*parts[0].Value)
	}
	return nil
}

func exactly(x float64) culture.Figure { return culture.Figure{Low: x, Value: x, High: x} }

// began returns the germination of the fresh seed: as told, or between the least at which
// it may be sold and that of the best.
func began(p Packet) culture.Figure {
	if p.Began != 0 {
		return exactly(float64(p.Began))
	}
	f := figure("fresh seed", "germination")
	if least := figure(p.Kind, "standard"); known(least) && least.Value < f.Low {
		f.Low = least.Value
		f.Value = (f.Low + f.High) / 2
	}
	return f
}

func moisture(p Packet) culture.Figure {
	if p.Moisture != 0 {
		return exactly(p.Moisture)
	}
	return figure("packet", "moisture")
}

func kept(p Packet) culture.Figure {
	if p.Kept != nil {
		return exactly(p.Kept.Celsius())
	}
	return figure("packet", "temperature")
}

// Keeps returns for how many years seed of a kind is said to keep under good storage;
// not-a-number where nothing is said.
func Keeps(kind string) culture.Figure { return figure(kind, "keeps") }

// Standard returns the least germination at which seed of a kind may be sold in the
// United States; not-a-number where there is none in the table.
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
