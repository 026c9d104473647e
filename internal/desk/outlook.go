package desk

import (
	"time"

	"eyeup/civil"
	"eyeup/internal/stockbook"
	"eyeup/season"
)

// outlookWait is how long a page waits for an outlook before it does without.
const outlookWait = 15 * time.Millisecond

// Outlook says what to count on when planting out begins, as the book stands today, or as
// it stood some entries ago while it is reckoned anew. It is nil while the first is being
// reckoned.
func (d *Desk) Outlook(today civil.Date) (*stockbook.OutlookAnswer, error) {
	at := d.SafeDay()
	if at.Before(today) {
		at = today
	}
	a, _, _, err := d.outlook.get(standing{d.written(), today}, outlookWait, func() (*stockbook.OutlookAnswer, error) { return d.book.Outlook(today, at) })
	return a, err
}

// OfVariety returns what the outlook says of a variety; nil for nothing.
func OfVariety(a *stockbook.OutlookAnswer, kind, name string) *stockbook.OutlookVariety {
	if a == nil {
		return nil
	}
	for i := range a.Varieties {
		if a.Varieties[i].Kind == kind && a.Varieties[i].Variety == name {
			return &a.Varieties[i]
		}
	}
	return nil
}

// OfLot returns what the lot has lost in store, crate by crate.
func OfLot(a *stockbook.OutlookAnswer, code string) []stockbook.OutlookCrate {
	if a == nil {
		return nil
	}
	var all []stockbook.OutlookCrate
	for _, c := range a.Crates {
		if c.Code == code {
			all = append(all, c)
		}
	}
	return all
}

// ByCrate returns what lots have lost in some crates of a place, crate by crate.
func ByCrate(a *stockbook.OutlookAnswer, place string, crates ...string) map[string][]stockbook.OutlookCrate {
	all := map[string][]stockbook.OutlookCrate{}
	if a == nil {
		return all
	}
	for _, name := range crates {
		all[name] = nil
	}
	for i := range a.Crates {
		c := &a.Crates[i]
		if c.Place != place {
			continue
		}
		if of, wanted := all[c.Crate]; wanted {
			all[c.Crate] = append(of, *c)
		}
	}
	return all
}

// NextOf returns what the plan that is followed, or the usual one, does with a lot next;
// nothing where no season can be worked out.
func (d *Desk) NextOf(code string, today civil.Date) []season.BatchPlan {
	worked, err := d.Season(today)
	if err != nil {
		return nil
	}
	plan, _ := worked.PlanFollowed()
	var all []season.BatchPlan
	for _, b := range plan.Batches {
		if b.Code == code {
			all = append(all, b)
		}
	}
	return all
}
