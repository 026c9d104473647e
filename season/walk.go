package season

import (
	"math"

	"eyeup/culture"
	"eyeup/growth"
)

// never is the day of what does not come to pass.
const never = math.MaxInt32

// fate is what becomes of one plant in one year; its days are days of the span.
type fate struct {
	eyed, up, ready, meet int // eyes show; through the mix; fit for planting out; leaves meet
	touch, full, potted   int // in a small pot: leaves meet; it holds the plant back; it is potted up
	handOn, framed, out   int // moved to light; to the frame; planted out
	flower, died          int // first flower; killed by cold
	spent                 int // flowering ends by itself: what can't stand heat

	coldNights int // nights before planting out that were too cold for young leaves
	stretched  int // days under cover on which leaves stood too warm for their light
}

// newFate is a plant to which nothing has happened yet.
func newFate() fate {
	return fate{eyed: never, up: never, ready: never, meet: never, touch: never, full: never, potted: never, handOn: never, framed: never, out: never, flower: never, died: never, spent: never}
}

// schedule is when a unit is moved, as its middle plant decides.
type schedule struct{ handOn, framed, potted, out int }

// individual is one plant of the lot: how much warmth it wants to come up, and how many
// days to flower, against the middle one.
type individual struct{ sprout, flower float64 }

// walker leads plants through one year of the places.
type walker struct {
	*life
	*option
	year int
}

// middle walks the middle plant of the lot, whose progress moves the unit.
func (w walker) middle() fate { return w.walk(individual{1, 1}, nil) }

// stage is how far a plant has come.
type stage struct {
	fate
	warmth   float64 // °C·d counted towards coming up
	progress float64 // days at the best temperature
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
	s := stage{fate: newFate(), checked: never}
	if moves != nil {
		s.handOn, s.framed, s.potted, s.out = moves.handOn, moves.framed, moves.potted, moves.out
	}
	s.warmth = w.stored(one, &s.fate)
	return s
}

