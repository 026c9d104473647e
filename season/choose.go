package season

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"eyeup/culture"
)

// outcomeKey distinguishes the sets of outcomes that can be computed once.
type outcomeKey struct {
	life   *life
	store  int
	levels string
}

// sortOf tells sorts of batches apart: those of one sort are raised alike and wait in one place.
type sortOf struct {
	life  *life
	store int
}

// earliestWeeks and latestWeeks bound the start weeks that are tried, counted before the
// first Monday of planting out. Beyond some ten weeks a plant in a pot gains nothing.
const (
	earliestWeeks = 18
	latestWeeks   = -3
	// what asks for a frame, a warm bench or a second pot is tried no earlier than this
	earliestVariant = 14
)

// baseline returns the outcome against which gains are counted: dormant stock planted
// when the soil allows, seed sown in the open when frost and soil allow.
func (m *Planner) baseline(b *batch) *outcome {
	return m.baselines.get(sortOf{b.base, b.store}, func() *outcome {
		all := m.routes(b.store, make(Levels, len(m.Given.Places)))
		return m.liveOnce(b.base, m.direct(b.base, all[len(all)-1]), nil)
	})
}

// weeksOf returns the weeks of flower of a baseline in each year, none where there is none.
func (m *Planner) weeksOf(base *outcome) []float64 {
	weeks := make([]float64, len(m.ends))
	if base != nil {
		for i, f := range base.fates() {
			weeks[i] = weeksOfFlower(f, m.ends[i])
		}
	}
	return weeks
}

// direct is the option of putting a batch straight into the ground.
func (m *Planner) direct(l *life, r *route) option {
	from := m.outOf(l)
	if l.setBack > 0 { // dormant below ground frost does not reach it
		from = 0
	}
	return option{route: r, start: m.monday(max(m.newYear, 0)), outFrom: from, firstMonday: m.FirstMonday}
}

// monday returns the first Monday on or after a day.
func (m *Planner) monday(day int) int {
	return day + ((m.FirstMonday-day)%7+7)%7
}

// options lives through every start week and route of a batch at the given levels, once
// for all batches that are alike.
func (m *Planner) options(b *batch, at Levels) []*outcome {
	return m.outcomes.get(outcomeKey{b.life, b.store, fmt.Sprint(at)}, func() []*outcome { return m.optionsAt(b, at) })
}

func (m *Planner) optionsAt(b *batch, at Levels) []*outcome {
	base := m.baseline(b)
	var all []*outcome
	out, pot := m.outOf(b.life), m.smallPot(b.life)
	routes := slices.DeleteFunc(m.routes(b.store, at), func(r *route) bool { return !b.life.goes(r, out) })
	hardens := slices.ContainsFunc(routes, func(r *route) bool { return r.framePlace >= 0 })
	for _, r := range routes {
		if r.direct {
			all = append(all, m.liveOnce(b.life, m.direct(b.life, r), base))
			continue
		}
		for _, start := range m.starts(b.life, out) {
			if (r.framePlace >= 0 || r.around >= 0) && start < out-7*earliestVariant {
				continue
			}
			o := option{route: r, start: start, outFrom: out, firstMonday: m.FirstMonday}
			all = append(all, m.liveOnce(b.life, o, base))
			if pot != nil && r.warm && hardens == (r.framePlace >= 0) && start >= out-7*earliestVariant {
				small := o
				small.route = r.pottedUp(pot)
				all = append(all, m.liveOnce(b.life, small, base))
			}
			if r.framePlace < 0 && m.mayStay(b, r) {
				o.route = r.forGood()
				all = append(all, m.liveOnce(b.life, o, base))
			}
		}
	}
	return all
}

// livedKey distinguishes the ways through the places, each as it is held, that are lived
// through once.
type livedKey struct {
	life                    *life
	base                    *outcome // the baseline that gains are counted against; nil for a baseline
	store, first, on, frame *climate
	places                  [3]int
	start                   int
	outFrom, onFrom, frames int // days from which it may be planted out, handed on, put into the frame
	direct, stays           bool
	pot                     *smallPot
}

// liveOnce lives through an option, once for all levels of places that it does not pass and
// for all seasons of the garden.
func (m *Planner) liveOnce(l *life, o option, base *outcome) *outcome {
	r := o.route
	key := livedKey{
		l, base, r.store, r.first, r.on, r.frame, [3]int{r.firstPlace, r.onPlace, r.framePlace},
		o.start, o.outFrom, r.onFrom(l), o.frameFrom(l), r.direct, r.stays, r.pot,
	}
	return m.recall.lived.get(key, func() *outcome { return live(l, o, m.weeksOf(base), m.ends) })
}

// starts returns the Mondays on which a batch may be started: none before today, none in
// deep rest, none so early that it only stands; corms from the autumn on.
func (m *Planner) starts(l *life, out int) []int {
	first := out - 7*earliestWeeks
	if l.Life == culture.Soak {
		first = m.monday(m.newYear - autumnBefore)
	}
	var all []int
	for start := first; start <= out-7*latestWeeks; start += 7 {
		if start >= max(l.rest, m.day(m.Given.Today.Monday()), 0) {
			all = append(all, start)
		}
	}
	return all
}

