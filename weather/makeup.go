package weather

import (
	"math"
	"math/rand/v2"

	"eyeup/civil"
	"eyeup/odds"
	"eyeup/quantity"
	"eyeup/sun"
)

// firstMadeUpYear is the calendar year in which made-up weather begins.
const firstMadeUpYear = 2000

// MakeUp generates a record from monthly normals, not measured by anyone: enough calendar
// years for the given number of seasons (one more, since a season begins in the year before),
// always the same for the same seed. Its monthly means over all years equal the normals.
//
// Days are correlated as in Richardson's generator. Such generators vary too little between
// years; the missing variance is added as an offset that changes from month to month.
// Remaining faults: spells are too short, extremes follow a normal distribution, and one set
// of correlations serves all months and places. Only lows and highs are generated; sun is
// estimated from them as for any record without it.
//
// The normals must pass Check and years be 1 to 1000; otherwise the record is empty.
func MakeUp(n Normals, site sun.Site, years int, seed uint64) *Record {
	r := &Record{
		Station: Station{ID: "made-up", Name: "made up from monthly normals",
			Latitude: site.Latitude, Longitude: site.Longitude, Elevation: site.Elevation},
		From: civil.MustOn(firstMadeUpYear, 1, 1), MadeUp: true,
	}
	if n.Check() != nil || years < 1 || years > 1000 {
		return r
	}
	last := civil.MustOn(firstMadeUpYear+years, 12, 31)
	w := newWriter(n, seed, civil.Span{From: r.From, To: last})
	r.Days = w.write()
	if w.repairs > 0 {
		r.Findings = append(r.Findings, Finding{What: "generated days with a high less than 0.5 K above the low, drawn again", Count: w.repairs})
	}
	if w.lost > 0 {
		r.Findings = append(r.Findings, Finding{What: "days for which these normals allow no high above the low: left out", Count: w.lost})
	}
	return r
}

// writer generates the days of a made-up record.
type writer struct {
	span               civil.Span
	lows, highs        [12]float64 // monthly means wanted, °C
	spreadL, spreadH   course      // standard deviation of a day, less the offset's share, K
	offsetL, offsetH   course      // standard deviation of a month's offset, K
	chain              *chain
	again              *chain     // for days that are drawn again
	chance             *rand.Rand // for the months' offsets
	anomalyL, anomalyH []float64  // of each day of the span, K
	repairs            int        // days drawn again
	lost               int        // days that could not be repaired
}

func newWriter(n Normals, seed uint64, span civil.Span) *writer {
	w := &writer{
		span:   span,
		chain:  newChain(odds.Stream(seed, "weather/days")),
		again:  newChain(odds.Stream(seed, "weather/repairs")),
		chance: odds.Stream(seed, "weather/months"),
	}
	w.lows, w.highs = n.celsius()
	w.spread()
	return w
}

// write returns the days. Repairing a day changes the monthly means slightly, and correcting
// them may require another repair, so both are repeated until nothing changes.
func (w *writer) write() []Day {
	w.drawAnomalies()
	lows, highs := w.centred()
	for round := 0; w.repair(lows, highs) && round < mostRounds; round++ {
		lows, highs = w.centred()
	}
	days := make([]Day, w.span.Days())
	for i := range days {
		d := w.span.From.AddDays(civil.Days(i))
		low, high := lows.on(d)+w.anomalyL[i], highs.on(d)+w.anomalyH[i]
		days[i] = Unmeasured()
		if high >= low+leastDay-1e-9 {
			days[i].Low, days[i].High = quantity.Celsius(low), quantity.Celsius(high)
		} else {
			w.lost++
		}
	}
	return days
}

// leastDay is the smallest daily range of generated weather in K. A day with less is drawn
// again, up to mostTries times in each of mostRounds, and then left unmeasured.
const leastDay, mostTries, mostRounds = 0.5, 100, 20

// centred returns the courses that give the wanted monthly means together with the anomalies.
func (w *writer) centred() (lows, highs course) {
	return keeping(w.without(w.lows, w.anomalyL)), keeping(w.without(w.highs, w.anomalyH))
}

// repair redraws days whose high is not well above their low, and reports whether there were
// any.
func (w *writer) repair(lows, highs course) bool {
	before := w.repairs
	for i := range w.anomalyL {
		d := w.span.From.AddDays(civil.Days(i))
		between := highs.on(d) - lows.on(d)
		if between+w.anomalyH[i]-w.anomalyL[i] >= leastDay {
			continue
		}
		w.repairs++
		for range mostTries {
			w.again.start()
			w.anomalyH[i], w.anomalyL[i] = w.spreadH.on(d)*w.again.x[0], w.spreadL.on(d)*w.again.x[1]
			if between+w.anomalyH[i]-w.anomalyL[i] >= leastDay {
				break
			}
		}
	}
	return w.repairs > before
}

// drawAnomalies fills the span with the chain and the months' offsets.
func (w *writer) drawAnomalies() {
	n := int(w.span.Days())
	w.anomalyL, w.anomalyH = make([]float64, n), make([]float64, n)
	before, here, after := w.drawOffset(12), w.drawOffset(1), w.drawOffset(2)
	for i := range n {
		d := w.span.From.AddDays(civil.Days(i))
		if d.Day() == 1 && i > 0 {
			before, here, after = here, after, w.drawOffset(int(d.Month())%12+1)
		}
		h, l := w.chain.next()
		past := (float64(d.Day())-0.5)/float64(lengthOf(d)) - 0.5
		next := after
		if past < 0 {
			next = before
		}
		share := math.Abs(past)
		w.anomalyL[i] = w.spreadL.on(d)*l + here.low + share*(next.low-here.low)
		w.anomalyH[i] = w.spreadH.on(d)*h + here.high + share*(next.high-here.high)
	}
}

// offset is the anomaly of the middle of one month of one year, in K.
type offset struct{ low, high float64 }

// drawOffset draws the offset of a month, 1 to 12.
func (w *writer) drawOffset(month int) offset {
	a := w.chance.NormFloat64()
	b := together*a + math.Sqrt(1-together*together)*w.chance.NormFloat64()
	return offset{low: a * steeper * w.offsetL[month-1], high: b * steeper * w.offsetH[month-1]}
}

// without returns the wanted monthly means minus those of the anomalies.
func (w *writer) without(means [12]float64, anomaly []float64) [12]float64 {
	var sum, count [12]float64
	for i, x := range anomaly {
		m := w.span.From.AddDays(civil.Days(i)).Month() - 1
		sum[m] += x
		count[m]++
	}
	for m := range means {
		means[m] -= sum[m] / count[m]
	}
	return means
}
