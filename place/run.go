package place

import (
	"math"

	"eyeup/sun"
	"eyeup/weather"
)

// run is one passage of a house through the hours of a season.
type run struct {
	house   *house
	weather *weather.Hours
	course  *Course

	levels  []float64 // daily, °C
	ground  []float64 // daily: deep under the floor, °C
	capture []float64 // daily: by how much low sun adds to the sun on the floor

	real  track // with the heater there is
	ideal track // with a heater without limit, while it differs
	apart bool
	open  bool // vents worked by hand
	pot   pot
	warm  *warmPot
}

func newRun(c Covered, h *weather.Hours, site sun.Site, s Setting) *run {
	r := &run{house: newHouse(c), weather: h, course: newCourse(h.Span), levels: s.daily(h.Span)}
	r.ground = deepGround(h)
	r.capture = c.captures(h.Span, site.Latitude)
	start := cold
	if len(r.levels) > 0 {
		start = startOf(h.Air, r.levels[0])
		r.real = track{twin{start, start}, r.house.limit, r.levels[0]}
	}
	b := c.body()
	r.pot = newPot(b.PotHours, b.PotSun, start)
	if c.WarmBench != nil {
		warm := newWarmPot(r.pot, c.WarmBench)
		r.warm = &warm
		r.course.WarmRoot = make([]float64, len(r.course.Root))
	}
	r.lightUp(c, site)
	return r
}

// lightUp fills the course's light, day length and lamps.
func (r *run) lightUp(c Covered, site sun.Site) {
	fillLight(r.course, r.weather, site, float64(c.Cover.Light), c.Lamps)
}

// day takes the house through one day.
func (r *run) day(day int, each func(Hour)) {
	w, h, c, level := r.weather, r.house, r.course, r.levels[day]
	var asked, given, warm float64
	for clock := range 24 {
		i := 24*day + clock
		sun := w.Sun[i]
		d := drive{out: w.Air[i], ground: r.ground[day], gain: h.lamps[clock]}
		var bench float64
		if r.warm != nil {
			bench = r.warm.asks(r.real.air, h.light*sun)
			d.gain += bench
		}
		shine := sun * r.capture[day]
		d.gain += shine * h.sunToAir
		d.floorGain = shine * h.sunToBase
		night := sun <= 0
		r.open = h.visit(r.open, clock, r.real.air)

		before := r.real
		o := h.step(&r.real, d, level, night, r.open)
		ideal := r.unlimited(before, o, d, level, night)
		asked, given, warm = asked+ideal, given+o.heat, warm+bench

		air := o.mean.air
		if most := h.promise(d, o, level, night); air > most {
			air = most
			c.HeldBack[day]++
		}
		c.Air[i] = air
		c.Root[i] = r.pot.follow(air, h.light*sun)
		if r.warm != nil {
			c.WarmRoot[i] = r.warm.warmed(air, h.light*sun, bench)
		}
		if o.asked < level {
			c.count(day, air, cold) // still being warmed to a new level
		} else {
			c.count(day, air, level)
		}
		if each != nil {
			each(r.tell(i, before, o, d, ideal, bench, night))
		}
	}
	c.AskedKWh[day], c.GivenKWh[day], c.WarmBenchKWh[day] = asked/1000, given/1000, warm/1000
}

// promise returns the warmest that the air is said to be: no more above the outside, in an
// hour of frost by night without heat, than covers have been measured to be, and what a
// warm bench and lamps add to that. In all other hours it is without limit.
func (h *house) promise(d drive, o outcome, level float64, night bool) float64 {
	if !night || d.out > 0 || o.heat > 0 || level > cold && h.limit > 0 {
		return math.Inf(1)
	}
	return d.out + h.frostLift + d.gain/h.night.airLoss
}

// unlimited returns the heat that a heater without limit gives in the hour. As long as the
// heater there is suffices, that is the same heat; from the first hour in which it does
// not, the house is run beside itself until both agree again.
func (r *run) unlimited(before track, o outcome, d drive, level float64, night bool) float64 {
	if !r.apart {
		if !o.fell {
			return o.heat
		}
		r.apart, r.ideal = true, before
		r.ideal.limit = math.Inf(1)
	}
	heat := r.house.step(&r.ideal, d, level, night, r.open).heat
	r.apart = math.Abs(r.ideal.air-r.real.air) > together || math.Abs(r.ideal.floor-r.real.floor) > together
	return heat
}
