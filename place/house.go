package place

import (
	"math"

	"eyeup/sun"
	"eyeup/weather"
)

// hour is the length of a step in seconds.
const hour = 3600.0

// ramp is how fast the level asked of a heater rises after a step up, in K an hour. A leap
// of ten kelvin at once would ask for many times the heat that any house needs. Chosen.
const ramp = 1.0

// together is how alike, in K, the house and its twin with an unlimited heater must be to
// be run as one again.
const together = 1e-6

// house is a covered place made ready to be stepped through the hours.
type house struct {
	day, night, openDay, openNight stride

	limit     float64 // of the heater, W
	opens     float64 // when the vents open, °C
	ventMost  float64 // conductance of the open vent, W/K
	byHand    bool
	light     float64 // share of the outside sun that comes in
	sunToAir  float64 // W for each W/m² outside, before capture
	sunToBase float64 // the same for the floor
	frostLift float64 // most that is promised on a frost night, K
	lamps     [24]float64
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
		frostLift: float64(c.Cover.FrostLift), lamps: c.Lamps.byHour(),
	}
	if c.Heater != nil {
		h.limit = float64(c.Heater.Power)
	}
	p := pair{
		airLoss: cover + gaps, coupling: b.Coupling * floor,
		edge: b.Edge * float64(c.Perimeter()), deep: b.Deep * floor,
		airHeat: b.Air * floor, floorHeat: b.Floor * floor,
	}
	losing := func(w float64) stride {
		p.airLoss = w
		return strideOf(p, hour)
	}
	h.day, h.openDay = losing(cover+gaps), losing(cover+gaps+h.ventMost)
	h.night, h.openNight = losing(screened+gaps), losing(screened+gaps+h.ventMost)
	return h
}

// track is a house on its way through the hours with one heater.
type track struct {
	twin
	limit float64 // of the heater, W
	asked float64 // level asked in the hour before, °C
}

// outcome is what an hour did.
type outcome struct {
	mean  twin
	heat  float64 // W
	vent  float64 // W/K
	asked float64 // level asked, °C
	fell  bool    // short of it: the heater's limit was reached
}

// step takes the track through an hour. The thermostat of the heater and that of the vents
// see to it that the hour ends at the level or where the vents open, if they can.
func (h *house) step(t *track, d drive, level float64, night, open bool) outcome {
	shut, wide := &h.day, &h.openDay
	if night {
		shut, wide = &h.night, &h.openNight
	}
	o := outcome{asked: level}
	if level > cold {
		o.asked = min(level, max(t.asked, t.air)+ramp)
	}
	if open {
		shut, o.vent = wide, h.ventMost
	}
	end, mean := shut.step(t.twin, d)
	switch {
	case end.air < o.asked:
		needed := shut.heatToEnd(o.asked, end.air)
		o.heat, o.fell = min(needed, t.limit), needed > t.limit
		end, mean = shut.heated(end, mean, o.heat)
	case end.air > h.opens && h.ventMost > 0 && !h.byHand:
		o.vent, end, mean = h.ventToHold(shut, wide, t.twin, d)
	}
	t.twin, t.asked, o.mean = end, o.asked, mean
	return o
}

// Visits are the hours by the sun's clock at which a grower who vents by hand comes by:
// in the morning and at noon the vents are opened if it is warmer inside than they are to
// open at, towards evening they are shut.
var handVisits = [3]int{8, 12, 17}

// visit returns whether vents worked by hand stand open after the visit of this hour.
func (h *house) visit(open bool, clock int, air float64) bool {
	if !h.byHand {
		return false
	}
	switch clock {
	case handVisits[0], handVisits[1]:
		return open || air > h.opens
	case handVisits[2]:
		return false
	}
	return open
}

// Run reckons the place through the hours of h. See Place and Course.
func (c Covered) Run(h *weather.Hours, site sun.Site, s Setting) *Course {
	return c.Watch(h, site, s, nil)
}

// Watch is Run which tells what happened in each hour, for a record hour by hour or an
// account of the heat. With each nil it is Run.
func (c Covered) Watch(h *weather.Hours, site sun.Site, s Setting, each func(Hour)) *Course {
	r := newRun(c, h, site, s)
	for day := range h.Days {
		r.day(day, each)
	}
	return r.course
}

// startOf returns the temperature at which a house begins: the mean of the first day
// outside, or the level that is held, if that is warmer.
func startOf(air []float64, level float64) float64 {
	var sum float64
	n := min(len(air), 24)
	for _, t := range air[:n] {
		sum += t
	}
	return math.Max(sum/math.Max(float64(n), 1), level)
}
