package place

import (
	"math"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/odds"
	"eyeup/quantity"
	"eyeup/sun"
)

// from20January holds a level from before the spring that is looked at.
func from20January(level float64, more ...Step) Setting {
	first := Step{From: civil.MustOn(2027, time.January, 20), Level: quantity.Celsius(level)}
	return Setting{Steps: append([]Step{first}, more...)}
}

func stepTo(level float64, m time.Month, d int) Step {
	return Step{From: civil.MustOn(2027, m, d), Level: quantity.Celsius(level)}
}

// springHeat runs the house through every year and returns the heat given in spring, the
// hours short, and in how many years it fell below freezing.
func (y years) springHeat(c Covered, s Setting) (given, asked, short odds.Amount, frozen int) {
	var g, a, h []float64
	for _, hours := range y.hours {
		k := c.Run(hours, y.site, s)
		g = append(g, k.Sum(k.GivenKWh, spring))
		a = append(a, k.Sum(k.AskedKWh, spring))
		h = append(h, k.Sum(k.HoursShort, spring))
		if coldest, _ := k.Coldest(spring); coldest.Celsius() < 0 {
			frozen++
		}
	}
	return odds.AmountOf(g), odds.AmountOf(a), odds.AmountOf(h), frozen
}

func nearAmount(t *testing.T, what string, got odds.Amount, low, middle, high, part, beside float64) {
	t.Helper()
	near(t, what+", low", got.Low, low, part*low+beside)
	near(t, what+", middle", got.Middle, middle, part*middle+beside)
	near(t, what+", high", got.High, high, part*high+beside)
}

// What the house of 3.6 by 7.3 m needed from 1 February to 20 May in the years 1981 to
// 2010 at Waterville, as reckoned by another program, written apart from this one, with
// the same equations. It filled two gaps of the record, ran all 30 years where this one
// leaves out two: 4 % and 20 kWh are allowed. It let the level leap where this one ramps,
// and counted the hours after a leap as short: 15 % and six hours are allowed.
func TestSpringHeatAtWaterville(t *testing.T) {
	y := waterville(t)
	for _, c := range []struct {
		setting                          Setting
		low, middle, high                float64
		shortLow, shortMiddle, shortHigh float64
	}{
		{from20January(4), 1743, 2352, 3206, 0, 27, 94},
		{from20January(7), 2688, 3398, 4230, 22, 78, 186},
		{from20January(10), 3845, 4645, 5359, 68, 152, 314},
		{from20January(13), 5162, 5986, 6605, 155, 273, 456},
		{from20January(16), 6563, 7344, 8010, 271, 429, 582},
		{from20January(18), 7517, 8226, 8939, 391, 562, 681},
		{from20January(4, stepTo(13, 4, 1)), 2684, 3403, 4376, 1, 28, 100},
		{from20January(4, stepTo(16, 4, 1)), 3245, 4016, 4980, 1, 31, 122},
		{from20January(7, stepTo(16, 3, 15)), 4747, 5621, 6458, 53, 128, 246},
	} {
		given, asked, short, frozen := y.springHeat(smallHouse(), c.setting)
		nearAmount(t, c.setting.String()+", kWh", given, c.low, c.middle, c.high, 0.04, 20)
		nearAmount(t, c.setting.String()+", hours short", short, c.shortLow, c.shortMiddle, c.shortHigh, 0.15, 6)
		if asked.Middle < given.Middle {
			t.Errorf("%v: asked %.0f kWh, given %.0f", c.setting, asked.Middle, given.Middle)
		}
		// The other program had 15 to 18 of 30 years: half of them, a year either way.
		if share := float64(frozen) / float64(len(y.hours)); share < 14.0/30 || share > 18.5/30 {
			t.Errorf("%v: 6 kW froze in %d of %d years; 15 to 18 of 30 are expected", c.setting, frozen, len(y.hours))
		}
	}
}

// With 12 kW the same house freezes in no year, and at 18 °C takes 9196 kWh at even odds.
// What 6 kW are asked for is what an ample heater gives.
func TestTwelveKilowattsHold(t *testing.T) {
	y := waterville(t)
	weak, strong := smallHouse(), smallHouse()
	strong.Heater = &Heater{Power: 12 * quantity.Kilowatt}
	for _, level := range []float64{4, 18} {
		given, _, _, frozen := y.springHeat(strong, from20January(level))
		if frozen != 0 {
			t.Errorf("12 kW at %g °C: froze in %d years", level, frozen)
		}
		if level == 18 {
			near(t, "12 kW at 18 °C, kWh", given.Middle, 9196, 0.02*9196)
			_, asked, _, _ := y.springHeat(weak, from20January(level))
			near(t, "asked of 6 kW at 18 °C, kWh", asked.Middle, given.Middle, 0.002*9196)
		}
	}
}

