package place

// hour is the length of a step in seconds.
const hour = 3600.0

// ramp limits how fast the heater's level rises after a step up, in K an hour. A jump of ten
// kelvin would ask for many times the heat that any house needs. Our choice.
const ramp = 1.0

// house is a covered place with everything prepared for stepping through the hours.
type house struct {
	day, night, openDay, openNight stride // hourly steps by day, under the screen, and with open vents

	limit     float64 // of the heater, W
	opens     float64 // when the vents open, °C
	ventMost  float64 // conductance of the open vent, W/K
	byHand    bool
	light     float64 // share of the outside sun that enters
	sunToAir  float64 // W to the air per W/m² outside, before capture
	sunToBase float64 // the same for the floor
	frostLift float64 // largest lift assumed on a frost night, K
	lamps     [24]float64
	// benchToAir is the share of the warm bench's heat that warms the air of the house.
	benchToAir float64
}

func newHouse(c Covered) *house {
	b, floor := c.body(), float64(c.FloorArea())
	cover := float64(c.Cover.U.Over(c.CoverArea()))
	screened := cover
	if c.Screen != nil {
		screened *= 1 - float64(c.Screen.Saves)
	}
	gaps := float64(AirExchange(c.Volume(), c.AirChanges))
	warm := float64(c.Cover.Light) * floor * b.Sensible
	h := &house{
		opens: c.Vent.Opens.Celsius(), byHand: c.Vent.ByHand,
		ventMost: float64(AirExchange(c.Volume(), c.Vent.rate())),
		light:    float64(c.Cover.Light), sunToAir: warm * b.ToAir, sunToBase: warm * (1 - b.ToAir),
		frostLift: float64(c.Cover.FrostLift), lamps: c.Lamps.byHour(), benchToAir: 1,
	}
	if c.BenchApart {
		h.benchToAir = 0
	}
	if c.Heater != nil {
		h.limit = float64(c.Heater.Power)
	}
	p := pair{
		coupling: b.Coupling * floor,
		edge:     b.Edge * float64(c.Perimeter()), deep: b.Deep * floor,
		airHeat: b.Air * floor, floorHeat: b.Floor * floor,
	}
	h.day, h.openDay = p.losing(cover+gaps), p.losing(cover+gaps+h.ventMost)
	h.night, h.openNight = p.losing(screened+gaps), p.losing(screened+gaps+h.ventMost)
	return h
}

// losing returns the hourly step of the pair with the given heat loss from the air, in W/K.
func (p pair) losing(loss float64) stride {
	p.airLoss = loss
	return strideOf(p, hour)
}

// track is the state of a house with one heater as it moves through the hours.
type track struct {
	twin
	limit float64 // of the heater, W
	asked float64 // level of the previous hour, °C
}

// outcome is the result of one hour.
type outcome struct {
	mean  twin
	heat  float64 // W
	loss  float64 // from the air through cover, gaps and vents, W/K
	vent  float64 // of that, through the vents
	asked float64 // level set, °C
	fell  bool    // the heater's limit was reached, so the level was missed
}

// step advances the track by one hour. The thermostats of heater and vents make the hour end
// at the level, or at the temperature at which the vents open, if they can.
func (h *house) step(t *track, d drive, level float64, v vents) outcome {
	o := outcome{asked: level, vent: v.byHand, loss: v.now.airLoss}
	if level > cold {
		o.asked = min(level, max(t.asked, t.air)+ramp)
	}
	end, mean := v.now.step(t.twin, d)
	switch {
	case end.air < o.asked:
		needed := v.now.heatToEnd(o.asked, end.air)
		o.heat, o.fell = min(needed, t.limit), needed > t.limit
		end, mean = v.now.heated(end, mean, o.heat)
	case v.open != nil && end.air > h.opens:
		o.vent, end, mean = h.ventToHold(v.now, v.open, t.twin, d)
		o.loss += o.vent
	}
	t.twin, t.asked, o.mean = end, o.asked, mean
	return o
}
