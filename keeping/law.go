package keeping

import (
	"fmt"
	"math"
	"time"

	"eyeup/air"
	"eyeup/civil"
	"eyeup/quantity"
)

// Spell is a time in the store during which its air stays the same.
type Spell struct {
	Days        float64
	Temperature quantity.Temperature
	Humidity    quantity.Share // of the room's air, 0 to 1
}

func (s Spell) check() error {
	const longest, coldest, warmest = 3660, -40, 60 // ten years; no store is colder or warmer
	switch c := s.Temperature.Celsius(); {
	case !(s.Days >= 0 && s.Days <= longest):
		return fmt.Errorf("a store can't be reckoned over %g days; give 0 or more, and at most %d", s.Days, longest)
	case !(s.Humidity >= 0 && s.Humidity <= 1):
		return fmt.Errorf("a humidity of %g%% can't be; give 0%% to 100%%", s.Humidity.Percent())
	case !s.Temperature.IsKnown():
		return fmt.Errorf("the temperature of the store is not known; give it, such as 42F or 6C")
	case c < coldest || c > warmest:
		return fmt.Errorf("a store of %.0f °C can't be meant; give %d to %d °C", c, coldest, warmest)
	}
	return nil
}

func checkAll(spells []Spell) error {
	for _, s := range spells {
		if err := s.check(); err != nil {
			return err
		}
	}
	return nil
}

// Days returns how many days the spells last together.
func Days(spells []Spell) float64 {
	sum := 0.0
	for _, s := range spells {
		sum += s.Days
	}
	return sum
}

// Monthly returns the spells of a store over a span of days, from its temperature and
// humidity in each month, January first.
func Monthly(temperature [12]quantity.Temperature, humidity [12]quantity.Share, span civil.Span) []Spell {
	var all []Spell
	last := time.Month(0)
	for d := span.From; !d.After(span.To); d = d.AddDays(1) {
		m := d.Month()
		if m != last {
			all = append(all, Spell{Temperature: temperature[m-1], Humidity: humidity[m-1]})
			last = m
		}
		all[len(all)-1].Days++
	}
	return all
}

// Law is how a body loses weight in store: by the pull of the air on its surface, and a
// little apart from it (breathing). Both act on the weight that is left.
type Law struct {
	Coefficient float64        // transpiration, ng of water for each kg, second and Pa
	Apart       float64        // share of weight a day, whatever the air
	Surface     quantity.Share // humidity of the air at the surface: 1 is that over water
}

// Pull returns the pull of a room's air on the surface: its saturation pressure times how
// far its humidity lies below the surface's. Air damper than the surface pulls nothing;
// that roots might take water up from it is left out.
func (l Law) Pull(s Spell) quantity.Pressure {
	return air.Saturation(s.Temperature) * quantity.Pressure(max(0, l.Surface-s.Humidity))
}

// Rate returns the share of weight lost in a day at a pull.
func (l Law) Rate(pull quantity.Pressure) float64 {
	const secondsADay, kilogramsANanogram = 86400, 1e-12
	return l.Coefficient*kilogramsANanogram*secondsADay*float64(pull/quantity.Pascal) + l.Apart
}

// Lost returns the share of weight lost over the spells, 0 to 1.
func (l Law) Lost(spells []Spell) float64 {
	sum := 0.0
	for _, s := range spells {
		sum += l.Rate(l.Pull(s)) * s.Days
	}
	return -math.Expm1(-sum)
}
