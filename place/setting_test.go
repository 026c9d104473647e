package place

import (
	"math"
	"strings"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/quantity"
)

func TestSettingByDate(t *testing.T) {
	s := Setting{Steps: []Step{stepTo(4, 2, 1), stepTo(16, 4, 1), {From: civil.MustOn(2027, time.May, 20), Off: true}}}
	for _, c := range []struct {
		m     time.Month
		d     int
		level float64
		on    bool
	}{{1, 31, 0, false}, {2, 1, 4, true}, {3, 31, 4, true}, {4, 1, 16, true}, {5, 19, 16, true}, {5, 20, 0, false}} {
		level, on := s.At(civil.MustOn(2027, c.m, c.d))
		if on != c.on || on && level.Celsius() != c.level {
			t.Errorf("%d %v: %v %t", c.d, c.m, level, on)
		}
	}
	if got, want := s.String(), "4.0 °C from 2027-02-01; 16.0 °C from 2027-04-01; off from 2027-05-20"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if Off().String() != "off" || Steadily(quantity.Celsius(10)).String() != "10.0 °C" {
		t.Error(Off().String(), Steadily(quantity.Celsius(10)).String())
	}
	if err := s.Check(); err != nil {
		t.Error(err)
	}
	if err := (Setting{Steps: []Step{stepTo(4, 4, 1), stepTo(5, 4, 1)}}).Check(); err == nil {
		t.Error("two steps on one day passed")
	}
	if err := Steadily(quantity.Celsius(math.NaN())).Check(); err == nil {
		t.Error("a level that is no number passed")
	}
	low := s.AtMost(quantity.Celsius(5))
	if a, _ := low.At(civil.MustOn(2027, time.April, 2)); a.Celsius() != 5 {
		t.Errorf("lowered to %v", a)
	}
}

// A step up is climbed a kelvin an hour and none of its hours is short; a step down is
// taken at once.
func TestLevelRamps(t *testing.T) {
	c := smallHouse()
	c.Heater.Power = 40 * quantity.Kilowatt
	h := plainWeather(20, -5, 0)
	s := Setting{Steps: []Step{
		{Level: quantity.Celsius(4)},
		{From: h.Span.From.AddDays(5), Level: quantity.Celsius(16)},
		{From: h.Span.From.AddDays(10), Level: quantity.Celsius(7)},
	}}
	var levels []float64
	k := c.Watch(h, fortyFour, s, func(hour Hour) { levels = append(levels, hour.Level) })
	for i, want := range []float64{4, 5, 6, 7} {
		near(t, "level", levels[5*24-1+i], want, 1e-9)
	}
	near(t, "reached", k.Air[5*24+13], 16, 0.02)
	near(t, "a step down", levels[10*24], 7, 1e-9)
	if short := k.Sum(k.HoursShort, k.Span); short != 0 {
		t.Errorf("%g hours short with heat to spare", short)
	}
	var most float64
	for i, a := range k.Air[1:] {
		most = max(most, a-k.Air[i])
	}
	if most > 1.01 {
		t.Errorf("warmed by %g K in an hour", most)
	}
}

// With an ample heater what is asked is given, hour by hour; a heater of nothing is asked
// the same.
func TestAskedDoesNotDependOnTheHeater(t *testing.T) {
	y := waterville(t)
	ample, weak, none := smallHouse(), smallHouse(), smallHouse()
	ample.Heater.Power, none.Heater = 100*quantity.Kilowatt, nil
	weak.Heater = &Heater{Power: 2 * quantity.Kilowatt}
	of := func(c Covered) *Course { return c.Run(y.hours[3], y.site, from20January(12)) }
	a, w, n := of(ample), of(weak), of(none)
	for d := range a.AskedKWh {
		near(t, "given by an ample heater", a.GivenKWh[d], a.AskedKWh[d], 0)
		near(t, "asked of a weak heater", w.AskedKWh[d], a.AskedKWh[d], 0.01+0.001*a.AskedKWh[d])
		near(t, "asked of none", n.AskedKWh[d], a.AskedKWh[d], 0.01+0.001*a.AskedKWh[d])
		near(t, "given by none", n.GivenKWh[d], 0, 0)
	}
}

