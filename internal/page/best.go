package page

import (
	"cmp"
	"fmt"
	"math"
	"net/url"
	"slices"
	"strings"

	"eyeup/internal/desk"
	"eyeup/season"
)

// bestView is the search for the best plans of the season that a page shows.
type bestView struct {
	desk.Best
	Known bool // it has begun
	Shown bool // the page was asked for what it found
}

// Found reports whether the page shows the best plans instead of the everyday ones.
func (b bestView) Found() bool { return b.Shown && b.Answer != nil }

// lookForBest begins the search for the best plans, and leads to the page that shows its
// progress.
func (s *server) lookForBest(r *request) error {
	if err := r.parse(); err != nil {
		return err
	}
	change, err := s.changeOf(r)
	if err != nil {
		return err
	}
	if err := s.desk.LookForBest(s.today(), change); err != nil {
		return err
	}
	r.goTo(bestOf(r.Form))
	return nil
}

// stopLooking ends the search. The best plans it has found are shown.
func (s *server) stopLooking(r *request) error {
	if err := r.parse(); err != nil {
		return err
	}
	s.desk.StopLooking()
	r.goTo(bestOf(r.Form))
	return nil
}

// bestOf is where the best plans of a season are shown, its change kept.
func bestOf(asks url.Values) string { return seasonOf(asks, "best", "yes") + "#best" }

// again is the address that a browser without scripts reloads by itself. It differs from the
// present one: with the same address and an anchor, a browser would not reload.
func (v seasonView) again() string {
	switch {
	case !v.Best.Shown || !v.Best.Looking:
		return ""
	case v.Asks.Get("best") == "yes":
		return seasonOf(v.Asks, "best", "again") + "#best"
	}
	return v.ToBest()
}

// seasonOf is where the season is shown that was asked for, but for one thing.
func seasonOf(asks url.Values, name, value string) string {
	q := url.Values{}
	for name, values := range asks {
		if name != "wrote" {
			q[name] = values
		}
	}
	q.Del(name)
	if value != "" {
		q.Set(name, value)
	}
	return "/season?" + q.Encode()
}

// hidden is a field of a form that nobody sees.
type hidden struct{ Name, Value string }

// Kept is what was asked for, as hidden fields, so that a form asks for it again.
func (v seasonView) Kept() []hidden {
	var all []hidden
	for name, values := range v.Asks {
		if name != "wrote" && name != "best" && values[0] != "" {
			all = append(all, hidden{name, values[0]})
		}
	}
	slices.SortFunc(all, func(a, b hidden) int { return cmp.Compare(a.Name, b.Name) })
	return all
}

// Daily is the address of the everyday plans.
func (v seasonView) Daily() string { return seasonOf(v.Asks, "best", "") }

// ToBest is the address of the best plans.
func (v seasonView) ToBest() string { return bestOf(v.Asks) }

// HowFar says how far the search is.
func (v seasonView) HowFar() string {
	p := v.Best.Progress
	if p.Plan == "" {
		return "First, every place is run through every year of weather."
	}
	says := fmt.Sprintf("Searching: %s. %s compared so far.", p.Plan, things(p.Solves, "way to heat and light", "ways to heat and light"))
	apart := p.Cost - p.Bound
	if math.IsInf(apart, 0) || math.IsNaN(apart) {
		return says
	}
	currency := v.Plan.Cost.Currency
	return says + fmt.Sprintf(" The best so far costs %s in all and gains %.1f weeks of flower a plant. Counting cost and flowers, no plan is more than %s better.",
		money(p.Money, currency), p.Weeks, money(math.Max(0, apart), currency))
}

// Better says by how much another plan could be better at most.
func (v seasonView) Better(p season.Proof) string {
	if p.Money > 0 {
		return "at most " + money(p.Money, v.Plan.Cost.Currency)
	}
	return "nothing"
}

// HeldBy says what a plan on the table of what earlier flowers cost heats, to what and when.
func (v seasonView) HeldBy(e season.EarlyPoint) []string {
	words := []string{}
	for _, h := range e.Held {
		held := fmt.Sprintf("%s %s, %s to %s", h.Place, unbroken(v.display.Units.Temperature(h.Level)), v.display.day(h.From), v.display.day(h.To))
		if h.Then != nil {
			held += fmt.Sprintf(", %s from %s", unbroken(v.display.Units.Temperature(h.Then.Level)), v.display.day(h.Then.From))
		}
		words = append(words, held)
	}
	return words
}

// unbroken keeps a number and its unit on one line.
func unbroken(s string) string { return strings.ReplaceAll(s, " ", "\u00a0") }

// Worth says what one more of something that is short would be worth.
func (v seasonView) Worth(l season.LimitWorth) string {
	more := "one more hour of work"
	if l.Unit == "m2" {
		more = v.display.areaWords(1) + " more of " + l.Of
	}
	return fmt.Sprintf("%s in the week of %s: %s", more, v.display.day(l.Week), money(l.Worth, v.Plan.Cost.Currency))
}

// Short lists what is short in the best plan that counts a week of flower as the usual plan
// does, with what one more would be worth.
func (v seasonView) Short() []season.LimitWorth {
	for _, e := range v.Answer.PriceOfEarly {
		if e.Proof != nil && v.usualWorth() == e.Proof.WeekWorth {
			return e.Limits
		}
	}
	return nil
}

// usualWorth is what a week of flower counts in the usual plan.
func (v seasonView) usualWorth() float64 {
	for _, p := range v.Answer.Plans {
		if p.Name == season.Usual && p.Proof != nil {
			return p.Proof.WeekWorth
		}
	}
	return math.NaN()
}
