package keeping

import (
	"fmt"
	"math"
	"time"

	"eyeup/air"
	"eyeup/civil"
	"eyeup/quantity"
)

// Spell is a period in the store with constant air.
type Spell struct {
	Days        float64
	Temperature quantity.Temperature
	Humidity    quantity.Share // of the room's air, 0 to 1
}

func (s Spell) check() error {
	const longest, coldest, warmest = 3660, -40, 60 // ten years; no store is colder or warmer
	switch c := s.Temperature.Celsius(); {
	case !(s.Days >= 0 && s.Days <= longest):
		return fmt.Errorf("a store can't be computed over %g days; give 0 or more, and at most %d", s.Days, longest)
	case !(s.Humidity >= 0 && s.Humidity <= 1):
		return fmt.Errorf("a humidity of %g%% is not possible; give 0%% to 100%%", s.Humidity.Percent())
	case !s.Temperature.IsKnown():
		return fmt.Errorf("the temperature of the store is not known; give it, such as 42F or 6C")
	case c < coldest || c > warmest:
		return fmt.Errorf("a store at %.0f °C is not plausible; give %d to %d °C", c, coldest, warmest)
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

// Days returns the total days of the spells.
func Days(spells []Spell) float64 {
	sum := 0.0
	for _, s := range spells {
		sum += s.Days
	}
	return sum
}

// Monthly returns the spells of a store over a span of days, from its temperature and humidity
// in each month, January first.
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

// Law is how stock loses weight in store: by the vapour-pressure deficit at its surface, and
// independently of it by respiration. Both act on the remaining weight.
type Law struct {
	Coefficient float64        // transpiration, ng of water per kg, second and Pa
	Apart       float64        // share of weight a day, independent of the air
	Surface     quantity.Share // humidity of the air at the surface; 1 is saturated
}

// Pull returns the vapour-pressure deficit between a room's air and the surface: saturation
// pressure times the difference in humidity. It is 0 in air damper than the surface; water
// uptake is neglected.
func (l Law) Pull(s Spell) quantity.Pressure {
	return air.Saturation(s.Temperature) * quantity.Pressure(max(0, l.Surface-s.Humidity))
}

// Rate returns the share of weight lost in a day at a vapour-pressure deficit.
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
