package desk

import (
	"fmt"
	"sync"

	"eyeup/civil"
	"eyeup/place"
)

// Worked is a season as it was last worked out.
type Worked struct {
	*SeasonAnswer
	Behind int // how many entries were written since; it is being worked out anew where there are any
}

// seasons keeps the seasons worked out.
type seasons struct {
	kept    kept[string, *SeasonAnswer]
	mu      sync.Mutex
	last    *SeasonAnswer // without a change
	entries int           // that the last rests on
	day     civil.Date
	running bool
	failed  error // why no season could be worked out from so many entries
}

// Season returns the season as it stands today. The first is waited for; later, while a
// new one is worked out after entries were written, the one before it is returned and
// says so. So a page never waits for a season but once.
func (d *Desk) Season(today civil.Date) (Worked, error) {
	entries := d.written()
	s := &d.season
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.entries == entries && s.failed != nil {
		return Worked{}, s.failed
	}
	if s.last == nil || s.day != today {
		s.last, s.failed = Season(d.Garden(), today)
		s.entries, s.day = entries, today
		return Worked{s.last, 0}, s.failed
	}
	if s.entries != entries && !s.running {
		s.running = true
		go d.workAnew(today)
	}
	return Worked{s.last, entries - s.entries}, nil
}

func (d *Desk) workAnew(today civil.Date) {
	entries := d.written()
	a, err := Season(d.Garden(), today)
	s := &d.season
	s.mu.Lock()
	defer s.mu.Unlock()
	s.running = false
	s.last, s.failed, s.entries, s.day = a, err, entries, today
}

// SeasonWith works out the season as it would be with a change.
func (d *Desk) SeasonWith(today civil.Date, c Change) (*SeasonAnswer, error) {
	g := d.Garden()
	key := fmt.Sprintf("%d %v %s", d.written(), today, c)
	return d.season.kept.get(key, func() (*SeasonAnswer, error) {
		changed, err := c.of(g)
		if err != nil {
			return nil, err
		}
		return Season(changed, today, KeepingTo(c.Starts))
	})
}

// Warm works out what the first pages ask for, so that they need not wait. What fails is
// told when it is asked for.
func (d *Desk) Warm(today civil.Date) {
	_, _ = d.Season(today)
	for _, p := range d.Garden().Places {
		if _, covered := p.Model.(place.Covered); covered {
			_, _ = d.Heat(p.Name)
		}
	}
}
