package place

import (
	"math"

	"eyeup/quantity"
)

// Covered is a place under glass, film or twin-wall: a house with a ridge along its
// length, or a frame. Lengths are outside measures.
type Covered struct {
	Length, Width, Eaves, Ridge quantity.Length // eaves and ridge above the ground

	Cover      Cover
	AirChanges quantity.Rate // through gaps with everything shut, an hour; see the table "leakage"

	Heater    *Heater    // nil: unheated
	Vent      Vent       // the zero value: none
	Screen    *Screen    // nil: none
	WarmBench *WarmBench // nil: none
	// BenchApart keeps the heat of the warm bench out of the air of the house: what the house
	// is like while nothing stands on it.
	BenchApart bool
	Lamps      *Lamps // nil: none

	// Body is how the inside takes up and gives off warmth. Its zero value stands for
	// UsualBody.
	Body Body
}

// Heater is what warms the air of a house.
type Heater struct {
	Power      quantity.Power // of useful heat, at most
	Fuel       string         // a row of the fuels table
	Efficiency quantity.Share // of the fuel's heat that is useful; 0 stands for the table's
}

// Vent lets warm air out. The zero value is a house that cannot be opened.
type Vent struct {
	Opens  quantity.Temperature // of the air inside
	ByHand bool                 // opened by the grower on a visit, not by a thermostat
	// Most is how often the air changes in an hour when fully open. 0 stands for
	// UsualVent where Opens is set.
	Most quantity.Rate
}

// UsualVent returns how often the air of a house changes in an hour with the vents fully
// open, from the table "body".
func UsualVent() quantity.Rate { return quantity.Rate(value("body", "vent.most")) }

// rate returns how often the air changes with the vent fully open.
func (v Vent) rate() quantity.Rate {
	if v.Most == 0 && v != (Vent{}) {
		return UsualVent()
	}
	return v.Most
}

// Screen is drawn under the cover whenever the sun is down.
type Screen struct {
	Saves quantity.Share // of the loss through the cover, while drawn
}

// WarmBench warms roots from below by electricity while the air stays cool.
type WarmBench struct {
	Area  quantity.Area        // that is warmed
	Root  quantity.Temperature // what its thermostat holds in the pots
	Power quantity.Power       // at most
}

// Body is how the inside of a covered place takes up and gives off warmth, for each
// square metre of floor unless said otherwise. The table "body" of Figures has source, range and sureness.
type Body struct {
	Air      float64 // heat that warms air, pots and benches, J/m²K
	Floor    float64 // heat that warms the floor, J/m²K
	Coupling float64 // between the two, W/m²K
	Edge     float64 // from the floor to the outside, for each metre round it, W/mK
	Deep     float64 // from the floor to the ground beneath, W/m²K
	Sensible float64 // share of the sun that comes in and turns to warmth, the rest to vapour and growth
	ToAir    float64 // share of that warmth which is felt by the air at once, the rest by the floor
	Capture  float64 // how much of the low sun that the walls add stays inside, 0 to 1
	PotHours float64 // in which a pot goes 63 % of the way to the air, h
	PotSun   float64 // by how much sun on the pot warms it above the air, K for each W/m² inside
}

// UsualBody returns the figures of the table "body". Together they reproduce what is
// measured and known of small houses; singly each is little more than a fair guess.
func UsualBody() Body {
	of := func(key string) float64 { return value("body", "body."+key) }
	return Body{
		Air: of("air") * 1000, Floor: of("floor") * 1000, Coupling: of("coupling"),
		Edge: of("edge"), Deep: of("deep"), Sensible: of("sensible"), ToAir: of("to_air"),
		Capture: of("capture"), PotHours: of("pot_hours"), PotSun: of("pot_sun"),
	}
}

func (c Covered) body() Body {
	if c.Body == (Body{}) {
		return UsualBody()
	}
	return c.Body
}

// Frame returns a cold frame of the given floor: unheated, glazed, low, opened by hand.
// Its height, leakage and vent are assumptions.
func Frame(area quantity.Area) Covered {
	const width = 1.2 * quantity.Metre
	cover, _ := CoverNamed("single-glass")
	return Covered{
		Length: quantity.Length(float64(area) / float64(width)), Width: width,
		Eaves: 0.3 * quantity.Metre, Ridge: 0.5 * quantity.Metre,
		Cover: cover, AirChanges: 2,
		Vent: Vent{Opens: quantity.Celsius(18), ByHand: true, Most: 100},
	}
}

// FloorArea returns the area of the floor.
func (c Covered) FloorArea() quantity.Area { return c.Length.Times(c.Width) }

// Perimeter returns the length of the edge of the floor.
func (c Covered) Perimeter() quantity.Length { return 2 * (c.Length + c.Width) }

// Volume returns the volume of the air inside.
func (c Covered) Volume() quantity.Volume { return c.FloorArea().Times((c.Eaves + c.Ridge) / 2) }

// slope returns the length of the roof from eaves to ridge.
func (c Covered) slope() quantity.Length {
	return quantity.Length(math.Hypot(float64(c.Width)/2, float64(c.Ridge-c.Eaves)))
}

// CoverArea returns the area of walls, gables and roof.
func (c Covered) CoverArea() quantity.Area {
	walls := c.Perimeter().Times(c.Eaves)
	gables := c.Width.Times(c.Ridge - c.Eaves)
	return walls + gables + 2*c.Length.Times(c.slope())
}

// Loss returns the heat the place loses for each kelvin that it is warmer than outside,
// with the vents shut and the screen open: through cover and gaps, the edge of the floor
// and the ground beneath.
func (c Covered) Loss() quantity.Conductance {
	b := c.body()
	return Through(Part{c.CoverArea(), c.Cover.U}) + AirExchange(c.Volume(), c.AirChanges) +
		quantity.Conductance(b.Edge*float64(c.Perimeter())+b.Deep*float64(c.FloorArea()))
}
