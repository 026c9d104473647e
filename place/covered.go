package place

import (
	"math"

	"eyeup/quantity"
)

// Covered is a place under glass, film or twin-wall: a house with a ridge along its length, or
// a frame. Lengths are outside measures.
type Covered struct {
	Length, Width, Eaves, Ridge quantity.Length // eaves and ridge above the ground

	Cover      Cover
	AirChanges quantity.Rate // air changes an hour through gaps with everything shut; see the table "leakage"

	Heater    *Heater    // nil: unheated
	Vent      Vent       // the zero value: none
	Screen    *Screen    // nil: none
	WarmBench *WarmBench // nil: none
	// BenchApart keeps the heat of the warm bench out of the air of the house: the house as it
	// is while nothing stands on the bench.
	BenchApart bool
	Lamps      *Lamps // nil: none

	// Body is the thermal model of the inside. Its zero value stands for UsualBody.
	Body Body
}

// Heater is a heater for the air of a house.
type Heater struct {
	Power      quantity.Power // maximum useful heat
	Fuel       string         // name in the fuels table
	Efficiency quantity.Share // useful share of the fuel's heat; 0: the table's
}

// Vent lets warm air out. The zero value is no vent.
type Vent struct {
	Opens  quantity.Temperature // air temperature inside at which it opens
	ByHand bool                 // opened by the grower on a visit, not by a thermostat
	// Most is the air changes an hour when fully open. 0 stands for UsualVent if Opens is set.
	Most quantity.Rate
}

// UsualVent returns the usual air changes an hour with the vents fully open, from the table
// "body".
func UsualVent() quantity.Rate { return quantity.Rate(value("body", "vent.most")) }

// rate returns the air changes an hour with the vent fully open.
func (v Vent) rate() quantity.Rate {
	if v.Most == 0 && v != (Vent{}) {
		return UsualVent()
	}
	return v.Most
}

// Screen is a thermal screen, drawn under the cover while the sun is down.
type Screen struct {
	Saves quantity.Share // share of the heat loss through the cover, while drawn
}

// WarmBench heats roots from below by electricity while the air stays cool.
type WarmBench struct {
	Area  quantity.Area        // heated area
	Root  quantity.Temperature // temperature that its thermostat holds in the pots
	Power quantity.Power       // maximum
}

// Body holds the thermal properties of the inside of a covered place, per square metre of
// floor unless noted. The table "body" of Figures has their sources, ranges and sureness.
type Body struct {
	Air      float64 // heat capacity of air, pots and benches, J/m²K
	Floor    float64 // heat capacity of the floor, J/m²K
	Coupling float64 // heat transfer between air and floor, W/m²K
	Edge     float64 // heat loss from the floor to the outside per metre of its edge, W/mK
	Deep     float64 // heat loss from the floor to the ground below, W/m²K
	Sensible float64 // share of the entering sun that turns to heat; the rest evaporates water or feeds growth
	ToAir    float64 // share of that heat that warms the air at once; the rest warms the floor
	Capture  float64 // share of the additional low sun through the walls that stays inside, 0 to 1
	PotHours float64 // time constant of a pot's temperature, h
	PotSun   float64 // warming of a pot above the air by sun, K per W/m² inside
}

// UsualBody returns the figures of the table "body". Together they reproduce what is measured
// and known of small houses; each figure alone is little more than a guess.
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

// Frame returns a cold frame with the given floor: unheated, glazed, low, opened by hand. Its
// height, leakage and vent are assumptions.
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

// slope returns the length of one side of the roof, from eaves to ridge.
func (c Covered) slope() quantity.Length {
	return quantity.Length(math.Hypot(float64(c.Width)/2, float64(c.Ridge-c.Eaves)))
}

// CoverArea returns the area of walls, gables and roof.
func (c Covered) CoverArea() quantity.Area {
	walls := c.Perimeter().Times(c.Eaves)
	gables := c.Width.Times(c.Ridge - c.Eaves)
	return walls + gables + 2*c.Length.Times(c.slope())
}

// Loss returns the heat loss per kelvin of difference to the outside, with the vents shut and
// the screen open: through cover and gaps, the edge of the floor and the ground below.
func (c Covered) Loss() quantity.Conductance {
	b := c.body()
	return Through(Part{c.CoverArea(), c.Cover.U}) + AirExchange(c.Volume(), c.AirChanges) +
		quantity.Conductance(b.Edge*float64(c.Perimeter())+b.Deep*float64(c.FloorArea()))
}
