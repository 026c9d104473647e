package place

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"eyeup/quantity"
)

// someHouse draws a house of any reasonable make.
func someHouse(t *rapid.T) Covered {
	some := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	eaves := some("eaves", 0.2, 3)
	c := Covered{
		Length: quantity.Length(some("length", 1, 40)), Width: quantity.Length(some("width", 1, 12)),
		Eaves: quantity.Length(eaves), Ridge: quantity.Length(eaves + some("rise", 0, 3)),
		Cover:      Cover{"own", quantity.Transmittance(some("u", 1, 8)), quantity.Share(some("light", 0.3, 0.9)), 2},
		AirChanges: quantity.Rate(some("changes", 0, 4)),
	}
	if rapid.Bool().Draw(t, "heated") {
		c.Heater = &Heater{Power: quantity.Power(some("power", 100, 40e3))}
	}
	if rapid.Bool().Draw(t, "vented") {
		c.Vent = Vent{Opens: quantity.Celsius(some("opens", 19, 30)), ByHand: rapid.Bool().Draw(t, "by hand")}
	}
	if rapid.Bool().Draw(t, "screened") {
		c.Screen = &Screen{quantity.Share(some("saves", 0, 0.9))}
	}
	if rapid.Bool().Draw(t, "warm bench") {
		c.WarmBench = &WarmBench{1, quantity.Celsius(20), quantity.Power(some("bench", 50, 500))}
		c.BenchApart = rapid.Bool().Draw(t, "apart")
	}
	if rapid.Bool().Draw(t, "lit") {
		c.Lamps = &Lamps{1, 150, some("hours", 0, 24), quantity.Power(some("lamps", 50, 500))}
	}
	return c
}

// The account of heat closes in every hour, for air and for floor, whatever the house, its
// heater, vents, screen, bench and lamps; and heat given is heat noted.
func TestHeatIsAccountedFor(t *testing.T) {
	y := waterville(t)
	rapid.Check(t, func(t *rapid.T) {
		c := someHouse(t)
		h := y.hours[rapid.IntRange(0, len(y.hours)-1).Draw(t, "year")]
		s := Steadily(quantity.Celsius(rapid.Float64Range(0, 18).Draw(t, "level")))
		if rapid.Bool().Draw(t, "off") {
			s = Off()
		}
		var given, asked float64
		k := c.Watch(h, y.site, s, func(f Hour) {
			given, asked = given+f.Given/1000, asked+f.Asked/1000
			b := c.body()
			crossing := b.Coupling * float64(c.FloorArea()) * (f.Air - f.Floor)
			air := f.Given + f.Sun + f.Lamps + f.WarmBench + f.Cover - crossing - f.StoredAir
			floor := f.SunOnFloor + crossing + f.Edge + f.Deep - f.StoredFloor
			scale := 1e3 + math.Abs(f.Given) + f.Sun + math.Abs(f.Cover) + math.Abs(crossing)
			if math.Abs(air) > 1e-9*scale || math.Abs(floor) > 1e-9*scale {
				t.Fatalf("hour %d: the air's account is out by %g W, the floor's by %g of %g", f.Index, air, floor, scale)
			}
			if c.Heater == nil && f.Given != 0 || c.Heater != nil && f.Given > float64(c.Heater.Power) {
				t.Fatalf("hour %d: gave %g W", f.Index, f.Given)
			}
		})
		whole := k.Sum(k.GivenKWh, k.Span)
		if math.Abs(whole-given) > 1e-9*(1+given) || math.Abs(k.Sum(k.AskedKWh, k.Span)-asked) > 1e-9*(1+asked) {
			t.Fatalf("days add to %g kWh given, hours to %g", whole, given)
		}
		if whole > k.Sum(k.AskedKWh, k.Span)+1e-6 {
			t.Fatalf("more was given (%g kWh) than asked (%g)", whole, k.Sum(k.AskedKWh, k.Span))
		}
	})
}

// Order is kept in real weather: a higher level costs no less heat, and neither it nor a
// stronger heater leaves the house colder in any hour; thicker glass costs no more.
func TestOrderIsKept(t *testing.T) {
	y := waterville(t)
	rapid.Check(t, func(t *rapid.T) {
		c := someHouse(t)
		c.Heater, c.Vent = &Heater{Power: quantity.Power(rapid.Float64Range(1e3, 20e3).Draw(t, "watts"))}, Vent{}
		c.WarmBench = nil // it gives the more the colder the air
		h := y.hours[rapid.IntRange(0, len(y.hours)-1).Draw(t, "year")]
		low := rapid.Float64Range(2, 15).Draw(t, "low")
		high := low + rapid.Float64Range(0, 8).Draw(t, "more")
		run := func(c Covered, level float64) (kWh float64, air []float64) {
			k := c.Run(h, y.site, from20January(level))
			from, to := k.Within(spring)
			return k.Sum(k.AskedKWh, spring), k.Air[24*from : 24*to]
		}
		thick, strong := c, c
		thick.Cover.U *= 0.8
		strong.Heater = &Heater{Power: 1.5 * c.Heater.Power}
		cooler, airLow := run(c, low)
		warmer, airHigh := run(c, high)
		saved, _ := run(thick, low)
		_, airStrong := run(strong, low)
		if cooler > warmer+1e-9 || saved > cooler+1e-9 {
			t.Fatalf("asked %g kWh at %g °C, %g at %g, %g under thicker glass", cooler, low, warmer, high, saved)
		}
		for i := range airLow {
			if airHigh[i] < airLow[i]-1e-9 || airStrong[i] < airLow[i]-1e-9 {
				t.Fatalf("hour %d: %g °C, at a higher level %g, with a stronger heater %g", i, airLow[i], airHigh[i], airStrong[i])
			}
		}
	})
}

// Colder glass is never warmer inside, as long as it is colder outside. Where a thermostat
// brings the end of an hour to the same temperature, the way there may differ a little.
func TestColderGlassIsColder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := someHouse(t)
		c.WarmBench, c.Vent.ByHand = nil, false
		h := plainWeather(6, rapid.Float64Range(-20, 10).Draw(t, "outside"), rapid.Float64Range(0, 800).Draw(t, "sun"))
		s := Steadily(quantity.Celsius(rapid.Float64Range(10, 18).Draw(t, "level")))
		within := 0.2
		if c.Heater == nil {
			s = Off()
			if c.Vent == (Vent{}) {
				within = 1e-9
			}
		}
		colder := c
		colder.Cover.U *= quantity.Transmittance(rapid.Float64Range(1, 2).Draw(t, "times"))
		warm, cold := c.Run(h, fortyFour, s), colder.Run(h, fortyFour, s)
		for i := range warm.Air {
			if cold.Air[i] > warm.Air[i]+within {
				t.Fatalf("hour %d: %g °C under colder glass, %g under the other", i, cold.Air[i], warm.Air[i])
			}
		}
	})
}
