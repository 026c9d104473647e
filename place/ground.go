package place

import (
	"math"

	"eyeup/quantity"
	"eyeup/sun"
	"eyeup/weather"
)

// Ground is open ground and the temperature of its soil at 10 cm: a damped daily model with a
// term for the sun. Each day the surface S follows the air and the sun, and the soil T follows
// the surface and, slightly, the year's mean air A:
//
//	S    = air + PerMegajoule·max(sun − 2 MJ/m², 0), not below Least
//	T(d) = Lag·T(d−1) + (1−Lag)·(Damping·(A − S) + S)
//
// Source: the soil model of SWAT and EPIC (SWAT theory, ch. 1:1.3); the sun term and Lag are
// fitted to soil measured at Mullingar, under grass. A bare bed may be warmer. The zero value
// stands for UsualGround.
type Ground struct {
	Lag          float64              // share of yesterday's temperature that remains, 0 to below 1
	PerMegajoule float64              // K per MJ/m² of a day's sun above 2
	Least        quantity.Temperature // lowest surface temperature, under snow or while wet soil freezes
	BulkDensity  float64              // of the soil, t/m³
	Water        float64              // in the top metre, mm
}

// UsualGround returns the figures of the table "ground".
func UsualGround() Ground {
	of := func(key string) float64 { return value("ground", "ground."+key) }
	return Ground{
		Lag: of("lag"), PerMegajoule: of("per_megajoule"), Least: quantity.Celsius(of("least")),
		BulkDensity: of("bulk_density"), Water: of("water"),
	}
}

// withoutWarmth is the daily sun that does not warm the surface above the air, MJ/m².
const withoutWarmth = 2.0

// Run returns the course of the open ground: outside air, and the soil at 10 cm, constant
// through each day. The setting is ignored.
func (g Ground) Run(h *weather.Hours, site sun.Site, _ Setting) *Course {
	if g == (Ground{}) {
		g = UsualGround()
	}
	c := newCourse(h.Span)
	copy(c.Air, h.Air)
	fillLight(c, h, site, 1, nil)
	soil := math.NaN()
	mean, draw := yearMean(h), g.draw()
	for day := range c.Light {
		soil = g.next(soil, h, day, mean, draw)
		for i := 24 * day; i < 24*day+24; i++ {
			c.Root[i] = soil
			c.count(day, c.Air[i], cold)
		}
	}
	return c
}

// next returns the soil temperature of a day from that of the day before; NaN starts the
// series.
func (g Ground) next(soil float64, h *weather.Hours, day int, mean, draw float64) float64 {
	var shine float64
	for _, w := range h.Sun[24*day : 24*day+24] {
		shine += w * hour / 1e6
	}
	surface := max(dayMean(h, day)+g.PerMegajoule*max(shine-withoutWarmth, 0), g.Least.Celsius())
	to := draw*(mean-surface) + surface
	if math.IsNaN(soil) {
		return to
	}
	return g.Lag*soil + (1-g.Lag)*to
}

// tenCentimetres is the depth of the soil temperature, in mm.
const tenCentimetres = 100

// draw returns the weight of the year's mean in the soil at 10 cm.
func (g Ground) draw() float64 { return drawAt(tenCentimetres / g.dampingDepth()) }

// drawAt returns the depth factor for a depth in multiples of the damping depth.
func drawAt(depth float64) float64 { return depth / (depth + math.Exp(-0.867-2.078*depth)) }

// dampingDepth returns the depth in mm below which the soil does not follow the seasons.
func (g Ground) dampingDepth() float64 {
	const whole = 1000.0 // depth of the soil that holds Water, mm
	most := g.deepest()
	wet := g.Water / ((0.356 - 0.144*g.BulkDensity) * whole)
	part := (1 - wet) / (1 + wet)
	return most * math.Exp(math.Log(500/most)*part*part)
}

// deepest returns the damping depth of wet soil, in mm.
func (g Ground) deepest() float64 {
	r := g.BulkDensity
	return 1000 + 2500*r/(r+686*math.Exp(-5.63*r))
}
