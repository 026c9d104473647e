package plans

import (
	"fmt"
	"strings"

	"eyeup/internal/report"
	"eyeup/quantity"
	"eyeup/season"
)

// proofs says of every plan how much better any other could be, and what being early costs.
func (a *SeasonAnswer) proofs(p *report.Page, units quantity.System) {
	for _, plan := range a.Plans {
		if plan.Proof == nil {
			continue // it is followed, and was not looked for
		}
		p.Wrap(report.Capital(plan.Name)+": ", plan.Proof.Says+".")
	}
	p.Line("")
	p.Line("The price of early, best plans from the cheapest to the earliest, " + a.Plans[0].Cost.Currency)
	p.Line(fmt.Sprintf("%6s%10s%10s%16s  %s", "weeks", "in all", "heat", "best to within", "held"))
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

// PaysWords says from how many plants on heat pays, worked out anew for each number.
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
	how := strings.Join(held, ", ")
	switch {
	case h.Stopped:
		return fmt.Sprintf("stopped before it was found from how many plants on heating %s pays.", how)
	case h.From == nil:
		return fmt.Sprintf("heating %s does not pay here, not with %d plants either, where a week of one in flower counts %.2f; here are %d.", how, h.NotWith, h.WeekWorth, h.Plants)
	}
	return fmt.Sprintf("heating %s pays from %d plants on, not yet with %d, where a week of one in flower counts %.2f; here are %d. Worked out anew for each of %d numbers of plants, all sorts in their shares, benches and hands as they are; no plan is more than %.2f better than those it rests on.",
		how, *h.From, h.NotWith, h.WeekWorth, h.Plants, h.Tried, h.Money)
}

// Proved reports whether the best plans were looked for.
func (a *SeasonAnswer) Proved() bool {
	return len(a.PriceOfEarly) > 0 && a.PriceOfEarly[0].Proof != nil
}

// heldWords says what is held at what level, and when.
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

// worths says what a little more of what is short would be worth.
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
		p.Wrap("More room: ", fmt.Sprintf("about what one more would be worth where a week of a plant in flower counts %.2f: %s (%s).",
			e.Proof.WeekWorth, strings.Join(words, "; "), a.Plans[0].Cost.Currency))
	}
}
