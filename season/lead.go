package season

import (
	"eyeup/culture"
	"eyeup/growth"
)

// stage is how far a plant has come.
type stage struct {
	fate
	warmth   float64 // °C·d counted towards coming up
	progress float64 // days at the best temperature
	mark     float64 // the progress at which something is noted next
	checked  int     // the day on which transplanting checked it
	idle     int     // days that it still stands set back
	done     bool    // nothing more becomes of it
}

// walk leads one plant through the year. With a nil schedule it makes the unit's moves.
func (w walker) walk(one individual, moves *schedule) fate {
	s := w.begin(one, moves)
	w.lead(&s, one, moves, w.start, len(w.route.ground.years[w.year].low))
	return s.fate
}

// begin is a plant on the day on which it is started.
func (w walker) begin(one individual, moves *schedule) stage {
	s := stage{fate: newFate(), checked: Never}
	if moves != nil {
		s.handOn, s.framed, s.potted, s.out = moves.handOn, moves.framed, moves.potted, moves.out
	}
	s.warmth, s.mark = w.stored(one, &s.fate), w.nextMark(&s.fate, one)
	return s
}

// lead leads a plant on from one day to the day before another, leg by leg.
func (w walker) lead(s *stage, one individual, moves *schedule, from, to int) {
	ground := &w.route.ground.years[w.year]
	for day := from; day < to && !s.done; {
		if moves == nil {
			w.move(day, &s.fate, ground)
		}
		if day == s.out && s.up != Never {
			s.checked = day
		}
		in := w.stands(s, day)
		end := w.legEnd(s, in, day, to)
		w.leg(s, in, one, moves, day, end)
		day = end
	}
}

// legEnd returns the day on which a leg that begins on a day ends: the next Monday, since things
// are moved on Mondays, or sooner where a schedule or a step of level has it so.
func (w walker) legEnd(s *stage, in *climate, day, to int) int {
	end := min(to, w.nextMonday(day))
	for _, step := range [...]int{s.handOn, s.framed, s.potted, s.out, in.turn} {
		if step > day {
			end = min(end, step)
		}
	}
	return end
}

// leg leads a plant through days on which it stands in one place.
func (w walker) leg(s *stage, in *climate, one individual, moves *schedule, from, to int) {
	at, day := in.on(w.year, from), from
	for ; s.up == Never && !s.done && day < to; day++ {
		w.stirs(s, at, day, one)
	}
	grow, covered, limit := at.grow[w.kind], from < s.out, w.limitOf(from, &s.fate)
	for ; !s.done && day < to; day++ {
		if covered && at.light[day] < w.lightEach*(at.mean[day]-w.lightFrom) {
			s.stretched++
		}
		if w.frozen(at, day, &s.fate, &s.idle); s.died != Never {
			s.done = true
			return
		}
		if s.idle > 0 {
			s.idle--
			continue
		}
		if covered && !w.route.stays {
			s.progress += w.potted(grow[day], s.progress, limit)
		} else {
			s.progress += w.planted(grow[day], day, s.checked)
		}
		if reached(s.progress, s.mark) {
			w.grows(day, s.progress, one, &s.fate)
			s.mark = w.nextMark(&s.fate, one)
		}
		if s.flower != Never && (!covered || w.route.stays) {
			w.flowers(&s.fate, in, moves)
			s.done = true
		}
	}
}

// flowers ends the leading of a plant: what stays under cover may still be handed on, to
// where it flowers itself out.
func (w walker) flowers(f *fate, in *climate, moves *schedule) {
	if !w.route.stays {
		f.spent = w.spent(in, f.flower)
		return
	}
	f.spent = w.spent(w.route.on, f.flower)
	for day := f.flower + 1; moves == nil && f.handOn == Never && day < len(w.route.ground.years[w.year].low); day++ {
		w.move(day, f, nil)
	}
}

// stands returns what a plant stands in on a day.
func (w walker) stands(s *stage, day int) *climate {
	switch {
	case day >= s.out:
		return w.route.ground
	case day >= s.framed:
		return w.route.frame
	case day >= s.handOn:
		return w.route.on
	}
	return w.route.first
}

// stirs leads what is not yet up through a day.
func (w walker) stirs(s *stage, at *yearDays, day int, one individual) {
	switch {
	case w.route.direct && day < s.out:
		if w.Life == culture.Store { // it stirs in the store, but has no soil to come through
			s.warmth += at.sprout[w.kind][day]
		}
		return
	case day < s.out && at.cold[day] < potFreezes:
		s.died, s.done = day, true
		return
	}
	s.warmth += at.sprout[w.kind][day]
	if w.upAfter > 0 {
		w.roots(day, one, &s.fate)
		return
	}
	w.sprouts(day, s.warmth, one, &s.fate)
}

// potFreezes is the pot, in °C, in which what is not yet up freezes.
var potFreezes = culture.Usual("pot.freezes")

// planted returns the growth of one day, in days at the best temperature, of what stands in the
// ground: transplanting sets it back for a while.
func (w walker) planted(rate float64, day, checked int) float64 {
	if checked != Never {
		rate *= growth.TransplantShare(float64(day-checked), w.checkedFor(), w.Transplant.Share)
	}
	return rate
}

// potted returns the growth that a pot leaves of a day's.
func (w walker) potted(rate, progress, limit float64) float64 {
	if progress+rate <= limit*w.flower {
		return rate
	}
	return w.flower * growth.InPot(progress/w.flower, rate/w.flower, limit, w.RateFloor)
}

// checkedFor returns for how many days transplanting sets a plant back.
func (w walker) checkedFor() float64 {
	if w.route.framePlace >= 0 {
		return orElse(w.Transplant.Framed, w.Transplant.Days)
	}
	return w.Transplant.Days
}
