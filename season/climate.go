package season

import (
	"runtime"
	"slices"
	"sync"

	"eyeup/place"
	"eyeup/sun"
	"eyeup/weather"
)

// climate is one place at one setting in every year, reduced to what plants ask of a day.
type climate struct {
	years []yearDays
	bench *climate // its warm bench; nil where it has none

	then *climate // what it is from a day on; nil where it stays the same
	turn int      // that day
}

// on returns the year to look up a day in.
func (c *climate) on(year, day int) *yearDays {
	if c.then != nil && day >= c.turn {
		return &c.then.years[year]
	}
	return &c.years[year]
}

// yearDays is one year of a climate. Slices over days are as long as the span; the outer
// index of sprout and grow is that of the kind.
type yearDays struct {
	sprout [][]float64 // °C·d counted towards coming up
	grow   [][]float64 // share of the best growth, light and day length counted
	high   []float64   // warmest hour of the air, °C
	mean   []float64   // of the air, °C
	light  []float64   // mol/m²
	low    []float64   // coldest hour of the air, °C
	cold   []float64   // coldest hour of pot or soil, °C
	root   []float64   // mean of pot or soil over the past seven days, today left out, °C

	asked, given, lamps []float64 // kWh
	short, worst        []float64 // hours, K
}

// climateOf runs a place at a setting through every year, on as many cores as there are.
func climateOf(model place.Place, setting place.Setting, years []*weather.Hours, site sun.Site, kinds rates) *climate {
	c := &climate{years: make([]yearDays, len(years))}
	bench := make([]yearDays, len(years))
	var wait sync.WaitGroup
	cores := make(chan struct{}, runtime.GOMAXPROCS(0))
	for i, hours := range years {
		cores <- struct{}{}
		wait.Go(func() {
			course := model.Run(hours, site, setting)
			c.years[i] = reduce(course, kinds)
			if course.WarmRoot != nil {
				bench[i] = onBench(course.OnBench(), c.years[i], kinds)
			}
			<-cores
		})
	}
	wait.Wait()
	if len(years) > 0 && bench[0].root != nil {
		c.bench = &climate{years: bench}
	}
	return c
}

// reduce turns a course, hour by hour, into days.
func reduce(course *place.Course, kinds rates) yearDays {
	y := yearDays{
		mean: dailyMean(course.Air), light: course.Light,
		low: lowest(course.Air), high: highest(course.Air), cold: lowest(course.Root), root: pastWeek(course.Root),
		asked: course.AskedKWh, given: course.GivenKWh, lamps: course.LampKWh,
		short: course.HoursShort, worst: course.WorstShort,
	}
	y.sprout, y.grow = kinds.sprout.daily(course.Root), kinds.grow.daily(course.Air)
	for i, kind := range kinds.kinds {
		for d := range y.grow[i] {
			y.grow[i][d] *= kind.LightShare(course.Light[d]) * kind.DayLengthShare(course.DayLength[d])
		}
	}
	return y
}

// onBench is a year on the warm bench of a house whose year is given: the same air and
// light, other roots, and the electricity for heat.
func onBench(course *place.Course, house yearDays, kinds rates) yearDays {
	y := house
	y.cold, y.root, y.sprout = lowest(course.Root), pastWeek(course.Root), kinds.sprout.daily(course.Root)
	y.asked, y.given = course.AskedKWh, course.GivenKWh
	y.lamps, y.short, y.worst = course.LampKWh, course.HoursShort, course.WorstShort
	return y
}

func lowest(hourly []float64) []float64 {
	low := make([]float64, len(hourly)/24)
	for d := range low {
		low[d] = slices.Min(hourly[24*d : 24*d+24])
	}
	return low
}

func highest(hourly []float64) []float64 {
	high := make([]float64, len(hourly)/24)
	for d := range high {
		high[d] = slices.Max(hourly[24*d : 24*d+24])
	}
	return high
}

func dailyMean(hourly []float64) []float64 {
	mean := make([]float64, len(hourly)/24)
	for d := range mean {
		for _, t := range hourly[24*d : 24*d+24] {
			mean[d] += t / 24
		}
	}
	return mean
}

// pastWeek returns for each day the mean over the seven days before it; the first days
// have what days there are, the first its own.
func pastWeek(hourly []float64) []float64 {
	mean := dailyMean(hourly)
	week := make([]float64, len(mean))
	sum := 0.0
	for d := range week {
		days := min(d, 7)
		if days == 0 {
			week[d] = mean[d]
		} else {
			week[d] = sum / float64(days)
		}
		sum += mean[d]
		if d >= 7 {
			sum -= mean[d-7]
		}
	}
	return week
}
