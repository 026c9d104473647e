package desk

import (
	"fmt"
	"strings"

	"eyeup/quantity"
	"eyeup/season"
)

// proofs says of every plan how much better any other could be, and what being early costs.
func (a *SeasonAnswer) proofs(p *page, units quantity.System) {
	for _, plan := range a.Plans {
		if plan.Proof == nil {
			continue // it is followed, and was not looked for
		}
		p.wrap(capital(plan.Name)+": ", plan.Proof.Says+".")
	}
	p.line("")
	p.line("The price of early, best plans from the cheapest to the earliest, " + a.Plans[0].Cost.Currency)
	p.line(fmt.Sprintf("%6s%10s%10s%16s  %s", "weeks", "in all", "heat", "best to within", "held"))
	for _, e := range a.PriceOfEarly {
		p.wrap(fmt.Sprintf("%6s%10.2f%10.2f%16.2f  ", weeks(e.GainWeeks), e.TotalCost, e.HeatCost, e.Proof.Money), heldWords(e.Held, units))
	}
	for _, e := range a.PriceOfEarly {
		if e.Proof.WeekWorth == a.Plans[1].Proof.WeekWorth {
			a.worths(p, e, units)
		}
	}
}

// proved reports whether the best plans were looked for.
func (a *SeasonAnswer) proved() bool {
	return len(a.PriceOfEarly) > 0 && a.PriceOfEarly[0].Proof != nil
}

// heldWords says what is held at what level, and when.
func heldWords(held []season.Held, units quantity.System) string {
	var words []string
	for _, h := range held {
		held := fmt.Sprintf("%s %s %s-%s", h.Place, units.Temperature(h.Level), shortDate(h.From), shortDate(h.To))
		if h.Then != nil {
			held += fmt.Sprintf(", %s from %s", units.Temperature(h.Then.Level), shortDate(h.Then.From))
		}
		words = append(words, held)
	}
	if len(words) == 0 {
		return "no added heat"
	}
	return strings.Join(words, ", ")
}

// worths says what a little more of what is short would be worth.
func (a *SeasonAnswer) worths(p *page, e season.EarlyPoint, units quantity.System) {
	var words []string
	for _, l := range e.Limits {
		more := "1 hour"
		if l.Unit == "m2" {
			more = units.Area(quantity.Area(1))
		}
		words = append(words, fmt.Sprintf("%s of %s in the week of %s, %.2f", more, l.Of, shortDate(l.Week), l.Worth))
	}
	if len(words) > 0 {
		p.wrap("More room: ", fmt.Sprintf("about what one more would be worth where a week of a plant in flower counts %.2f: %s (%s).",
			e.Proof.WeekWorth, strings.Join(words, "; "), a.Plans[0].Cost.Currency))
	}
}
