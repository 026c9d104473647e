package desk

import (
	"context"
	"errors"
	"sync"

	"eyeup/civil"
)

// Best is how far the search for the best plans of a season has come, or what it found.
type Best struct {
	Looking  bool // it is still being looked
	Progress Progress
	Answer   *SeasonAnswer // the best plans; nil while it is being looked, and where it failed
	Failed   error         // why nothing was found
	Stopped  bool          // it was stopped, and what was best by then is taken
	Behind   int           // how many entries were written since it began
}

// search is one search for the best plans, going on beside the pages.
type search struct {
	question string // the day and the change it is about
	entries  int    // that the book held when it began
	stop     context.CancelFunc
	done     chan struct{} // closed when it has ended
	opened   kept[string, *SeasonAnswer]

	mu   sync.Mutex
	best Best
}

// searches is the one search of a garden: what it found stands until another begins.
type searches struct {
	mu  sync.Mutex
	now *search // nil before the first
}

// LookForBest begins to look for the best plans of the season as it stands today, with a
// change, and returns at once; see BestOf for how far it is. A search for anything else ends
// with that; one for the same, out of the same entries, goes on. It refuses a change that
// can't be.
func (d *Desk) LookForBest(today civil.Date, c Change) error {
	g := d.Garden()
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
		s.run(ctx, changed, today, c)
	}()
	return nil
}

// run looks for the best plans until they are found, or until it is stopped.
func (s *search) run(ctx context.Context, g *Garden, today civil.Date, c Change) {
	defer close(s.done)
	defer s.stop()
	a, err := Prove(ctx, g, today, func(p Progress) {
		s.mu.Lock()
		defer s.mu.Unlock()
		s.best.Progress = p
	}, KeepingTo(c.Starts), Paying)
	s.mu.Lock()
	defer s.mu.Unlock()
	s.best.Looking, s.best.Answer, s.best.Failed = false, a, err
	if a != nil {
		a.provedBy = nil // the pages write no proof, and it is large
	}
}

// halt stops a search that is still going on.
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

// questionOf tells a question of the season from every other.
func questionOf(today civil.Date, c Change) string { return today.String() + " " + c.String() }

// BestOf tells of the search for the best plans of the season with a change, as it stands
// today; false where none has begun, or another since.
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

// OpenedBest returns the best plans that were found, with the one of a name among them, which may
// stand on the price of early; without a name as they are. It fails where no plan has that name,
// and where none are at hand: none was looked for, or another season was since.
func (d *Desk) OpenedBest(today civil.Date, c Change, plan string) (*SeasonAnswer, error) {
	best, known := d.BestOf(today, c)
	if !known || best.Answer == nil {
		return nil, errors.New("the best plans are not at hand any more; look for them again")
	}
	if plan == "" {
		return best.Answer, nil
	}
	d.best.mu.Lock()
	s := d.best.now
	d.best.mu.Unlock()
	return s.opened.get(plan, func() (*SeasonAnswer, error) { return best.Answer.Opened(plan) })
}

// HoldBest returns the body of the entry by which one of the best plans that were found for the
// season as it stands is followed. See SeasonAnswer.Hold.
func (d *Desk) HoldBest(today civil.Date, plan string) ([]byte, error) {
	a, err := d.OpenedBest(today, Change{}, plan)
	if err != nil {
		return nil, err
	}
	return a.Hold(plan)
}

// StopLooking ends the search for the best plans; what was best by then is taken.
func (d *Desk) StopLooking() {
	d.best.mu.Lock()
	defer d.best.mu.Unlock()
	if d.best.now != nil {
		d.best.now.halt()
	}
}

// stopFor ends a search that is not about what is asked now.
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
