package season

import (
	"math"

	"eyeup/culture"
)

// never is the day of what does not come to pass.
const Never = math.MaxInt32

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
	return fate{eyed: Never, up: Never, ready: Never, meet: Never, touch: Never, full: Never, potted: Never, handOn: Never, framed: Never, out: Never, flower: Never, died: Never, spent: Never}
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

// spent returns the day on which what flowers in a place has flowered itself out: when it
// has been cut for its weeks, or when the days have been too warm for a week.
func (w walker) spent(in *climate, flower int) int {
	if math.IsNaN(w.StopsAt.Celsius()) {
		return Never
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
	f.up = Never
	return warmth
}

// sprouts notes when eyes show and when the shoot is through.
func (w walker) sprouts(day int, warmth float64, one individual, f *fate) {
	want := w.sprout * one.sprout
	if f.eyed == Never && reached(warmth, want*w.eyed) {
		f.eyed = day
	}
	if f.up == Never && reached(warmth, want) {
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

// marks are the days at best at which something is noted of a plant: fit for planting out, leaves
// meet, they meet in a small pot, which holds the plant back, first flower.
func (w walker) marks(one individual) [5]float64 {
	touch, full := math.Inf(1), math.Inf(1)
	if pot := w.route.pot; pot != nil {
		touch, full = pot.touch, pot.limit
	}
	return [...]float64{w.ready, w.meets, touch, full, w.flower * one.flower}
}

// noted are the days on which a plant came to its marks, in their order.
func (f *fate) noted() [5]*int { return [...]*int{&f.ready, &f.meet, &f.touch, &f.full, &f.flower} }

// nextMark returns the next of its marks that a plant will come to.
func (w walker) nextMark(f *fate, one individual) float64 {
	next := math.Inf(1)
	for i, mark := range w.marks(one) {
		if *f.noted()[i] == Never {
			next = min(next, mark)
		}
	}
	return next
}

// grows notes what the plant has come to.
func (w walker) grows(day int, progress float64, one individual, f *fate) {
	for i, mark := range w.marks(one) {
		if at := f.noted()[i]; *at == Never && reached(progress, mark) {
			*at = day
		}
	}
}

// frames moves to the frame what is ready, so many days before the Monday of planting out
// as it hardens, once killing frost seldom comes into the frame.
func (w walker) frames(day int, f *fate) {
	if f.framed == Never && f.ready < day && day >= w.frameFrom(w.life) {
		f.framed, f.handOn = day, min(f.handOn, day)
	}
}

// slack is how far below a limit the air of a heated place may swing before a night
// counts as too cold: the slack of a thermostat, in K.
var slack = culture.Usual("house.slack")

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