// mayStay reports whether a batch may be planted under cover for good: corms in what is
// cool from the first, and fruit under glass where the open ground is seldom warm enough.
func (m *Planner) mayStay(b *batch, r *route) bool {
	if b.life.Life == culture.Soak {
		return r.firstPlace == r.onPlace && !r.warm
	}
	base := m.baseline(b)
	return b.life.Goal == culture.ForFruit && m.Given.Places[r.onPlace].Sort == Glass && 2*base.counted(m.summer).unplanted > len(base.fates())
}

// autumnBefore is how many days before the turn of the year corms are planted at the
// earliest: from October on, half a year later in the south.
var autumnBefore = int(culture.Usual("start.corms"))

// forGood returns the route on which stock stays under cover and flowers there.
func (r *route) forGood() *route {
	stays := *r
	stays.stays = true
	stays.name += ", for good"
	return &stays
}

// admissible reports whether a grower would do it at all: no more years lost to cold or
// kept too cold than the accepted risk, no heated house held below what young leaves
// want, planted out in every year but so many, and not in flower before that.
func (m *Planner) admissible(o *outcome) bool {
	n := o.counted(m.summer)
	if o.route.direct {
		return o.life.upAfter == 0 && 2*n.unplanted <= len(o.fates())
	}
	if o.life.isTooCold(&o.option) {
		return false
	}
	allowed := int(float64(m.Asked.FrostRisk) * float64(len(o.fates())))
	if o.life.Life == culture.Soak && 2*n.late > len(o.fates()) {
		return false // what stops in the heat is not held back until autumn
	}
	if o.lost > allowed || o.cold > allowed || o.route.stays {
		return o.lost <= allowed && o.cold <= allowed
	}
	return n.unplanted <= allowed && 2*n.inPot <= len(o.fates()) && (o.route.firstPlace == o.route.onPlace || 2*n.skipped <= len(o.fates()))
}

// isTooCold reports whether a way holds a heated place below what young leaves want.
func (l *life) isTooCold(o *option) bool {
	return o.route.night != unheld && o.route.night < l.night-slack && (o.route.firstPlace == o.route.onPlace || o.route.around >= 0)
}

// alike is how many weeks of flower make no difference to the choice.
const alike = 0.25

// sturdy is how many stretched days more or less make no difference to the choice.
const sturdy = 3.0

// byGain puts the best first: most weeks of flower; of those within alike the unheated, those
// with fewer stretched days, and the latest.
func byGain(all []*outcome) []*outcome {
	sorted := slices.Clone(all)
	best := math.Inf(-1)
	for _, o := range all {
		best = max(best, o.gain)
	}
	step := func(o *outcome) int { return int((best - o.gain) / alike) }
	slices.SortStableFunc(sorted, func(a, b *outcome) int {
		return cmp.Or(cmp.Compare(step(a), step(b)), compareBool(a.route.heated, b.route.heated),
			cmp.Compare(math.Round(a.drawn/sturdy), math.Round(b.drawn/sturdy)), cmp.Compare(b.start, a.start), cmp.Compare(a.route.name, b.route.name))
	})
	return sorted
}

// weeksBefore returns how many weeks before planting out begins it is started.
func (o *outcome) weeksBefore() float64 { return float64(o.outFrom-o.start) / 7 }

// byCustom puts the usual first: a start so many weeks before planting out as is common
// for the kind, warm first and then a bright place. What is started later than usual and
// gains less than the open ground comes after the open ground.
func byCustom(weeks func(*life) (from, to float64)) func([]*outcome) []*outcome {
	return func(all []*outcome) []*outcome {
		sorted := slices.Clone(all)
		off := func(o *outcome) float64 {
			if o.route.direct && o.life.Life == culture.Soak {
				return 0 // corms go into the open before the last frost
			}
			if o.route.direct {
				return math.Inf(1)
			}
			from, to := weeks(o.life)
			return math.Abs(o.weeksBefore() - (from+to)/2)
		}
		belated := func(o *outcome) bool {
			from, _ := weeks(o.life)
			return !o.route.direct && o.gain < 0 && o.weeksBefore() < from
		}
		slices.SortStableFunc(sorted, func(a, b *outcome) int {
			return cmp.Or(compareBool(belated(a), belated(b)), cmp.Compare(math.Floor(off(a)+0.5), math.Floor(off(b)+0.5)), cmp.Compare(a.custom(), b.custom()),
				cmp.Compare(b.gain, a.gain), cmp.Compare(a.route.name, b.route.name))
		})
		return sorted
	}
}

// custom ranks an outcome by what is usual: warm and then heated glass, then a cold cover,
// then lamps, then glass from first to last, then the ground; corms straight into the ground.
func (o *outcome) custom() int {
	r := o.route
	switch {
	case r.direct && o.life.Life == culture.Soak:
		return -1
	case r.direct:
		return 4
	case r.firstPlace != r.onPlace && r.heated:
		return 0
	case r.firstPlace != r.onPlace:
		return 1
	case !r.heated:
		return 2
	}
	return 3
}

func compareBool(a, b bool) int {
	switch {
	case a == b:
		return 0
	case b:
		return -1
	}
	return 1
}

func sortedCopy(days []int) []int {
	s := slices.Clone(days)
	slices.Sort(s)
	return s
}
