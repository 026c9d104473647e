package desk

import (
	"math"
	"time"

	"eyeup/civil"
	"eyeup/internal/garden"
	"eyeup/internal/reckon"
	"eyeup/odds"
	"eyeup/weather"
)

// frostAnswer tells when it freezes in the garden's patch at 0 °C.
func frostAnswer(g *garden.Garden, after civil.MonthDay) (*reckon.FrostAnswer, error) {
	a := &reckon.FrostAnswer{Station: garden.StationOf(g.Record), Hemisphere: "north", Note: reckon.FrostNote}
	if g.Site.IsSouthern() {
		a.Hemisphere = "south"
	}
	f := g.Freezes()
	if err := a.Tell(f); err != nil {
		return nil, err
	}
	if !after.IsZero() {
		a.After = &reckon.FreezeAfter{Day: after, Odds: f.OddsAfter(after)}
	}
	return a, nil
}

// FrostCurve is how the odds of one more freeze fall through the spring of planting out.
type FrostCurve struct {
	Days    []reckon.FreezeAfter // every day, from the first spring freeze of the record to the last
	Springs int
}

// FrostCurve returns the odds of one more freeze for every day of spring on which they
// are neither certain nor nothing, and a week beyond both. It is empty where the record
// tells of too few springs.
func (d *Desk) FrostCurve() FrostCurve {
	g := d.Site()
	f := g.Freezes()
	var c FrostCurve
	c.Springs, _ = f.Valid()
	if c.Springs == 0 {
		return c
	}
	from, to := spring(g)
	first, last := 0, 0
	for day := from; !day.After(to); day = day.AddDays(1) {
		o := f.OddsAfter(day.MonthDay())
		if o.Share == 1 {
			first = len(c.Days)
		}
		if o.Share > 0 {
			last = len(c.Days)
		}
		c.Days = append(c.Days, reckon.FreezeAfter{Day: day.MonthDay(), Odds: o})
	}
	c.Days = c.Days[max(0, first-7):min(len(c.Days), last+8)]
	return c
}

// spring returns the days between midwinter and midsummer of the plant year.
func spring(g *garden.Garden) (from, to civil.Date) {
	year := g.Season.PlantYear
	if g.Site.IsSouthern() {
		return civil.MustOn(year, 7, 25), civil.MustOn(year+1, 1, 23)
	}
	return civil.MustOn(year, 1, 25), civil.MustOn(year, 7, 23)
}

// Month is one month of the year as the record has it.
type Month struct {
	Name      string
	Low, High odds.Amount // °C, the month's mean low and high over the years
	Coldest   float64     // °C, of all years
	Frosts    float64     // mean number of days at or below 0 °C
	Years     int         // of the record that have days of this month
}

// TypicalYear returns the months of the record's years as they are at the patch, January
// first. Days without a low or a high are left out of the means.
func (d *Desk) TypicalYear() []Month {
	g := d.Site()
	from, to := g.Years()
	var tallies [12]monthTally
	for i, day := range g.Record.Days {
		date := g.Record.From.AddDays(civil.Days(i))
		if year := date.Year(); year >= from && year <= to && day.HasExtremes() {
			tallies[date.Month()-1].add(year, day)
		}
	}
	all := make([]Month, 12)
	for i := range tallies {
		all[i] = tallies[i].month(time.Month(i + 1))
	}
	return all
}

// monthTally adds up one month of the year, over the years.
type monthTally struct {
	low, high, days, frosts map[int]float64 // by year
	coldest                 float64
}

func (t *monthTally) add(year int, day weather.Day) {
	if t.days == nil {
		*t = monthTally{map[int]float64{}, map[int]float64{}, map[int]float64{}, map[int]float64{}, math.Inf(1)}
	}
	low := day.Low.Celsius()
	t.low[year] += low
	t.high[year] += day.High.Celsius()
	t.days[year]++
	t.coldest = min(t.coldest, low)
	if low <= 0 {
		t.frosts[year]++
	}
}

func (t *monthTally) month(m time.Month) Month {
	var lows, highs []float64
	frosts := 0.0
	for year, n := range t.days {
		lows, highs = append(lows, t.low[year]/n), append(highs, t.high[year]/n)
		frosts += t.frosts[year]
	}
	years := float64(len(t.days))
	return Month{m.String(), odds.AmountOf(lows), odds.AmountOf(highs), t.coldest, frosts / years, len(t.days)}
}

// SafeDay returns the first day after which the odds of one more freeze are no more than
// the garden accepts, in the spring of planting out. Where the record can't tell, or no
// freeze comes, it is the first day of that spring.
func (d *Desk) SafeDay() civil.Date {
	g := d.Site()
	from, _ := spring(g)
	day, known := g.Freezes().SafeFrom(g.Season.FrostRisk)
	if !known || day.IsZero() {
		return from
	}
	on := day.In(from.Year())
	if on.Before(from) {
		on = day.In(from.Year() + 1)
	}
	return on
}
