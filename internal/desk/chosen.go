package desk

import (
	"context"
	"time"

	"eyeup/civil"
	"eyeup/internal/planting"
)

// Chosen is the planting list that the garden's [patch] asks for, as it was last worked out.
type Chosen struct {
	*planting.PatchAnswer
	Behind int // see Worked
}

// longestChoice is how long a page works on a list. Then it takes the best so far, and says how much
// better another could be.
const longestChoice = 5 * time.Second

// Chosen returns how many places of the patch each variety gets; nil where the garden has no [patch]. As
// with Season, the first list of a day is waited for. While a new one is worked out, the old one is
// returned with Behind set.
func (d *Desk) Chosen(today civil.Date) (*Chosen, error) {
	if d.Site().Garden.Patch == nil {
		return nil, nil
	}
	now := standing{d.written(), today}
	reckon := func() (*planting.PatchAnswer, error) {
		ctx, end := context.WithTimeout(context.Background(), longestChoice)
		defer end()
		return planting.ListOfBook(d.book, ctx, d.Garden(), planting.PatchQuestion{Today: today, Solver: planting.Solver})
	}
	a, rests, known, err := d.chosen.get(now, 0, reckon)
	for !known || rests.today != today || err != nil && rests != now {
		a, rests, known, err = d.chosen.get(now, aMinute, reckon)
	}
	if err != nil {
		return nil, err
	}
	return &Chosen{a, now.entries - rests.entries}, nil
}
