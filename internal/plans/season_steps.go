package plans

import (
	"eyeup/civil"
	"eyeup/stock"
)

func Earlier(a, b civil.Date) civil.Date {
	if a.IsZero() || b.Before(a) {
		return b
	}
	return a
}

func Later(a, b civil.Date) civil.Date {
	if b.After(a) {
		return b
	}
	return a
}

// LotSteps are the steps of a season, by lot.
type LotSteps map[stock.LotID][]stock.Step

// sameSeason is how long before the decision, or the first start, a step may lie to be of
// the same season.
const sameSeason civil.Days = 30

// StepsFrom are the steps of a season in which a plan was decided on, or first started something,
// on a day.
func StepsFrom(b *stock.Book, from civil.Date) LotSteps {
	by := LotSteps{}
	for _, s := range b.Steps() {
		if !s.On.Before(from.AddDays(-sameSeason)) {
			by[s.Lot] = append(by[s.Lot], s)
		}
	}
	return by
}

// WayOf returns in which way of raising a lot came to be, of those that the plan's own, the
// mother, is raised in.
func WayOf(lot stock.Lot, isMother bool) string {
	way := map[string]string{"divided": "divided", "divided, doubtful": "divided", "struck": "cuttings"}[lot.How]
	if isMother || way == "" {
		return "whole"
	}
	return way
}

// KindsOf are the entries that tell of a step.
var KindsOf = map[string][]string{
	"started": {"started", "woken", "sown", "cuttings taken", "planted out"}, "up": {"up"}, "planted out": {"planted out"}, "first flower": {"first flower"},
}