// lead leads a plant on from one day to the day before another.
func (w walker) lead(s *stage, one individual, moves *schedule, from, to int) {
	ground := &w.route.ground.years[w.year]
	for day := from; day < to && !s.done; day++ {
		if moves == nil {
			w.move(day, &s.fate, ground)
		}
		in := w.stands(s, day)
		at := in.on(w.year, day)
		if day == s.out && s.up != never {
			s.checked = day
		}
		if s.up == never {
			w.stirs(s, at, day, one)
			continue
		}
		if day < s.out && at.light[day] < w.lightEach*(at.mean[day]-w.lightFrom) {
			s.stretched++
		}
		if w.frozen(at, day, &s.fate, &s.idle); s.died != never {
			s.done = true
			return
		}
		if s.idle > 0 {
			s.idle--
			continue
		}
		s.progress += w.grown(at, day, s.progress, s.checked, &s.fate)
		if w.grows(day, s.progress, one, &s.fate); s.flower != never && (s.out <= day || w.route.stays) {
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
	for day := f.flower + 1; moves == nil && f.handOn == never && day < len(w.route.ground.years[w.year].low); day++ {
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

// potFreezes is the pot, in °C, in which what is not yet up freezes. The freezing point of
// dahlia roots was not found; 0 °C is the guard of the trade.
const potFreezes = 0.0

// spent returns the day on which what flowers in a place has flowered itself out: when it
// has been cut for its weeks, or when the days have been too warm for a week.
func (w walker) spent(in *climate, flower int) int {
	if math.IsNaN(w.StopsAt.Celsius()) {
		return never
	}
	warm := 0.0
	for day := flower; day < min(flower+w.cutFor, len(in.years[w.year].high)); day++ {
		warm += in.on(w.year, day).high[day]
		if since := day - 6; since >= flower {
			if warm/7 >= w.StopsAt.Celsius() {
				return day
			}
			warm -= in.on(w.year, since).high[since]
		}
	}
	return flower + w.cutFor
}

// stored counts the warmth of the store from the end of deep rest to the start. What
// comes up in store has no leaf until it is started.
func (w walker) stored(one individual, f *fate) float64 {
	warmth := 0.0
	if w.upAfter > 0 || w.route.store == nil || w.Life != culture.Store { // what is dry does not stir
		return warmth
	}
	store := &w.route.store.years[w.year]
	for day := max(w.rest, 0); day < w.start; day++ {
		warmth += store.sprout[w.kind][day]
		w.sprouts(day, warmth, one, f)
	}
	f.up = never
	return warmth
}

// sprouts notes when eyes show and when the shoot is through.
func (w walker) sprouts(day int, warmth float64, one individual, f *fate) {
	want := w.sprout * one.sprout
	if f.eyed == never && reached(warmth, want*w.eyed) {
		f.eyed = day
	}
	if f.up == never && reached(warmth, want) {
		f.up = day
	}
}

// reached reports whether a sum has come to what is wanted. In a room of steady warmth sums
// meet round figures to the day, and the last digit of many hours must not tip them.
func reached(sum, want float64) bool { return sum >= want*(1-1e-9) }

// roots notes when a cutting stands on its own roots.
func (w walker) roots(day int, one individual, f *fate) {
	if float64(day-w.start) >= float64(w.upAfter)*one.sprout {
		f.up = day
	}
}

// grows notes what the plant has come to.
func (w walker) grows(day int, progress float64, one individual, f *fate) {
	if f.ready == never && reached(progress, w.ready) {
		f.ready = day
	}
	if f.meet == never && reached(progress, w.meets) {
		f.meet = day
	}
	if pot := w.route.pot; pot != nil {
		if f.touch == never && reached(progress, pot.touch) {
			f.touch = day
		}
		if f.full == never && reached(progress, pot.limit) {
			f.full = day
		}
	}
	if f.flower == never && reached(progress, w.flower*one.flower) {
		f.flower = day
	}
}

// move applies the rules of handing on and planting out, which see only the past. What stays
// under cover asks nothing of the ground.
func (w walker) move(day int, f *fate, ground *yearDays) {
	if !w.isMonday(day) {
		return
	}
	if w.route.direct {
		if f.out == never && day >= w.outFrom && ground.root[day] >= w.soilDormant {
			f.out = day
		}
		return
	}
	if f.up >= day {
		return
	}
	if f.handOn == never && day >= w.route.onFrom(w.life) {
		f.handOn = day
	}
	if w.route.stays {
		return
	}
	fit := f.ready != never && day-f.ready > w.harden
	if w.route.framePlace >= 0 {
		w.frames(day, f)
		fit = f.framed != never && day-f.framed >= w.harden
	}
	if f.out == never && fit && day >= w.outFrom && ground.root[day] >= w.soilLeafy {
		f.out, f.handOn = day, min(f.handOn, day)
		return
	}
	w.pots(day, f)
}

// frames moves to the frame what is ready, so many days before the Monday of planting out
// as it hardens, once killing frost seldom comes into the frame.
func (w walker) frames(day int, f *fate) {
	if f.framed == never && f.ready < day && day >= w.frameFrom(w.life) {
		f.framed, f.handOn = day, min(f.handOn, day)
	}
}

// slack is how far below a limit the air of a heated place may swing before a night
// counts as too cold: the slack of a thermostat, in K.
const slack = 0.5

// frozen counts what cold does to leaves today. Frost kills, or sets the plant back.
func (w walker) frozen(at *yearDays, day int, f *fate, idle *int) {
	low := at.low[day]
	if day < f.out && low < w.harm-slack {
		f.coldNights++
	}
	switch {
	case low > w.kill:
	case w.setBack == 0:
		f.died = day
	default:
		*idle = w.setBack
	}
}

// grown returns the growth of one day, in days at the best temperature.
func (w walker) grown(at *yearDays, day int, progress float64, checked int, f *fate) float64 {
	rate := at.grow[w.kind][day]
	if day < f.out && !w.route.stays {
		return w.potted(rate, progress, w.limitOf(day, f))
	}
	if checked != never {
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
