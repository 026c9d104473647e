package plans

import (
	"fmt"
	"strings"

	"eyeup/internal/report"
	"eyeup/quantity"
	"eyeup/season"
)

// proofs prints how much better any other plan could be, plan by plan, and what being early costs.
func (a *SeasonAnswer) proofs(p *report.Page, units quantity.System) {
	for _, plan := range a.Plans {
		if plan.Proof == nil {
			continue // it is followed, and was not searched for
		}
		p.Wrap(report.Capital(plan.Name)+": ", plan.Proof.Says+".")
	}
	p.Line("")
	p.Line("The price of early, best plans from the cheapest to the earliest, " + a.Plans[0].Cost.Currency)
	p.Line(fmt.Sprintf("%6s%10s%10s%16s  %s", "weeks", "total", "heat", "best to within", "held"))
	for _, e := range a.PriceOfEarly {
		p.Wrap(fmt.Sprintf("%6s%10.2f%10.2f%16.2f  ", Weeks(e.GainWeeks), e.TotalCost, e.HeatCost, e.Proof.Money), heldWords(e.Held, units))
	}
	for _, e := range a.PriceOfEarly {
		if e.Proof.WeekWorth == a.Plans[1].Proof.WeekWorth {
			a.worths(p, e, units)
		}
	}
	if a.HeatPays != nil {
		p.Wrap("Heat pays: ", a.PaysWords(units))
	}
}

// PaysWords says from how many plants on heat pays. HeatPays must not be nil.
func (a *SeasonAnswer) PaysWords(units quantity.System) string {
	h := a.HeatPays
	var held []string
	for _, one := range h.Held {
		words := fmt.Sprintf("%s at %s", one.Place, units.Temperature(one.Level))
		if one.Then != nil {
			words += ", then " + units.Temperature(one.Then.Level)
		}
		held = append(held, words)
	}
	how, currency := strings.Join(held, ", "), a.Plans[0].Cost.Currency
	switch {
	case h.Stopped:
		return fmt.Sprintf("the search was stopped before it found from how many plants on heating %s pays.", how)
	case h.From == nil:
		return fmt.Sprintf("heating %s does not pay here, not even with %d plants, if a plant's week in flower is worth %.2f %s; you have %d plants.", how, h.NotWith, h.WeekWorth, currency, h.Plants)
	}
	return fmt.Sprintf("heating %s pays from %d plants on, not yet with %d, if a plant's week in flower is worth %.2f %s; you have %d plants. Worked out for each of %d numbers of plants, with every sort in the same share and benches and hours as they are. No other plan is more than %.2f %s better than the plans compared.",
		how, *h.From, h.NotWith, h.WeekWorth, currency, h.Plants, h.Tried, h.Money, currency)
}

// Proved reports whether the best plans were searched for.
func (a *SeasonAnswer) Proved() bool {
	return len(a.PriceOfEarly) > 0 && a.PriceOfEarly[0].Proof != nil
}

// heldWords says which places are held at which level, and from when to when.
func heldWords(held []season.Held, units quantity.System) string {
	var words []string
	for _, h := range held {
		held := fmt.Sprintf("%s %s %s-%s", h.Place, units.Temperature(h.Level), report.ShortDate(h.From), report.ShortDate(h.To))
		if h.Then != nil {
			held += fmt.Sprintf(", %s from %s", units.Temperature(h.Then.Level), report.ShortDate(h.Then.From))
		}
		words = append(words, held)
	}
	if len(words) == 0 {
		return "no added heat"
	}
	return strings.Join(words, ", ")
}

// worths prints what one more hour or one more unit of bench would be worth where they are short.
func (a *SeasonAnswer) worths(p *report.Page, e season.EarlyPoint, units quantity.System) {
	var words []string
	for _, l := range e.Limits {
		more := "1 hour"
		if l.Unit == "m2" {
			more = units.Area(quantity.Area(1))
		}
		words = append(words, fmt.Sprintf("%s of %s in the week of %s, %.2f", more, l.Of, report.ShortDate(l.Week), l.Worth))
	}
	if len(words) > 0 {
		currency := a.Plans[0].Cost.Currency
		p.Wrap("More room: ", fmt.Sprintf("about what it would be worth in %s, if a plant's week in flower is worth %.2f %s: %s.",
			currency, e.Proof.WeekWorth, currency, strings.Join(words, "; ")))
	}
}
