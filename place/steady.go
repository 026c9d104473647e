package place

import (
	"encoding/binary"
	"fmt"
	"hash/fnv"
	"time"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/sun"
	"eyeup/weather"
)

// Steady is a cellar, a store or a room in a house: its temperature follows the months or a
// logger's record, not the weather. A level in the setting is held as a minimum.
type Steady struct {
	// Temperature is each month's mean, January first, interpolated linearly between the
	// middles of the months.
	Temperature [12]quantity.Temperature
	Humidity    [12]quantity.Share
	Daylight    quantity.Share // share of the outside light on the shelf; 0: dark
	Lamps       *Lamps         // nil: none
	Logged      *Series        // nil: only the months

	// HeatPerKelvin is the heat that keeping the room warm costs per kelvin above the outside.
	// 0: it is warm anyway.
	HeatPerKelvin quantity.Conductance
}

// Series is a logger's hourly record.
type Series struct {
	From     civil.Date // first day, from midnight
	Celsius  []float64  // °C; NaN where there is no record
	Humidity []float64  // share, hourly; NaN where there is no record
}

// GoString identifies a series by its days and contents. With its address instead, the same
// record read twice would look like two.
func (s *Series) GoString() string {
	if s == nil {
		return "nothing logged"
	}
	sum := fnv.New64a()
	for _, values := range [][]float64{s.Celsius, s.Humidity} {
		for _, v := range values {
			_ = binary.Write(sum, binary.LittleEndian, v) // writing to a hash can't fail
		}
	}
	return fmt.Sprintf("%d hours from %s, %x", len(s.Celsius), s.From, sum.Sum64())
}

// mostOfMonth is the number of days of a month that a logger must cover for its mean to be
// used. Assumption.
const mostOfMonth = 20

// Months returns the temperature and humidity of each month, January first: the logger's mean
// if it covered at least twenty days of the month, in any years, else the given monthly
// figures.
func (p Steady) Months() (temperature [12]quantity.Temperature, humidity [12]quantity.Share) {
	temperature, humidity = p.Temperature, p.Humidity
	if p.Logged == nil {
		return temperature, humidity
	}
	for m := range 12 {
		if mean, ok := p.Logged.monthly(p.Logged.Celsius, m); ok {
			temperature[m] = quantity.Celsius(mean)
		}
		if mean, ok := p.Logged.monthly(p.Logged.Humidity, m); ok {
			humidity[m] = quantity.Share(mean)
		}
	}
	return temperature, humidity
}

// monthly returns the mean of hourly values in a month; 0 is January.
func (s *Series) monthly(hourly []float64, month int) (mean float64, ok bool) {
	sum, hours := 0.0, 0
	for day := range len(hourly) / 24 {
		if int(s.From.AddDays(civil.Days(day)).Month())-1 != month {
			continue
		}
		for _, v := range hourly[24*day : 24*day+24] {
			if v == v {
				sum += v
				hours++
			}
		}
	}
	return sum / float64(hours), hours >= 24*mostOfMonth
}

// Run simulates the place through the hours of h. See Place and Course. The heat asked for is
// always given: a room's heating has no limit here.
func (p Steady) Run(h *weather.Hours, site sun.Site, s Setting) *Course {
	c := newCourse(h.Span)
	fillLight(c, h, site, float64(p.Daylight), p.Lamps)
	levels := s.daily(h.Span)
	for day := range c.Light {
		date := h.Span.From.AddDays(civil.Days(day))
		monthly := p.at(date).Celsius()
		logged, ok := p.Logged.on(date)
		if p.Logged != nil && !ok {
			c.Unlogged++
		}
		var heat float64
		for clock := range 24 {
			i, air := 24*day+clock, monthly
			if ok {
				air = logged[clock]
			}
			air = max(air, levels[day])
			heat += float64(p.HeatPerKelvin) * max(air-h.Air[i], 0)
			c.Air[i] = air
			c.count(day, air, cold)
		}
		c.AskedKWh[day] = heat / 1000
		c.GivenKWh[day] = heat / 1000
	}
	p.settle(c)
	return c
}

// settle computes the roots, which follow the air of the room with a pot's lag.
func (p Steady) settle(c *Course) {
	if len(c.Air) == 0 {
		return
	}
	roots := newPot(UsualBody().PotHours, 0, c.Air[0])
	for i, air := range c.Air {
		c.Root[i] = roots.follow(air, 0)
	}
}

// at returns the temperature of a day from the monthly figures.
func (p Steady) at(d civil.Date) quantity.Temperature {
	this, share := betweenMonths(d)
	next := (this + 1) % 12
	return p.Temperature[this].Between(p.Temperature[next], share)
}

// betweenMonths returns the month (0 is January) whose middle was last passed on d, and the
// share of the way to the middle of the next month.
func betweenMonths(d civil.Date) (month int, share float64) {
	middle := func(y int, m time.Month) civil.Date { return civil.MustOn(y, m, 15) }
	y, m := d.Year(), d.Month()
	from := middle(y, m)
	if d.Before(from) {
		m--
		if m == 0 {
			y, m = y-1, time.December
		}
		from = middle(y, m)
	}
	toYear, toMonth := y, m+1
	if toMonth == 13 {
		toYear, toMonth = y+1, time.January
	}
	to := middle(toYear, toMonth)
	return int(m) - 1, float64(d.Sub(from)) / float64(to.Sub(from))
}

// on returns the logged hours of the month and day of d, in any year; false if an hour is
// missing.
func (s *Series) on(d civil.Date) (hours []float64, ok bool) {
	if s == nil {
		return nil, false
	}
	last := s.From.AddDays(civil.Days(len(s.Celsius)/24 - 1))
	for y := s.From.Year(); y <= last.Year(); y++ {
		at := d.MonthDay().In(y)
		first := 24 * int(at.Sub(s.From))
		if at.Before(s.From) || first+24 > len(s.Celsius) {
			continue
		}
		hours = s.Celsius[first : first+24]
		if !hasGap(hours) {
			return hours, true
		}
	}
	return nil, false
}

func hasGap(hours []float64) bool {
	for _, t := range hours {
		if t != t {
			return true
		}
	}
	return false
}
