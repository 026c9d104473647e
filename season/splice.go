package season

import (
	"cmp"
	"slices"
	"sync"
)

// splice returns a climate that is one place at a first level up to a day and at a second
// from then on. The run of the one level is put to that of the other: what the house
// still holds of the warmth before the step is left out, a matter of some hours. Plans
// are run again with their setting as it is; this only finds it.
func splice(before, after *climate, day int) *climate {
	if before == after {
		return before
	}
	return &climate{years: before.years, then: after, turn: day}
}

// change is a step that may be made, with the heat it would take.
type change struct {
	Step
	heat float64
}

// held is a house held at a level with a step to or from another, and its warm bench, each
// made when it is first asked for.
type held struct{ house, bench func() *climate }

// withStep holds a place at a level, with a step.
func (m *Planner) withStep(place, level int, s Step) held {
	before, after := m.climate(place, m.setting(place, level)), m.climate(place, m.setting(place, s.Level))
	if s.Up {
		before, after = after, before
	}
	return held{
		sync.OnceValue(func() *climate { return splice(before, after, s.Day) }),
		sync.OnceValue(func() *climate { return splice(before.bench, after.bench, s.Day) }),
	}
}

// bestStep looks for the step of level, up or down, that saves the most heat without
// losing weeks of flower (no more than spared a plant, all plants together), letting
// anything freeze, or crowding a bench.
func (m *Planner) bestStep(place int, at Levels, a Assignment, fits float64) (Step, []Portion, bool) {
	used := m.UsedBy(place, a)
	if m.Given.Places[place].Sort != Glass || at[place] == 0 || used.From == Never {
		return Step{}, nil, false
	}
	plants, value := a.worth()
	for _, c := range m.changes(place, at[place], used) {
		lived, weeks, safe := m.livedIn(a, place, m.withStep(place, at[place], c.Step))
		if safe && weeks > value-spared*float64(plants) && !m.crowds(lived, fits) {
			return c.Step, lived, true
		}
	}
	return Step{}, nil, false
}

// changes lists the steps that save heat, the most saving first.
func (m *Planner) changes(place, level int, used Days) []change {
	full := m.climate(place, m.setting(place, level))
	whole := m.heatOf(full, used)
	var all []change
	for lower := 1; lower < level; lower++ {
		low := m.climate(place, m.setting(place, lower))
		for _, day := range m.stepMondays() {
			if day <= used.From || day >= used.To {
				continue
			}
			for _, up := range []bool{false, true} {
				before, after := full, low
				if up {
					before, after = low, full
				}
				if heat := m.heatBetween(before, after, day, used); heat < whole {
					all = append(all, change{Step{day, lower, up}, heat})
				}
			}
		}
	}
	slices.SortStableFunc(all, func(a, b change) int { return cmp.Compare(a.heat, b.heat) })
	return all
}

// spared is how many weeks of flower a plant may lose to a step that saves heat: half a
// day on the average.
const spared = 0.07

// worth returns the plants of an assignment and the weeks of flower they gain.
func (a Assignment) worth() (plants int, weeks float64) {
	for _, p := range a.Portions {
		plants += p.Count
		weeks += float64(p.Count) * p.gain
	}
	return plants, weeks
}

// livedIn lives through the portions of an assignment with another climate in one place.
// It returns them as they fare, the weeks gained in all, and whether none fares worse in the
// cold than before.
func (m *Planner) livedIn(a Assignment, place int, c held) (lived []Portion, weeks float64, safe bool) {
	for _, p := range a.Portions {
		o := p.option
		if o.route.firstPlace != place && o.route.onPlace != place { // a bench leads to its house
			lived = append(lived, p)
			weeks += float64(p.Count) * p.gain
			continue
		}
		way := *o.route
		if way.firstPlace == place {
			way.first = c.house()
		}
		if way.around == place {
			way.first = c.bench()
		}
		if way.onPlace == place {
			way.on = c.house()
		}
		o.route = &way
		one := live(p.batch.life, o, m.weeksOf(m.baseline(p.batch)), m.ends)
		if one.lost > p.lost || one.cold > p.cold {
			return nil, 0, false
		}
		lived = append(lived, Portion{p.batch, one, p.Count})
		weeks += float64(p.Count) * one.gain
	}
	return lived, weeks, true
}

// crowds reports whether the portions, as they have lived, want more room than there is, on a
// basis of so great a share of years.
func (m *Planner) crowds(lived []Portion, fits float64) bool {
	benches := m.newBenches(fits)
	for _, p := range lived {
		if benches.most(p.outcome, p.Count) < p.Count {
			return true
		}
		benches.take(p.outcome, p.Count)
	}
	return false
}
