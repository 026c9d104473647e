package plans

import (
	"eyeup/civil"
	"eyeup/stock"
)

// Earlier returns the earlier of two dates, b where a is zero.
func Earlier(a, b civil.Date) civil.Date {
	if a.IsZero() || b.Before(a) {
		return b
	}
	return a
}

// Later returns the later of two dates.
func Later(a, b civil.Date) civil.Date {
	if b.After(a) {
		return b
	}
	return a
}

// LotSteps are the steps of a season that the book has, by lot.
type LotSteps map[stock.LotID][]stock.Step

// sameSeason is how many days before the decision, or before the first start, a step may lie and still
// belong to the same season.
const sameSeason civil.Days = 30

// StepsFrom returns the steps of a season. from is the day its plan was chosen, or its first start.
func StepsFrom(b *stock.Book, from civil.Date) LotSteps {
	by := LotSteps{}
	for _, s := range b.Steps() {
		if !s.On.Before(from.AddDays(-sameSeason)) {
			by[s.Lot] = append(by[s.Lot], s)
		}
	}
	return by
}

// WayOf returns the way in which a lot was raised: whole, divided or cuttings. isMother is whether it is
// the lot that the plan names, and not a descendant of it.
func WayOf(lot stock.Lot, isMother bool) string {
	way := map[string]string{"divided": "divided", "divided, doubtful": "divided", "struck": "cuttings"}[lot.How]
	if isMother || way == "" {
		return "whole"
	}
	return way
}

// KindsOf are the kinds of entries that record a step, by the step.
var KindsOf = map[string][]string{
	"started": {"started", "woken", "sown", "cuttings taken", "planted out"}, "up": {"up"}, "planted out": {"planted out"}, "first flower": {"first flower"},
}
