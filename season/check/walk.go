package check

import (
	"math"
	"slices"

	"eyeup/culture"
	"eyeup/growth"
	"eyeup/place"
)

// way is how a batch is raised, as the plan decides it; days are those of the span.
type way struct {
	*needs
	direct  bool
	forGood bool // stays under cover and flowers there
	start   int
	outFrom int // the Monday before which it is not planted out
	safe    int // the day from which the second place is safe
}

// through are the places of a way in one year; store is nil for what waits in none.
type through struct{ store, first, on, ground *place.Course }

// raised is what became of a batch in one year.
type raised struct {
	middle      *plant
	lot         []*plant // its individuals
	handOn, out int      // days; never
	spent       int      // day on which its flowers end by themselves
}

// walk leads a batch through one year, all its plants side by side, hour by hour. The
// middle plant decides when it is moved.
func (w *way) walk(c *calendar, in through) raised {
	lot := lotOf(w.needs)
	r := raised{middle: lot[0], lot: lot[1:], handOn: never, out: never, spent: never}
	w.wait(c, in.store, lot)
	var at *place.Course
	var worthOfDay float64
	for hour := 24 * w.start; hour < len(in.ground.Air); hour++ {
		day := hour / 24
		if hour%24 == 0 {
			if c.isMonday(day) {
				w.move(hour, &r, in.ground)
			}
			at = w.where(day, &r, in)
			coldest := slices.Min(at.Air[hour : hour+24])
			for _, p := range lot {
				if p.leafy(hour) && !p.over {
					p.chill(day, coldest, day < r.out, w.needs)
				}
			}
			worthOfDay = w.kind.LightShare(at.Light[day]) * w.kind.DayLengthShare(at.DayLength[day])
		}
		if w.pass(hour, lot, &r, at, worthOfDay) {
			break
		}
	}
	last := in.ground
	if w.forGood {
		last = in.on
	}
	r.spent = w.spent(last, dayOf(r.middle.bloom))
	return r
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

// wait counts the warmth of the store, from the end of deep rest to the start.
func (w *way) wait(c *calendar, store *place.Course, lot []*plant) {
	if store == nil || w.rooted > 0 || w.kind.Life != culture.Store {
		return
	}
	for hour := 24 * max(c.turn+w.rest, 0); hour < 24*w.start; hour++ {
		counted := w.kind.Sprout.Rate(store.Root[hour]) / 24
		for _, p := range lot {
			p.warm(hour, counted, w.needs)
		}
	}
	for _, p := range lot {
		p.up = never // it has no leaf before it is started
	}
}

// where returns the place in which the batch stands on a day.
func (w *way) where(day int, r *raised, in through) *place.Course {
	switch {
	case day >= r.out:
		return in.ground
	case day >= r.handOn:
		return in.on
	}
	return in.first
}

// pass takes all plants through one hour. It reports whether nothing more is to come.
func (w *way) pass(hour int, lot []*plant, r *raised, at *place.Course, worthOfDay float64) bool {
	day, over := hour/24, true
	warmth, worth := -1.0, -1.0 // reckoned once an hour, when first asked for
	for _, p := range lot {
		if p.over {
			continue
		}
		over = false
		switch {
		case p.up == never && w.direct && day < r.out:
			if w.kind.Life == culture.Store { // it stirs, and has no soil to come through
				p.warmth += w.kind.Sprout.Rate(at.Root[hour]) / 24
			}
		case p.up == never && !w.direct && day < r.out && at.Root[hour] < freezes:
			p.died, p.over = hour, true
		case p.up == never && w.rooted > 0:
			p.root(hour, w.start, w.needs)
		case p.up == never:
			if warmth < 0 {
				warmth = w.kind.Sprout.Rate(at.Root[hour]) / 24
			}
			p.warm(hour, warmth, w.needs)
		case !p.leafy(hour) || hour < p.idle:
		default:
			if worth < 0 {
				worth = w.kind.Grow.Rate(at.Air[hour]) * worthOfDay / 24
			}
			p.grow(hour, worth*w.held(hour, p, r), w.needs)
			p.over = p.bloom != never && (day >= r.out || w.forGood)
		}
	}
	return over
}

// held returns the share of growth left to a plant by its pot, or by having been moved.
func (w *way) held(hour int, p *plant, r *raised) float64 {
	switch {
	case w.forGood:
		return 1
	case hour < 24*r.out:
		return p.inPot(w.needs)
	case p.up >= 24*r.out:
		return 1 // it came up where it stands
	}
	since := float64(hour-24*r.out) / 24
	return growth.TransplantShare(since, w.kind.Transplant.Days, w.kind.Transplant.Share)
}

// move applies the rules of a Monday that begins with the given hour.
func (w *way) move(hour int, r *raised, ground *place.Course) {
	day, m := hour/24, r.middle
	switch {
	case r.out != never || m.died != never:
	case w.direct:
		if day >= w.outFrom && soil(ground, hour) >= w.dormant {
			r.out = day
		}
	case m.up >= hour:
	default:
		if r.handOn == never && day >= w.safe {
			r.handOn = day
		}
		if w.forGood {
			return
		}
		fit := m.ready != never && hour-(m.ready+1) >= 24*w.harden
		if fit && day >= w.outFrom && soil(ground, hour) >= w.leafy {
			r.out, r.handOn = day, min(r.handOn, day)
		}
	}
}

// soil returns the mean of the soil over the seven days before an hour, or the days there are.
func soil(ground *place.Course, hour int) float64 {
	from := max(hour-7*24, 0)
	if from == hour {
		return ground.Root[hour]
	}
	sum := 0.0
	for _, t := range ground.Root[from:hour] {
		sum += t
	}
	return sum / float64(hour-from)
}
