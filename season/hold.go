package season

import "fmt"

// hold is how a place is held while it is in use: at one level, or with one step to a lower
// level or up from it.
type Hold struct {
	Level int // of the place's levels; the higher one
	Lower int // the other one; none where there is no step
	Up    bool
}

// none is the lower level of a place that is held at one.
const none = -1

// steadyAt holds a place at one level.
func SteadyAt(level int) Hold { return Hold{Level: level, Lower: none} }

func (h Hold) Steps() bool { return h.Lower != none }

// holds is how every place is held, by its index.
type Holds []Hold

// steady is every place held at one level.
func Steady(l Levels) Holds {
	all := make(Holds, len(l))
	for i, level := range l {
		all[i] = SteadyAt(level)
	}
	return all
}

// levels are the levels that count for where plants may stand: the higher ones.
func (h Holds) Levels() Levels {
	all := make(Levels, len(h))
	for i, one := range h {
		all[i] = one.Level
	}
	return all
}

// with is the same with a step in some places.
func (h Holds) With(steps map[int]Step) Holds {
	all := append(Holds(nil), h...)
	for i, s := range steps {
		all[i].Lower, all[i].Up = s.Level, s.Up
	}
	return all
}

func (h Holds) Key() string { return fmt.Sprint([]Hold(h)) }

// isOpen reports whether a place has a thermostat to set.
func (m *Planner) IsOpen(place int) bool {
	return m.Given.Places[place].Sort != Bench && len(m.Given.Places[place].Levels) > 1
}

// stepMondays are the days on which a level may change: every second Monday, counted from the
// one of planting out, from so many weeks before it to so many after.
func (m *Planner) stepMondays() []int {
	var all []int
	for week := -stepsBefore; week <= stepsAfter; week += stepEvery {
		if day := m.OutFrom + 7*week; day > m.day(m.Given.Today) && day < int(m.Given.Span.Days()) {
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
func (m *Planner) AllHolds(place int) []Hold {
	var all []Hold
	for level := range m.Given.Places[place].Levels {
		all = append(all, SteadyAt(level))
	}
	for level := range m.Given.Places[place].Levels {
		for lower := max(1, level-mostLevelsApart); lower < level; lower++ {
			all = append(all, Hold{level, lower, false}, Hold{level, lower, true})
		}
	}
	return all
}

// words words a hold as a grower sets it.
func (m *Planner) HoldWords(place int, h Hold) string {
	first, second := m.setting(place, h.Level).String(), ""
	if h.Steps() {
		second = ", then " + m.setting(place, h.Lower).String()
	}
	if h.Up {
		first, second = m.setting(place, h.Lower).String(), ", then "+first
	}
	return first + second
}
