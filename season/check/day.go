package check

import (
	"math"
	"slices"

	"eyeup/culture"
	"eyeup/growth"
	"eyeup/place"
)

// pass takes all plants through one day in a place. It reports whether nothing more is to come.
func (w *way) pass(day int, lot []*plant, r *raised, at *place.Course) (over bool) {
	coldest := slices.Min(at.Air[24*day : 24*day+24])
	asked := w.kind.LightFor(sum(at.Air[24*day:24*day+24]) / 24)
	for _, p := range lot {
		if p.leafy(24*day) && !p.over {
			if day < r.out && at.Light[day] < asked {
				p.drawn++
			}
			p.chill(day, coldest, day < r.out, w.needs)
		}
	}
	inPlace := w.kind.LightShare(at.Light[day]) * w.kind.DayLengthShare(at.DayLength[day])
	for hour := 24 * day; hour < 24*day+24; hour++ {
		warmth := w.kind.Sprout.Rate(at.Root[hour]) / 24
		worth := math.NaN() // computed when a leaf first asks for it
		for _, p := range lot {
			switch {
			case p.over || p.leafy(hour) && hour < p.idle:
			case p.up == never:
				w.rise(hour, p, r, at.Root[hour], warmth)
			case p.leafy(hour):
				if math.IsNaN(worth) {
					worth = w.kind.Grow.Rate(at.Air[hour]) * inPlace / 24
				}
				p.grow(hour, worth*w.held(hour, p, r, worth), w)
				p.over = p.bloom != never && (day >= r.out || w.forGood)
			}
		}
	}
	return !slices.ContainsFunc(lot, func(p *plant) bool { return !p.over })
}

// rise takes a plant that is not up through an hour among roots of a temperature that counts
// for so much warmth.
func (w *way) rise(hour int, p *plant, r *raised, celsius, warmth float64) {
	inGround := hour >= 24*r.out
	switch {
	case w.direct && !inGround:
		if w.kind.Life == culture.Store { // it stirs, and has no soil to come through
			p.warmth += warmth
		}
	case !inGround && celsius < freezes:
		p.died, p.over = hour, true
	case w.rooted > 0:
		p.root(hour, w.start, w.needs)
	default:
		p.warm(hour, warmth, w.needs)
	}
}

// held returns the share of an hour's growth, worth so many days at best, that is left to a plant by
// its pot, or by having been moved.
func (w *way) held(hour int, p *plant, r *raised, worth float64) float64 {
	switch {
	case w.forGood:
		return 1
	case hour < 24*r.out:
		return p.inPot(w, w.small != nil && hour < 24*r.potted, worth)
	case p.up >= 24*r.out:
		return 1 // it came up where it stands
	}
	since := float64(hour-24*r.out) / 24
	days := w.kind.Transplant.Days
	if w.framed != never {
		days = orElse(w.kind.Transplant.Framed, days)
	}
	return growth.TransplantShare(since, days, w.kind.Transplant.Share)
}

// spent returns the day on which what can't stand heat has flowered itself out: when it has been
// cut for its weeks, or the highs of seven days on end have been too warm in the mean.
func (w *way) spent(at *place.Course, bloom int) int {
	stops := w.kind.StopsAt.Celsius()
	if bloom == never || math.IsNaN(stops) {
		return never
	}
	for day := bloom + 6; day < min(bloom+w.cutFor, len(at.Light)); day++ {
		highs := 0.0
		for d := day - 6; d <= day; d++ {
			highs += slices.Max(at.Air[24*d : 24*d+24])
		}
		if highs/7 >= stops {
			return day
		}
	}
	return bloom + w.cutFor
}
