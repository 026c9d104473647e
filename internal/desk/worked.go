package desk

import (
	"fmt"
	"time"

	"eyeup/civil"
	"eyeup/internal/plans"
	"eyeup/place"
)

// Worked is a season as it was last worked out.
type Worked struct {
	*plans.SeasonAnswer
	Behind int // how many entries were written since; it is being worked out anew where there are any
}

// standing is the state that an answer was worked out from: the number of entries and the day.
type standing struct {
	entries int
	today   civil.Date
}

// Season returns the season as it stands today. The first call of a day waits for it. After entries were
// written, the old season is returned with Behind set while a new one is worked out. An old season that
// failed, or that lacks the held plan chosen since, is waited for instead.
func (d *Desk) Season(today civil.Date) (Worked, error) {
	now := standing{d.written(), today}
	reckon := func() (*plans.SeasonAnswer, error) {
		g, followed := d.following()
		return plans.Season(g, followed, today, plans.Unproved)
	}
	a, rests, known, err := d.season.get(now, 0, reckon)
	for !known || rests.today != today || err != nil && rests != now {
		a, rests, known, err = d.season.get(now, aMinute, reckon)
	}
	if err != nil {
		return Worked{}, err
	}
	last := d.LastDecided()
	for range 3 {
		if !a.IsBefore(last) {
			break
		}
		if a, rests, _, err = d.season.get(now, aMinute, reckon); err != nil {
			return Worked{}, err
		}
	}
	return Worked{a.By(last), now.entries - rests.entries}, nil
}

const aMinute = time.Minute

// SeasonWith works out the season as it would be with a change. A search for the best plans of
// any other season is stopped.
func (d *Desk) SeasonWith(today civil.Date, c Change) (*plans.SeasonAnswer, error) {
	d.best.stopFor(questionOf(today, c))
	g, followed := d.following()
	key := fmt.Sprintf("%d %s", d.written(), questionOf(today, c))
	return d.changed.get(key, func() (*plans.SeasonAnswer, error) {
		changed, err := c.of(g)
		if err != nil {
			return nil, err
		}
		return plans.Season(changed, followed, today, plans.Unproved, plans.KeepingTo(c.Starts))
	})
}

// Warm works out what the first pages need, so that they need not wait. It drops errors: the page that
// asks reports them.
func (d *Desk) Warm(today civil.Date) {
	_, _ = d.Season(today)
	_, _ = d.Outlook(today)
	_, _ = d.Chosen(today)
	for _, p := range d.Site().Places {
		if _, covered := p.Model.(place.Covered); covered {
			_, _ = d.Heat(p.Name)
		}
	}
}
