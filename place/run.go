package place

import (
	"math"

	"eyeup/sun"
	"eyeup/weather"
)

// run is one simulation of a house through the hours of a season.
type run struct {
	house   *house
	weather *weather.Hours
	course  *Course

	levels  []float64 // daily, °C
	ground  []float64 // daily, deep under the floor, °C
	capture []float64 // daily factor of the sun in the house over that on the floor

	real  track // with the actual heater
	ideal track // with a heater of unlimited power, while it differs
	apart bool
	hand  handVent
	pot   pot
	warm  *warmPot // nil: no warm bench
}

func newRun(c Covered, h *weather.Hours, site sun.Site, s Setting) *run {
	r := &run{
		house: newHouse(c), weather: h, course: newCourse(h.Span), levels: s.daily(h.Span),
		ground: deepGround(h), capture: c.captures(h.Span, site.Latitude),
	}
	start := r.begin()
	b := c.body()
	r.pot = newPot(b.PotHours, b.PotSun, start)
	if c.WarmBench != nil {
		warm := newWarmPot(r.pot, c.WarmBench)
		r.warm = &warm
		r.course.WarmRoot = make([]float64, len(r.course.Root))
	}
	fillLight(r.course, h, site, float64(c.Cover.Light), c.Lamps)
	return r
}

// begin sets the house to the outside temperature of the first day, or to the level if that is
// warmer, and returns it. After a few days the start makes no difference.
func (r *run) begin() float64 {
	if len(r.levels) == 0 {
		return 0
	}
	start := max(dayMean(r.weather, 0), r.levels[0])
	r.real = track{twin{start, start}, r.house.limit, r.levels[0]}
	return start
}

// Run simulates the place through the hours of h. See Place and Course.
func (c Covered) Run(h *weather.Hours, site sun.Site, s Setting) *Course {
	return c.Watch(h, site, s, nil)
}

// Watch is Run that also reports each hour to each, for an hourly record or a heat balance.
// With each nil it is Run.
func (c Covered) Watch(h *weather.Hours, site sun.Site, s Setting, each func(Hour)) *Course {
	r := newRun(c, h, site, s)
	for day := range r.levels {
		for clock := range 24 {
			r.hour(day, clock, each)
		}
	}
	return r.course
}

// hour advances the house by one hour.
func (r *run) hour(day, clock int, each func(Hour)) {
	i, level := 24*day+clock, r.levels[day]
	d, bench := r.driven(day, clock)
	night := r.weather.Sun[i] <= 0
	v := r.vents(clock, d, night)
	before := r.real
	o := r.house.step(&r.real, d, level, v)
	asked := r.unlimited(before, o, d, level, v)
	r.note(day, i, o, r.house.promise(d, o, level, night), bench)

	c := r.course
	c.AskedKWh[day] += asked / 1000
	c.GivenKWh[day] += o.heat / 1000
	c.WarmBenchKWh[day] += bench / 1000
	if each != nil {
		each(r.record(i, before, o, d, asked, bench))
	}
}

// driven returns the outside influences on the house in an hour, and the power of the warm
// bench.
func (r *run) driven(day, clock int) (d drive, bench float64) {
	i, h := 24*day+clock, r.house
	sun := r.weather.Sun[i]
	if r.warm != nil {
		bench = r.warm.asks(r.real.air, h.light*sun)
	}
	shine := sun * r.capture[day]
	return drive{
		out: r.weather.Air[i], ground: r.ground[day],
		gain: h.lamps[clock] + bench*h.benchToAir + shine*h.sunToAir, floorGain: shine * h.sunToBase,
	}, bench
}

// promise returns the air temperature to report. In an hour of night frost without heat it
// limits the lift above outside to what covers have been measured to give, plus what a warm
// bench and lamps add. In all other hours there is no limit.
func (h *house) promise(d drive, o outcome, level float64, night bool) float64 {
	if !night || d.out > 0 || o.heat > 0 || level > cold && h.limit > 0 {
		return math.Inf(1)
	}
	return d.out + h.frostLift + d.gain/h.night.airLoss
}

// note writes an hour into the course: air, pots, and whether it was short or hot.
func (r *run) note(day, i int, o outcome, promised, bench float64) {
	c, level := r.course, r.levels[day]
	air := o.mean.air
	if air > promised {
		air = promised
		c.HeldBack[day]++
	}
	if o.asked < level {
		level = cold // still warming up to a new level: the hour is not short
	}
	c.Air[i] = air
	c.count(day, air, level)
	sun := r.house.light * r.weather.Sun[i]
	c.Root[i] = r.pot.follow(air, sun)
	if r.warm != nil {
		c.WarmRoot[i] = r.warm.warmed(air, sun, bench)
	}
}

// together is the difference, in K, below which the house and its copy with an unlimited
// heater are simulated as one again.
const together = 1e-6

// unlimited returns the heat that a heater of unlimited power gives in the hour. It is the
// heat of the actual heater while that suffices. From the first hour in which it does not, a
// copy of the house is simulated until both agree again.
func (r *run) unlimited(before track, o outcome, d drive, level float64, v vents) float64 {
	if !r.apart {
		if !o.fell {
			return o.heat
		}
		r.apart, r.ideal = true, before
		r.ideal.limit = math.Inf(1)
	}
	heat := r.house.step(&r.ideal, d, level, v).heat
	r.apart = math.Abs(r.ideal.air-r.real.air) > together || math.Abs(r.ideal.floor-r.real.floor) > together
	return heat
}
