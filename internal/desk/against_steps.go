package desk

import (
	"fmt"
	"slices"

	"eyeup/civil"
	"eyeup/internal/plans"
	"eyeup/stock"
)

// AgainstLot is one batch of the plan followed: a lot, or what is raised of it in one way.
type AgainstLot struct {
	Code, Variety, Kind string
	Count               int // that the plan raises
	Left                int // individuals left
	Steps               []AgainstStep

	how    string
	before int  // plants of the same lot and way in batches that start earlier
	more   bool // whether a batch of the same lot and way starts later
}

// AgainstStep is one step of a batch: when the plan promised it, and what the book has of it.
type AgainstStep struct {
	What    string     // started, up, planted out, first flower
	Planned civil.When // as promised on the day the plan was chosen; of a start, its week
	Done    int        // individuals that the book has at this step
	On      civil.Date // the day on which half had reached it; zero: not yet
	Entry   stock.ID   // the entry of that day
	Days    int        // days later than the middle date, or than its week; below 0: sooner
	Late    bool       // later than promised, or overdue
	Missing bool       // a later step was reached, but nobody wrote this one down
}

// stepsOf are the steps of a batch: its start, then the others by their dates. Stock that is planted
// straight into the ground comes up after planting out.
func stepsOf(line plans.PlanLine) []AgainstStep {
	steps := []AgainstStep{{What: "started"}}
	for _, one := range []AgainstStep{{What: "up", Planned: line.Up}, {What: "planted out", Planned: line.Out}, {What: "first flower", Planned: line.Flower}} {
		if !one.Planned.Middle.IsZero() {
			steps = append(steps, one)
		}
	}
	slices.SortStableFunc(steps[1:], func(x, y AgainstStep) int { return int(x.Planned.Middle.Sub(y.Planned.Middle)) })
	return steps
}

// holdAgainst compares the batch's steps with the steps in the book.
func (l *AgainstLot) holdAgainst(told []stock.Step, today civil.Date) {
	for i := range l.Steps {
		l.Steps[i].reach(told, l)
	}
	reached := false
	for i := len(l.Steps) - 1; i >= 0; i-- {
		s := &l.Steps[i]
		s.Missing = s.On.IsZero() && reached
		s.Late = s.isLate(today) && !s.Missing && (l.Left > 0 || !s.On.IsZero())
		reached = reached || !s.On.IsZero()
	}
}

// reach finds the day on which half of the batch had reached the step. Where several kinds of entries
// record it, the earliest counts.
func (s *AgainstStep) reach(told []stock.Step, l *AgainstLot) {
	for _, kind := range plans.KindsOf[s.What] {
		n := 0
		for _, t := range told {
			if t.Kind != kind {
				continue
			}
			before := n
			n += t.Count
			half := 2*(before-l.before) < l.Count && 2*(n-l.before) >= l.Count
			if half && (s.On.IsZero() || t.On.Before(s.On)) {
				s.On, s.Entry = t.On, t.Entry
			}
		}
		if n = max(0, n-l.before); l.more {
			n = min(n, l.Count)
		}
		s.Done = max(s.Done, n)
	}
	if s.On.IsZero() {
		return
	}
	s.Days = int(s.On.Sub(s.Planned.Middle))
	if s.What == "started" {
		s.Days = int(min(0, s.On.Sub(s.Planned.Early)) + max(0, s.On.Sub(s.Planned.Late)))
	}
}

func (s *AgainstStep) isLate(today civil.Date) bool {
	on := s.On
	if on.IsZero() {
		on = today
	}
	return !s.Planned.Late.IsZero() && on.After(s.Planned.Late)
}

// IsLate reports whether the last step that was reached is late, or a later one is overdue.
func (l AgainstLot) IsLate() bool {
	for i := len(l.Steps) - 1; i >= 0; i-- {
		if !l.Steps[i].On.IsZero() {
			return l.Steps[i].Late || slices.ContainsFunc(l.Steps[i+1:], func(s AgainstStep) bool { return s.Late })
		}
	}
	return slices.ContainsFunc(l.Steps, func(s AgainstStep) bool { return s.Late })
}

// Says says by how many days a step came sooner or later than promised.
func (s AgainstStep) Says() string {
	than, within := "than the middle date", "within the dates promised"
	if s.What == "started" {
		than, within = "than its week", "in its week"
		if s.Days == 0 {
			return within
		}
		return apart(s.Days) + " " + than
	}
	switch {
	case s.On.After(s.Planned.Late):
		within = "later than promised"
	case s.On.Before(s.Planned.Early):
		within = "sooner than promised"
	}
	if s.Days == 0 {
		return "on the middle date"
	}
	return apart(s.Days) + " " + than + ", " + within
}

// apart writes a number of days as later or, below 0, sooner.
func apart(days int) string {
	way := "later"
	if days < 0 {
		days, way = -days, "sooner"
	}
	if days == 1 {
		return "1 day " + way
	}
	return fmt.Sprintf("%d days %s", days, way)
}
