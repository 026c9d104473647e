package logger

import (
	"math"

	"eyeup/place"
)

// apart is the longest gap between two readings, in hours, that is interpolated. Assumption: a
// cellar or room does not change much within three hours.
const apart = 3

// mostDays is more days than any logger records; it keeps a date a century off from filling
// memory.
const mostDays = 20000

// hours collects readings by the hour.
type hours struct {
	first, last          one
	begun                bool
	warm, damp           []float64 // sums
	countWarm, countDamp []int
}

// add adds a reading; false if it is decades after the first, or more than an hour before the
// last. One hour is allowed since at the end of summer time one hour occurs twice.
func (h *hours) add(o one) bool {
	if !h.begun {
		h.first, h.begun = o, true
	} else if before(o, h.last) {
		return false
	}
	days := int(o.date.Sub(h.first.date))
	if days >= mostDays {
		return false
	}
	if !before(h.last, o) || o.date.After(h.last.date) || o.minute > h.last.minute {
		h.last = o
	}
	for len(h.warm) < 24*(days+1) {
		h.warm, h.damp = append(h.warm, 0), append(h.damp, 0)
		h.countWarm, h.countDamp = append(h.countWarm, 0), append(h.countDamp, 0)
	}
	at := 24*days + o.minute/60
	h.warm[at] += o.celsius
	h.countWarm[at]++
	if o.humidKept {
		h.damp[at] += o.humidity
		h.countDamp[at]++
	}
	return true
}

// before reports whether a is more than an hour before b.
func before(a, b one) bool {
	return int(b.date.Sub(a.date))*24*60+b.minute-a.minute > 60
}

// series returns the hourly means, with short gaps filled.
func (h *hours) series() place.Series {
	return place.Series{From: h.first.date, Celsius: means(h.warm, h.countWarm), Humidity: means(h.damp, h.countDamp)}
}

// means divides sums by counts and fills gaps of fewer than apart hours.
func means(sums []float64, counts []int) []float64 {
	all := make([]float64, len(sums))
	last := -1
	for i := range sums {
		if counts[i] == 0 {
			all[i] = math.NaN()
			continue
		}
		all[i] = sums[i] / float64(counts[i])
		if gap := i - last; last >= 0 && gap > 1 && gap <= apart {
			for j := last + 1; j < i; j++ {
				all[j] = all[last] + (all[i]-all[last])*float64(j-last)/float64(gap)
			}
		}
		last = i
	}
	return all
}