// The same at Mullingar, where the other program held the sun to the coefficient 0.14.
// Short hours are next to none there.
func TestSpringHeatAtMullingar(t *testing.T) {
	record, site := mullingarRecord(t)
	y := yearsOf(record, site)
	for _, c := range []struct{ level, low, middle, high float64 }{
		{4, 135, 242, 435},
		{10, 1496, 1901, 2348},
		{13, 2822, 3329, 3942},
		{16, 4467, 5044, 5754},
		{18, 5682, 6293, 6996},
	} {
		given, _, short, frozen := y.springHeat(smallHouse(), from20January(c.level))
		nearAmount(t, "Mullingar, kWh", given, c.low, c.middle, c.high, 0.04, 20)
		if short.Middle > 4 || frozen != 0 {
			t.Errorf("%g °C: %.0f hours short, %d years frozen", c.level, short.Middle, frozen)
		}
	}
}

// Even with 30 changes of air an hour the house at 10 °C passes 30 °C in 4 hours of April
// and 35 of May in a mean year at Waterville, by the other program.
func TestHotHoursAtWaterville(t *testing.T) {
	y := waterville(t)
	april := civil.Span{From: civil.MustOn(2027, time.April, 1), To: civil.MustOn(2027, time.April, 30)}
	may := civil.Span{From: civil.MustOn(2027, time.May, 1), To: civil.MustOn(2027, time.May, 31)}
	hot := func(c Covered) (inApril, inMay float64) {
		for _, h := range y.hours {
			k := c.Run(h, y.site, Steadily(quantity.Celsius(10)))
			inApril += k.Sum(k.Hot, april) / float64(len(y.hours))
			inMay += k.Sum(k.Hot, may) / float64(len(y.hours))
		}
		return inApril, inMay
	}
	a, m := hot(smallHouse())
	near(t, "hours in April", a, 4, 1.5)
	near(t, "hours in May", m, 35, 4)

	byHand, never := smallHouse(), smallHouse()
	byHand.Vent.ByHand = true
	never.Vent = Vent{}
	handA, _ := hot(byHand)
	neverA, _ := hot(never)
	if !(a < handA && handA < neverA) {
		t.Errorf("hot hours in April: %.1f by thermostat, %.1f by hand, %.1f never opened", a, handA, neverA)
	}
}

// Soil at ten centimetres measured at Mullingar, 1981 to 2010: the first day of the year on
// which the mean of three days reaches 15.6 °C (and 12.8) falls, at even odds, within
// twelve days of the one reckoned from air and sun.
func TestSoilAtMullingar(t *testing.T) {
	record, site := mullingarRecord(t)
	y := yearsOf(record, site)
	firstOfYear := int(civil.MustOn(2027, time.January, 3).Sub(northern.From))
	for _, reach := range []float64{15.6, 12.8} {
		var measured, reckoned []float64
		for i, h := range y.hours {
			soil := UsualGround().Run(h, y.site, Off()).Root
			m, r := math.Inf(1), math.Inf(1)
			for d := firstOfYear; d < firstOfYear+363; d++ {
				var was, is float64
				for back := range 3 {
					on := northern.From.AddDays(civil.Days(d - back)).MonthDay().In(y.year[i])
					was += record.On(on).Soil.Celsius() / 3
					is += soil[24*(d-back)] / 3
				}
				if was >= reach {
					m = min(m, float64(d))
				}
				if is >= reach {
					r = min(r, float64(d))
				}
			}
			measured, reckoned = append(measured, m), append(reckoned, r)
		}
		was, is := odds.AmountOf(measured), odds.AmountOf(reckoned)
		t.Logf("%.1f °C at even odds: measured on %v, reckoned for %v", reach,
			northern.From.AddDays(civil.Days(was.Middle)), northern.From.AddDays(civil.Days(is.Middle)))
		near(t, "day at even odds", is.Middle, was.Middle, 12)
		near(t, "day in the late years", is.High, was.High, 12)
	}
}

var fortyFour = sun.Site{Latitude: 44.5, Longitude: -70, Elevation: 30}
