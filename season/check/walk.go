package check

import (
	"eyeup/culture"
	"eyeup/place"
)

// way is how a batch is raised, as the plan decides it; days are those of the span.
type way struct {
	*needs
	direct  bool
	forGood bool // stays under cover and flowers there
	start   int
	outFrom int       // the Monday before which it is not planted out
	safe    int       // the day from which the second place is safe
	small   *smallPot // in which it begins; nil where it is not potted up
	framed  int       // the day from which it may go into the frame to harden; never where there is none
}

// through are the places of a way in one year; store is nil for what waits in none.
type through struct{ store, first, on, frame, ground *place.Course }

// raised is what became of a batch in one year.
type raised struct {
	middle      *plant
	lot         []*plant // its individuals
	handOn, out int      // days; never
	framed      int      // day on which it goes into the frame to harden; never
	potted      int      // day on which it is potted up out of a small pot; never
	spent       int      // day on which its flowers end by themselves
}

// walk leads a batch through one year, all its plants side by side, hour by hour. The
// middle plant decides when it is moved.
func (w *way) walk(c *calendar, in through) raised {
	lot := lotOf(w.needs)
	r := raised{middle: lot[0], lot: lot[1:], handOn: never, framed: never, potted: never, out: never, spent: never}
	w.wait(c, in.store, lot)
	for day := w.start; 24*day < len(in.ground.Air); day++ {
		if c.isMonday(day) {
			w.move(24*day, &r, in.ground)
		}
		if over := w.pass(day, lot, &r, w.where(day, &r, in)); over && !w.waits(&r) {
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

// waits reports whether what flowers under cover is still to be handed on.
func (w *way) waits(r *raised) bool {
	return w.forGood && r.handOn == never && r.middle.died == never
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
	case day >= r.framed:
		return in.frame
	case day >= r.handOn:
		return in.on
	}
	return in.first
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
		fit := w.hardened(day, r)
		if fit && day >= w.outFrom && soil(ground, hour) >= w.leafy {
			r.out, r.handOn = day, min(r.handOn, day)
		} else if w.small != nil && r.potted == never && m.full < hour && day < w.outFrom-lastPotting {
			r.potted = day
		}
	}
}

// lastPotting is how many days before the Monday of planting out nothing is potted up any more.
var lastPotting = int(culture.Usual("pot.last"))

// hardened applies the rule of the frame, and reports whether a batch has hardened on the
// Monday of a day: in the frame, or by having been ready for as long.
func (w *way) hardened(day int, r *raised) bool {
	ready := r.middle.ready < 24*day
	if w.framed == never {
		return ready && 24*day-(r.middle.ready+1) >= 24*w.harden
	}
	if r.framed == never && ready && day >= w.framed {
		r.framed, r.handOn = day, min(r.handOn, day)
	}
	return r.framed != never && day-r.framed >= w.harden
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
