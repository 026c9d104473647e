package season

import (
	"sync"

	"eyeup/culture"
)

// route is the way of a unit through the places, each at one setting.
type route struct {
	name   string
	direct bool // dormant or as seed straight into the ground
	stays  bool // planted under cover for good: it flowers there
	warm   bool // begins in a warm room
	heated bool // passes a place that is heated for the season's sake

	store, first, on, frame, ground              *climate        // store is nil for seed, frame where it hardens without
	firstPlace, onPlace, groundPlace, storePlace int             // indexes into the brief's places
	framePlace                                   int             // where it hardens; -1: carried out and in
	pot                                          *smallPot       // in which it begins, to be potted up; nil: none
	around                                       int             // the house of the warm bench that it begins on; -1: none
	night                                        float64         // °C at which the heated place is held; unheld
	safe                                         map[float64]int // by harm limit, the day from which on is safe
	frostFree                                    map[float64]int // by killing cold, the day from which the frame is safe
}

// onFrom returns the first day from which the second place is safe for young leaves, as
// the record has it: in all but the accepted share of years no colder night follows.
func (r *route) onFrom(l *life) int {
	if r.around >= 0 {
		return 0 // the air of its bench is no warmer
	}
	return r.safe[l.harm]
}

// frameFrom returns the day from which plants that are ready may go into the frame: as long
// before the Monday of planting out as they harden, and once the frame is safe from the frost
// that kills them. Cool nights do no harm there: they are what hardens.
func (o *option) frameFrom(l *life) int {
	weeks := (l.harden + 6) / 7
	return max(o.route.frostFree[l.kill], o.outFrom-7*weeks)
}

// option is one way to raise a batch: a start week and a route.
type option struct {
	route       *route
	start       int // a Monday, in days of the span
	outFrom     int // the Monday before which nothing leafy is planted out
	firstMonday int // of the span
}

func (o *option) isMonday(day int) bool { return (day-o.firstMonday)%7 == 0 }

// nextMonday returns the first Monday after a day.
func (o *option) nextMonday(day int) int { return day + 7 - ((day-o.firstMonday)%7+7)%7 }

// outcome is an option lived through by the middle plant in every year.
type outcome struct {
	option
	life  *life
	lives []fate  // see fates
	gain  float64 // mean weeks of flower gained
	drawn float64 // mean days on which it stands too warm for its light
	lost  int     // years in which it is killed
	cold  int     // years with more nights too cold for leaves than a plant shrugs off
	*later
}

// later is what is computed of an outcome when it is first asked for; several may ask.
type later struct {
	split *split // where a level steps; nil where none does, or the fates are known
	again sync.Once
	room  sync.Once
	need  map[int][]float64 // m² a plant takes, by bench and week
	lot   sync.Once
	lots  [][]fate // individuals, by year
	years sync.Once
	mishaps
}

// shrugged is how many nights below the harm limit a season's plant may see under cover
// before the year counts as one in which it was kept too cold.
var shrugged = int(culture.Usual("cold.shrugged"))

// weeksOfFlower returns the weeks from first flower to the end of the flowering season in
// one year: the day of the first autumn freeze, or when it has flowered itself out.
func weeksOfFlower(f fate, end int) float64 {
	end = min(end, f.spent)
	if f.flower >= end || f.died != Never {
		return 0
	}
	return float64(end-f.flower) / 7
}

// fates returns what becomes of the middle plant, by year. Where a level steps they are found
// again when they are first asked for: there are many such ways, and few are taken.
func (o *outcome) fates() []fate {
	if o.split != nil {
		o.again.Do(func() { o.lives = o.split.joined(o.option).walk(o.life) })
	}
	return o.lives
}

// live walks an option through all years. base holds the weeks of flower of the baseline
// and ends the last day of flowering, for each year.
func live(l *life, o option, base []float64, ends []int) *outcome {
	return fared(l, o, o.walk(l), base, ends)
}

// walk leads the middle plant through all years.
func (o *option) walk(l *life) []fate {
	fates := make([]fate, len(o.route.ground.years))
	for year := range fates {
		fates[year] = walker{life: l, option: o, year: year}.middle()
	}
	return fates
}

// fared sums up how an option fared: see live.
func fared(l *life, o option, fates []fate, base []float64, ends []int) *outcome {
	out := &outcome{option: o, life: l, lives: fates, later: &later{}}
	for year, f := range fates {
		out.gain += weeksOfFlower(f, ends[year]) - base[year]
		out.drawn += float64(f.stretched)
		if f.died < ends[year] {
			out.lost++
		}
		if f.coldNights > shrugged {
			out.cold++
		}
	}
	out.gain /= float64(len(ends))
	out.drawn /= float64(len(ends))
	return out
}

// mishaps counts the years in which an outcome is not as a grower would have it.
type mishaps struct {
	unplanted int // it is never planted out
	late      int // it is not in flower by midsummer
	inPot     int // it flowers before it is planted out
	skipped   int // the second place is never warm enough in time
}

// counted returns its mishaps; summer is the day of midsummer.
func (o *outcome) counted(summer int) *mishaps {
	o.years.Do(func() {
		for _, f := range o.fates() {
			count := func(n *int, is bool) {
				if is {
					*n++
				}
			}
			count(&o.mishaps.unplanted, f.out == Never)
			count(&o.mishaps.late, f.flower >= summer)
			count(&o.mishaps.inPot, f.flower < f.out)
			count(&o.mishaps.skipped, f.handOn == min(f.framed, f.out))
		}
	})
	return &o.mishaps
}
