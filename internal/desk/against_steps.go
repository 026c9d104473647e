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
	Left                int // that stand still
	Steps               []AgainstStep

	how    string
	before int  // of the same lot, raised in the same way, whose turn is first
	more   bool // of them there are whose turn is later
}

// AgainstStep is how far a batch was to come by when, and what the book has of it.
type AgainstStep struct {
	What    string     // started, up, planted out, first flower
	Planned civil.When // as told the day the plan was chosen; a start has its week
	Done    int        // individuals that the book tells of
	On      civil.Date // the day on which half of them were there; none: not yet
	Entry   stock.ID   // that tells of it
	Days    int        // later than even odds, or than its week; below 0: sooner
	Late    bool       // later than was told, or not there though it was to be
	Missing bool       // a later step is there, and nobody wrote this one down
}

// stepsOf are the steps of a batch, its start first, the others in the order in which they
// are to come: what is planted into the ground comes up there.
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

// holdAgainst holds the batch's steps against what the book tells.
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

// reach finds the day on which half of the batch had come so far, by whichever kind of
// entry tells it first.
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

// IsLate reports whether the step that the batch is at, or the last one that came, is late.
func (l AgainstLot) IsLate() bool {
	for i := len(l.Steps) - 1; i >= 0; i-- {
		if !l.Steps[i].On.IsZero() {
			return l.Steps[i].Late || slices.ContainsFunc(l.Steps[i+1:], func(s AgainstStep) bool { return s.Late })
		}
	}
	return slices.ContainsFunc(l.Steps, func(s AgainstStep) bool { return s.Late })
}

// Says tells in words how a step that came lies against what was told.
func (s AgainstStep) Says() string {
	than, within := "than even odds", "within what was told"
	if s.What == "started" {
		than, within = "than its week", "in its week"
		if s.Days == 0 {
			return within
		}
		return apart(s.Days) + " " + than
	}
	switch {
	case s.On.After(s.Planned.Late):
		within = "later than was told"
	case s.On.Before(s.Planned.Early):
		within = "sooner than was told"
	}
	if s.Days == 0 {
		return "on the day of even odds"
	}
	return apart(s.Days) + " " + than + ", " + within
}

// apart says so many days later or sooner.
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
