package season

import "fmt"

// hold is how a place is held while it is in use: at one level, or with one step to a lower
// level or up from it.
type hold struct {
	level int // of the place's levels; the higher one
	lower int // the other one; none where there is no step
	up    bool
}

// none is the lower level of a place that is held at one.
const none = -1

// steadyAt holds a place at one level.
func steadyAt(level int) hold { return hold{level: level, lower: none} }

func (h hold) steps() bool { return h.lower != none }

// holds is how every place is held, by its index.
type holds []hold

// steady is every place held at one level.
func steady(l levels) holds {
	all := make(holds, len(l))
	for i, level := range l {
		all[i] = steadyAt(level)
	}
	return all
}

// levels are the levels that count for where plants may stand: the higher ones.
func (h holds) levels() levels {
	all := make(levels, len(h))
	for i, one := range h {
		all[i] = one.level
	}
	return all
}

// with is the same with a step in some places.
func (h holds) with(steps map[int]step) holds {
	all := append(holds(nil), h...)
	for i, s := range steps {
		all[i].lower, all[i].up = s.level, s.up
	}
	return all
}

func (h holds) key() string { return fmt.Sprint([]hold(h)) }

// isOpen reports whether a place has a thermostat to set.
func (m *planner) isOpen(place int) bool {
	return m.Given.Places[place].Sort != Bench && len(m.Given.Places[place].Levels) > 1
}

// stepMondays are the days on which a level may change: every second Monday, counted from the
// one of planting out, from so many weeks before it to so many after.
func (m *planner) stepMondays() []int {
	var all []int
	for week := -stepsBefore; week <= stepsAfter; week += stepEvery {
		if day := m.outFrom + 7*week; day > m.day(m.Given.Today) && day < int(m.Given.Span.Days()) {
			all = append(all, day)
		}
	}
	return all
}

// How far before and after the Monday of planting out a level may change, and how many weeks
// apart the days are on which it may.
const (
	stepsBefore, stepsAfter = 12, 2
	stepEvery               = 2
)

// mostRungs is how many levels a step goes up or down at most.
const mostLevelsApart = 2

// allHolds returns every way to hold a place, cool ones first: at each of its levels, then
// with a step down to a lower one or up from it, at most mostRungs of the levels below.
func (m *planner) allHolds(place int) []hold {
	var all []hold
	for level := range m.Given.Places[place].Levels {
		all = append(all, steadyAt(level))
	}
	for level := range m.Given.Places[place].Levels {
		for lower := max(1, level-mostLevelsApart); lower < level; lower++ {
			all = append(all, hold{level, lower, false}, hold{level, lower, true})
		}
	}
	return all
}

// words tells a hold as a grower sets it.
func (m *planner) words(place int, h hold) string {
	first, second := m.setting(place, h.level).String(), ""
	if h.steps() {
		second = ", then " + m.setting(place, h.lower).String()
	}
	if h.up {
		first, second = m.setting(place, h.lower).String(), ", then "+first
	}
	return first + second
}
