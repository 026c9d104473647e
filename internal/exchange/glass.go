package exchange

import (
	"fmt"

	"eyeup/place"
	"eyeup/quantity"
)

func (g *Garden) readGlass(s *section, p *Place) {
	var c place.Covered
	shaped := g.readShape(s, &c)
	c.Cover = g.readCover(s, due)
	rate, ok := measured(s, "air_changes", due, quantity.ParseRate)
	within(s, "air_changes", rate, ok, 0, mostAir, quantity.Rate.Written)
	c.AirChanges = rate
	c.Heater = g.readHeater(s)
	c.Vent = g.readVent(s, place.Vent{})
	if in := s.sub("screen", free); in != nil {
		saves, _ := measured(in, "saves", due, quantity.ParseShare)
		c.Screen = &place.Screen{Saves: saves}
		in.rest()
	}
	c.WarmBench = g.readWarmBench(s)
	c.Lamps = g.readLamps(s)
	p.Bench = g.readBench(s, "bench")
	if shaped && p.Bench > 3*c.FloorArea() {
		s.refuseKey("bench", "a bench of %s does not fit on a floor of %s; check both", g.System.Area(p.Bench), g.System.Area(c.FloorArea()))
	}
	g.readLevels(s, p)
	if len(p.Levels) > 0 && c.Heater == nil {
		const none = "there is no heater to hold them; "
		s.refuseAs(s.place("levels"), "levels", "levels: "+none+"add heater = { … } or leave the levels out", none+"say what it gives, or leave the levels out")
	}
	p.Model = c
}

// readShape reads the dimensions of a house, and reports whether they are consistent.
func (g *Garden) readShape(s *section, c *place.Covered) bool {
	good := true
	for _, side := range []struct {
		key string
		to  *quantity.Length
	}{{"length", &c.Length}, {"width", &c.Width}, {"eaves", &c.Eaves}, {"ridge", &c.Ridge}} {
		l, ok := measured(s, side.key, due, quantity.ParseLength)
		*side.to = l
		if !within(s, side.key, l, ok, 10*quantity.Centimetre, longest, g.System.Length) {
			good = false
		}
	}
	if good && c.Ridge < c.Eaves {
		s.refuseKey("ridge", "the ridge (%s) is lower than the eaves (%s); both are measured from the ground",
			g.System.Length(c.Ridge), g.System.Length(c.Eaves))
		good = false
	}
	return good
}

// readCover reads the name of a cover, or the figures of a cover of the garden's own.
func (g *Garden) readCover(s *section, n need) place.Cover {
	if s.has("u") || s.has("light") {
		return g.readOwnCover(s)
	}
	name := s.text("cover", n)
	s.get("u", free)
	s.get("light", free)
	cover, known := place.CoverNamed(name)
	if name != "" && !known {
		none := noneOf(name, place.CoverNames())
		s.refuseAs(s.place("cover"), "cover", "cover: "+none+`; or give u = "3.6 W/m2/K" and light = "72%" instead`, none)
	}
	return cover
}

// ownCover is the name of a cover given by its figures. mostLift bounds by how much an
// unheated cover can be warmer than outside on a frost night.
const (
	ownCover = "own"
	mostLift = 2 * quantity.Kelvin
)

func (g *Garden) readOwnCover(s *section) place.Cover {
	if _, both := s.get("cover", free); both {
		s.refuseAs(s.place("cover"), "cover", "cover: a row of the table and own figures (u, light) exclude each other; leave one out",
			fmt.Sprintf("leave it empty, or %s and %s: the two exclude each other", s.called("u"), s.called("light")))
	}
	u, ok := measured(s, "u", due, quantity.ParseTransmittance)
	within(s, "u", u, ok, 0.2, 15, g.System.Transmittance)
	light, ok := measured(s, "light", due, quantity.ParseShare)
	if ok && light == 0 {
		s.refuseKey("light", "a cover must let some light through; give the share of light beneath it")
	}
	return place.Cover{Name: ownCover, U: u, Light: light, FrostLift: mostLift}
}

func (g *Garden) readHeater(s *section) *place.Heater {
	in := s.sub("heater", free)
	if in == nil {
		return nil
	}
	var h place.Heater
	power, ok := measured(in, "power", due, quantity.ParsePower)
	switch {
	case ok && power <= 0:
		in.refuseKey("power", "a heater of %s gives no heat; give its power, or leave the heater out", g.System.Power(power))
	default:
		within(in, "power", power, ok, 0, strongest, g.System.Power)
	}
	h.Power = power
	h.Fuel = in.choice("fuel", due, place.FuelNames()...)
	efficiency, ok := measured(in, "efficiency", free, quantity.ParseShare)
	if ok && efficiency == 0 {
		in.refuseKey("efficiency", "an efficiency of 0%% is not possible; give the useful share of its heat, such as 90%%")
	}
	h.Efficiency = efficiency
	in.rest()
	return &h
}

// readVent reads the ventilation of a house; usual is the default.
func (g *Garden) readVent(s *section, usual place.Vent) place.Vent {
	in := s.sub("vent", free)
	if in == nil {
		return usual
	}
	var v place.Vent
	opens, ok := measured(in, "opens", due, quantity.ParseTemperature)
	if ok {
		g.checkWarmth(in, "opens", opens)
	}
	v.Opens = opens
	v.ByHand = in.choice("by", due, "thermostat", "hand") == "hand"
	most, ok := measured(in, "most", free, quantity.ParseRate)
	if ok && most <= 0 {
		in.refuseKey("most", "a vent must let some air through; give its air changes, or leave the vent out")
	}
	within(in, "most", most, ok, 0, 2*mostAir, quantity.Rate.Written)
	v.Most = most
	in.rest()
	return v
}

func (g *Garden) readWarmBench(s *section) *place.WarmBench {
	in := s.sub("warm_bench", free)
	if in == nil {
		return nil
	}
	var b place.WarmBench
	b.Area = g.readBench(in, "area")
	root, ok := measured(in, "root", due, quantity.ParseTemperature)
	if ok {
		g.checkWarmth(in, "root", root)
	}
	b.Root = root
	power, ok := measured(in, "power", due, quantity.ParsePower)
	if ok && power <= 0 {
		in.refuseKey("power", "a warm bench of %s gives no heat; give its power, or leave it out", g.System.Power(power))
	} else {
		within(in, "power", power, ok, 0, strongest, g.System.Power)
	}
	b.Power = power
	in.rest()
	return &b
}

// readFrame reads a cold frame: its floor, and what differs from a usual frame.
func (g *Garden) readFrame(s *section, p *Place) {
	p.Bench = g.readBench(s, "bench")
	c := place.Frame(max(p.Bench, quantity.SquareFoot))
	if s.has("cover") || s.has("u") || s.has("light") {
		c.Cover = g.readCover(s, free)
	}
	s.get("cover", free)
	s.get("u", free)
	s.get("light", free)
	c.Vent = g.readVent(s, c.Vent)
	p.Model = c
}
