package frost

import (
	"math"

	"eyeup/civil"
	"eyeup/odds"
	"eyeup/quantity"
)

// Odds says in how many springs of the record a freeze came later than some day.
type Odds struct {
	Later    int            `json:"later"`    // springs with a freeze later than the day
	Springs  int            `json:"springs"`  // springs the record can tell about
	Share    quantity.Share `json:"share"`    // Later of Springs; NaN when there are none
	Interval odds.Interval  `json:"interval"` // where the true share lies, four times in five (Jeffreys)
}

// sure is how often the bounds given with odds and dates hold the truth.
const sure = 0.8

// OddsAfter returns the odds that the last freeze of spring comes later than m, a day between
// midwinter and midsummer. A freeze on the morning of m itself is not counted: who plants
// on m does so after it. The longer before midwinter m lies, the less it means.
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
	if err != nil { // no springs: nothing is known
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

// SafeFrom returns the first day of spring after which the odds of one more freeze are
// no more than risk: the day to plant out on for who accepts that risk. It is the type-8
// quantile of the last freezes, rounded to the later day, and so agrees with
// Spring().Late at a risk of one in ten. No day, and true, says that so many springs have
// no freeze at all. It returns false when the record cannot tell: without valid springs,
// for a risk outside 0 to 1, or one smaller than its years can bear out (some 2 in 100
// with thirty years).
func (f Freezes) SafeFrom(risk quantity.Share) (civil.MonthDay, bool) {
	springs := f.springs()
	n := float64(len(springs))
	least := (1 - 1.0/3) / (n + 1.0/3)
	if len(springs) == 0 || !(float64(risk) >= least-rounding) || risk > 1 {
		return civil.MonthDay{}, false
	}
	return f.monthDay(up(springs.At(1 - float64(risk)))), true
}

// Bounds says between which days a date of one odds may truly lie, since the record holds
// only so many years.
type Bounds struct {
	From civil.MonthDay `json:"from"`
	To   civil.MonthDay `json:"to"`
}

// BoundsInYear holds the bounds of the three dates of a civil.WhenInYear, which hold the truth four times in five.
type BoundsInYear struct {
	Early  Bounds `json:"early"`
	Middle Bounds `json:"middle"`
	Late   Bounds `json:"late"`
}

// draws is how many samples the bounds are judged by.
const draws = 2000

// SpringBounds returns how sure Spring is, by a bootstrap that gives the same answer each
// time. With fewer than two valid springs all bounds are no day.
func (f Freezes) SpringBounds() BoundsInYear { return f.bounds(f.springs(), "spring") }

// AutumnBounds returns how sure Autumn is. See SpringBounds.
func (f Freezes) AutumnBounds() BoundsInYear { return f.bounds(f.autumns(), "autumn") }

func (f Freezes) bounds(s odds.Sample, name string) BoundsInYear {
	if len(s) < 2 {
		return BoundsInYear{}
	}
	at := func(p float64) Bounds {
		from, to, err := s.Bounds(p, sure, draws, odds.Stream(0, "frost/"+name))
		if err != nil { // cannot be: the sample and the shares are as Bounds wants them
			return Bounds{}
		}
		return Bounds{f.monthDay(math.Round(from)), f.monthDay(math.Round(to))}
	}
	return BoundsInYear{Early: at(0.1), Middle: at(0.5), Late: at(0.9)}
}
