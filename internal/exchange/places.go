package exchange

import (
	"fmt"
	"math"
	"time"

	"github.com/pelletier/go-toml/v2/unstable"

	"eyeup/place"
	"eyeup/quantity"
)

// The plausible range of each setting of a place.
const (
	longest   = 500 * quantity.Metre
	largest   = quantity.Area(longest * longest)
	strongest = 10000 * quantity.Kilowatt
	mostAir   = quantity.Rate(200)
)

var (
	coldest = quantity.Celsius(-30)
	warmest = quantity.Celsius(45)
)

func (g *Garden) readPlaces(top *section) {
	v, there := top.get("place", due)
	if !there {
		return
	}
	if v.kind != unstable.Array || len(v.list) == 0 || v.list[0].group == nil {
		top.refuse(v.at, "write each place under its own line [[place]]")
		return
	}
	for _, one := range v.list {
		if one.group == nil {
			top.refuse(one.at, "expected a place; write its keys under a line [[place]]")
			continue
		}
		s := &section{file: top.file, name: "place", group: one.group, faults: top.faults, part: "place"}
		g.readPlace(s)
	}
}

func (g *Garden) readPlace(s *section) {
	p := Place{Name: s.text("name", due), Line: s.group.at.line}
	if p.Name != "" {
		s.name = fmt.Sprintf("place %q", p.Name)
		if earlier, twice := g.Place(p.Name); twice {
			s.refuseAs(s.place("name"), "name", fmt.Sprintf("name: line %d has a place with the same name; give each its own", earlier.Line), "there is already a place with that name; give each its own")
		}
	}
	p.Sort = Sort(s.choice("sort", due, string(Store), string(Room), string(Glass), string(Frame), string(Ground)))
	s.part = PlacePart(p.Sort)
	switch p.Sort {
	case Store:
		g.readStore(s, &p)
	case Room:
		g.readRoom(s, &p)
	case Glass:
		g.readGlass(s, &p)
	case Frame:
		g.readFrame(s, &p)
	case Ground:
		g.readGround(s, &p)
	default:
		g.Places = append(g.Places, p)
		return // its keys depend on its sort
	}
	s.rest()
	g.Places = append(g.Places, p)
}

func (g *Garden) readStore(s *section, p *Place) {
	p.Model = g.readSteady(s, p, due)
	p.Crates, _ = s.whole("crates", due, 1, mostCrates)
}

func (g *Garden) readRoom(s *section, p *Place) {
	steady := g.readSteady(s, p, free)
	steady.Daylight, _ = measured(s, "daylight", free, quantity.ParseShare)
	steady.Lamps = g.readLamps(s)
	heat, ok := measured(s, "heat", free, quantity.ParseConductance)
	within(s, "heat", heat, ok, 0, 100000, g.System.Conductance)
	steady.HeatPerKelvin = heat
	p.Model = steady
	p.Bench = g.readBench(s, "shelf")
	g.readLevels(s, p)
}

// readSteady reads what stores and rooms have in common. Missing humidity is NaN.
func (g *Garden) readSteady(s *section, p *Place, humidity need) place.Steady {
	var steady place.Steady
	var ok bool
	if steady.Temperature, ok = steadyOrMonthly(s, "temperature", due, quantity.ParseTemperature); ok {
		for _, t := range steady.Temperature {
			if !g.checkWarmth(s, "temperature", t) {
				break
			}
		}
	}
	if steady.Humidity, ok = steadyOrMonthly(s, "humidity", humidity, quantity.ParseShare); !ok {
		for m := range steady.Humidity {
			steady.Humidity[m] = quantity.Share(math.NaN())
		}
	}
	if p.LogFile = s.text("logged", free); p.LogFile != "" {
		steady.Logged = g.readLog(s, p.LogFile)
	}
	return steady
}

// checkWarmth refuses a temperature at which no place for plants is kept.
func (g *Garden) checkWarmth(s *section, key string, t quantity.Temperature) bool {
	if t.Below(coldest) || t.Above(warmest) {
		s.refuseKey(key, "%s is outside %s to %s; check the number and its scale",
			g.System.Temperature(t), g.System.Temperature(coldest), g.System.Temperature(warmest))
		return false
	}
	return true
}

func (g *Garden) readBench(s *section, key string) quantity.Area {
	area, ok := measured(s, key, due, quantity.ParseArea)
	if ok && area <= 0 {
		s.refuseKey(key, "an area of %s has no room for anything; give the area there is", g.System.Area(area))
		return 0
	}
	within(s, key, area, ok, 0, largest, g.System.Area)
	return area
}

func (g *Garden) readLamps(s *section) *place.Lamps {
	in := s.sub("lamps", free)
	if in == nil {
		return nil
	}
	var l place.Lamps
	var area, light, hours, power bool
	l.Area, area = measured(in, "area", due, quantity.ParseArea)
	l.Light, light = measured(in, "light", due, quantity.ParsePhotonFlux)
	var burning time.Duration
	burning, hours = measured(in, "hours", due, quantity.ParseDuration)
	l.Hours = burning.Hours()
	l.Power, power = measured(in, "power", due, quantity.ParsePower)
	if area && light && hours && power {
		if err := l.Check(); err != nil {
			in.refuse(in.group.at, "%v", err)
		}
	}
	in.rest()
	return &l
}

// readLevels reads the heating levels that a plan may choose from.
func (g *Garden) readLevels(s *section, p *Place) {
	v, there := s.get("levels", free)
	if !there {
		return
	}
	if len(v.list) == 0 {
		s.refuseAs(v.at, "levels", `levels: expected a list, such as ["off", "40F", "50F"]`, "expected levels separated by commas, such as off, 40F, 50F")
		return
	}
	for _, one := range v.list {
		if one.kind == unstable.String && one.text == "off" {
			p.Levels = append(p.Levels, place.Off())
			continue
		}
		level, ok := measuredIn(s, "levels", one, quantity.ParseTemperature)
		if !ok {
			continue
		}
		setting := place.Steadily(level)
		if err := setting.Check(); err != nil {
			s.refuseAt(one.at, "levels", "%v", err)
			continue
		}
		p.Levels = append(p.Levels, setting)
	}
}

func (g *Garden) readGround(s *section, p *Place) {
	p.Model = place.UsualGround()
	p.Bench = g.readBench(s, "bench")
	spacing, ok := measured(s, "spacing", due, quantity.ParseLength)
	within(s, "spacing", spacing, ok, quantity.Centimetre, 10*quantity.Metre, g.System.Length)
	p.Spacing = spacing
}
