package desk

import (
	"context"
	"errors"
	"sync"

	"eyeup/civil"
	"eyeup/internal/garden"
	"eyeup/internal/plans"
)

// Best is how far the search for the best plans of a season has got, or what it found.
type Best struct {
	Looking  bool // the search is running
	Progress plans.Progress
	Answer   *plans.SeasonAnswer // the best plans; nil while the search is running, and where it failed
	Failed   error               // why nothing was found
	Stopped  bool                // it was stopped, and Answer is the best found by then
	Behind   int                 // how many entries were written since it began
}

// search is one search for the best plans, running in the background.
type search struct {
	question string // the day and the change it is about
	entries  int    // that the book held when it began
	stop     context.CancelFunc
	done     chan struct{} // closed when it has ended
	opened   kept[string, *plans.SeasonAnswer]

	mu   sync.Mutex
	best Best
}

// searches holds the one search of a garden. Its result is kept until another search begins.
type searches struct {
	mu  sync.Mutex
	now *search // nil before the first
}

// LookForBest starts a search for the best plans of the season as it stands today, with a change, and
// returns at once; see BestOf for its progress. It ends a search for anything else. A search for the same,
// from the same entries, goes on. It fails for a change that is not possible.
func (d *Desk) LookForBest(today civil.Date, c Change) error {
	g, followed := d.following()
	changed, err := c.of(g)
	if err != nil {
		return err
	}
	question, entries := questionOf(today, c), d.written()
	d.best.mu.Lock()
	defer d.best.mu.Unlock()
	before := d.best.now
	if before != nil {
		if was := before.tell(); before.question == question && before.entries == entries && was.Failed == nil && !was.Stopped {
			return nil
		}
		before.halt()
	}
	ctx, stop := context.WithCancel(context.Background())
	s := &search{question: question, entries: entries, stop: stop, done: make(chan struct{}), best: Best{Looking: true}}
	d.best.now = s
	go func() {
		if before != nil {
			<-before.done // one at a time
		}
		s.run(ctx, changed, followed, today, c)
	}()
	return nil
}

// run searches until the best plans are found, or until it is stopped.
func (s *search) run(ctx context.Context, g *garden.Garden, followed *plans.Followed, today civil.Date, c Change) {
	defer close(s.done)
	defer s.stop()
	a, err := plans.Prove(ctx, g, followed, today, func(p plans.Progress) {
		s.mu.Lock()
		defer s.mu.Unlock()
		s.best.Progress = p
	}, plans.KeepingTo(c.Starts), plans.Paying)
	s.mu.Lock()
	defer s.mu.Unlock()
	s.best.Looking, s.best.Answer, s.best.Failed = false, a, err
	if a != nil {
		a.DropProof() // the pages write no proof, and it is large
	}
}

// halt stops the search if it is running.
func (s *search) halt() {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.best.Looking {
		s.best.Stopped = true
		s.stop()
	}
}

func (s *search) tell() Best {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.best
}

// questionOf is a key for what is searched for: the day and the change.
func questionOf(today civil.Date, c Change) string { return today.String() + " " + c.String() }

// BestOf returns the progress or result of the search for the best plans of the season with a change. It
// is false where no such search was begun, and where another was begun since.
func (d *Desk) BestOf(today civil.Date, c Change) (Best, bool) {
	entries := d.written()
	d.best.mu.Lock()
	s := d.best.now
	d.best.mu.Unlock()
	if s == nil || s.question != questionOf(today, c) {
		return Best{}, false
	}
	best := s.tell()
	best.Behind = entries - s.entries
	return best, true
}

// OpenedBest returns the best plans that were found, with the plan of a name worked out in full; it may be
// one from the price of early. An empty name opens none. It fails where no plan has that name, and where
// no search was made or another replaced it.
func (d *Desk) OpenedBest(today civil.Date, c Change, plan string) (*plans.SeasonAnswer, error) {
	best, known := d.BestOf(today, c)
	if !known || best.Answer == nil {
		return nil, errors.New("the best plans are no longer kept; search for them again")
	}
	if plan == "" {
		return best.Answer, nil
	}
	d.best.mu.Lock()
	s := d.best.now
	d.best.mu.Unlock()
	return s.opened.get(plan, func() (*plans.SeasonAnswer, error) { return best.Answer.Opened(plan) })
}

// HoldBest returns the body of the entry that follows one of the best plans found for the season as it
// stands. See SeasonAnswer.Hold.
func (d *Desk) HoldBest(today civil.Date, plan string) ([]byte, error) {
	a, err := d.OpenedBest(today, Change{}, plan)
	if err != nil {
		return nil, err
	}
	return a.Hold(plan)
}

// StopLooking ends the search for the best plans and keeps the best found so far.
func (d *Desk) StopLooking() {
	d.best.mu.Lock()
	defer d.best.mu.Unlock()
	if d.best.now != nil {
		d.best.now.halt()
	}
}

// stopFor ends the search unless it is about this question.
func (b *searches) stopFor(question string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.now != nil && b.now.question != question {
		b.now.halt()
	}
}

// rest stops the search and waits for its end.
func (b *searches) rest() {
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.now != nil {
		b.now.halt()
		<-b.now.done
	}
}
