package frost

import (
	"math"

	"eyeup/civil"
	"eyeup/odds"
	"eyeup/quantity"
)

// Odds is in how many springs of the record a freeze came later than a day.
type Odds struct {
	Later    int            `json:"later"`    // springs with a freeze later than the day
	Springs  int            `json:"springs"`  // springs for which the record suffices
	Share    quantity.Share `json:"share"`    // Later of Springs; NaN when there are none
	Interval odds.Interval  `json:"interval"` // 80 % interval of the true share (Jeffreys)
}

// sure is the probability of the intervals given with odds and dates.
const sure = 0.8

// OddsAfter returns the odds that the last freeze of spring comes later than m, a day between
// midwinter and midsummer. A freeze on the morning of m itself is not counted: who plants on m
// does so after it. The further m is before midwinter, the less the result means.
func (f Freezes) OddsAfter(m civil.MonthDay) Odds {
	springs := f.springs()
	at := f.springPosition(m)
	o := Odds{Springs: len(springs)}
	for _, last := range springs {
		if last > at {
			o.Later++
		}
	}
	o.Share = quantity.Share(float64(o.Later) / float64(o.Springs))
	interval, err := odds.Jeffreys(o.Later, o.Springs, sure)
	if err != nil { // no springs: unknown
		interval = odds.Interval{From: 0, To: 1}
	}
	o.Interval = interval
	return o
}

// springPosition returns the position of m in the year before midsummer.
func (f Freezes) springPosition(m civil.MonthDay) float64 {
	split := midsummer(f.Southern, plainYear)
	d := m.In(split.Year())
	if !d.Before(split) {
		d = m.In(split.Year() - 1)
	}
	return float64(d.Sub(split))
}

// SafeFrom returns the first day of spring after which the odds of another freeze are at most
// risk: the planting-out day at that risk. It is the type-8 quantile of the last freezes,
// rounded to the later day, and so agrees with Spring().Late at a risk of one in ten. The zero
// day with true means that enough springs have no freeze at all. It returns false without
// valid springs, for a risk outside 0 to 1, or for one too small for the number of years (some
// 2 in 100 with thirty years).
func (f Freezes) SafeFrom(risk quantity.Share) (civil.MonthDay, bool) {
	springs := f.springs()
	n := float64(len(springs))
	least := (1 - 1.0/3) / (n + 1.0/3)
	if len(springs) == 0 || !(float64(risk) >= least-rounding) || risk > 1 {
		return civil.MonthDay{}, false
	}
	return f.monthDay(up(springs.At(1 - float64(risk)))), true
}

// Bounds is the interval of the true date at given odds, which is uncertain because the record
// has only so many years.
type Bounds struct {
	From civil.MonthDay `json:"from"`
	To   civil.MonthDay `json:"to"`
}

// BoundsInYear holds the 80 % intervals of the three dates of a civil.WhenInYear.
type BoundsInYear struct {
	Early  Bounds `json:"early"`
	Middle Bounds `json:"middle"`
	Late   Bounds `json:"late"`
}

// draws is the number of bootstrap samples.
const draws = 2000

// SpringBounds returns the uncertainty of Spring, by a bootstrap with a fixed seed. With fewer
// than two valid springs all bounds are zero.
func (f Freezes) SpringBounds() BoundsInYear { return f.bounds(f.springs(), "spring") }

// AutumnBounds returns the uncertainty of Autumn. See SpringBounds.
func (f Freezes) AutumnBounds() BoundsInYear { return f.bounds(f.autumns(), "autumn") }

func (f Freezes) bounds(s odds.Sample, name string) BoundsInYear {
	if len(s) < 2 {
		return BoundsInYear{}
	}
	at := func(p float64) Bounds {
		from, to, err := s.Bounds(p, sure, draws, odds.Stream(0, "frost/"+name))
		if err != nil { // can't happen: the sample and the shares are valid
			return Bounds{}
		}
		return Bounds{f.monthDay(math.Round(from)), f.monthDay(math.Round(to))}
	}
	return BoundsInYear{Early: at(0.1), Middle: at(0.5), Late: at(0.9)}
}