// A heater of the peak holds the level in every hour; nine tenths of it does not.
func TestPeakHolds(t *testing.T) {
	y := waterville(t)
	c, s := smallHouse(), from20January(10)
	winter := civil.Span{From: civil.MustOn(2027, time.January, 25), To: spring.To}
	for _, h := range y.hours[:5] {
		peak := c.Peak(h, y.site, s, winter)
		c.Heater = &Heater{Power: peak}
		k := c.Run(h, y.site, s)
		if short := k.Sum(k.HoursShort, winter); short != 0 {
			t.Errorf("%.0f W: %g hours short", float64(peak), short)
		}
		c.Heater = &Heater{Power: peak * 0.8}
		k = c.Run(h, y.site, s)
		if k.Sum(k.AskedKWh, winter) <= k.Sum(k.GivenKWh, winter) {
			t.Errorf("%.0f W: as good as %.0f", float64(peak)*0.8, float64(peak))
		}
	}
}

// What is known of savings: night curtains cut bills by 30 to 50 % (Sanford, extension.org),
// with 70 to 80 % of the heat used by night; a second film saves some 40 %, measured 34
// (University of Wisconsin Extension; Rasheed et al.).
func TestSavings(t *testing.T) {
	y := waterville(t)
	asked := func(change func(*Covered)) float64 {
		c := smallHouse()
		c.Cover, _ = CoverNamed("single-film")
		change(&c)
		given, sum := c.springOf(y), 0.0
		for _, kWh := range given {
			sum += kWh
		}
		return sum
	}
	plain := asked(func(*Covered) {})
	screened := asked(func(c *Covered) { c.Screen = &Screen{Saves: quantity.Share(value("body", "screen.saves"))} })
	double := asked(func(c *Covered) { c.Cover, _ = CoverNamed("double-film") })
	near(t, "saved by a night screen", 1-screened/plain, 0.40, 0.12)
	near(t, "saved by a second film", 1-double/plain, 0.37, 0.06)

	byNight, whole := 0.0, 0.0
	h := y.hours[0]
	smallHouse().Watch(h, y.site, from20January(10), func(hour Hour) {
		whole += hour.Asked
		if h.Sun[hour.Index] <= 0 {
			byNight += hour.Asked
		}
	})
	near(t, "share of the heat used by night", byNight/whole, 0.77, 0.09)
}

func (c Covered) springOf(y years) []float64 {
	var all []float64
	for _, h := range y.hours[:6] {
		k := c.Run(h, y.site, from20January(10))
		all = append(all, k.Sum(k.AskedKWh, spring))
	}
	return all
}

func TestHousesThatCannotBe(t *testing.T) {
	if err := smallHouse().Check(); err != nil {
		t.Error(err)
	}
	if err := Frame(6).Check(); err != nil {
		t.Error(err)
	}
	for what, spoil := range map[string]func(*Covered){
		"length":       func(c *Covered) { c.Length = -1 },
		"eaves":        func(c *Covered) { c.Eaves = 9 },
		"cover":        func(c *Covered) { c.Cover.U = 0 },
		"light":        func(c *Covered) { c.Cover.Light = 1.2 },
		"air":          func(c *Covered) { c.AirChanges = quantity.Rate(math.NaN()) },
		"heater":       func(c *Covered) { c.Heater = &Heater{} },
		"efficiency":   func(c *Covered) { c.Heater.Efficiency = -1 },
		"vents":        func(c *Covered) { c.Vent.Opens = quantity.Celsius(90) },
		"screen":       func(c *Covered) { c.Screen = &Screen{1} },
		"warm bench":   func(c *Covered) { c.WarmBench = &WarmBench{Area: 99, Root: quantity.Celsius(20), Power: 1} },
		"lamps":        func(c *Covered) { c.Lamps = &Lamps{Hours: 30} },
		"warmth":       func(c *Covered) { c.Body = Body{Air: 1} },
		"wide as none": func(c *Covered) { c.Width = 0 },
	} {
		c := smallHouse()
		spoil(&c)
		if err := c.Check(); err == nil || strings.Contains(err.Error(), "%!") {
			t.Errorf("%s: %v", what, err)
		}
	}
	if smallHouse().Accepts(Steadily(quantity.Celsius(24))) == nil {
		t.Error("a level at which the vents stand open passed")
	}
	if err := smallHouse().Accepts(from20January(18)); err != nil {
		t.Error(err)
	}
}
