package plans

import (
	"fmt"
	"slices"
	"strings"

	"eyeup/internal/report"
	"eyeup/quantity"
	"eyeup/season"
)

// rest tells what is not covered, short, to get, and assumed.
func (a *SeasonAnswer) rest(p *report.Page, units quantity.System) {
	plan, _ := a.PlanFollowed()
	if len(a.NotCovered) > 0 {
		p.Line("")
		p.Wrap("Not in these plans: ", strings.Join(leftNames(a.NotCovered), "; ")+".")
	}
	if len(a.Growing) > 0 {
		p.Wrap("Growing already: ", GrowingWords(a.Growing, plan))
	}
	p.Wrap("Short: ", strings.Join(shortWords(plan, units), "; ")+".")
	if get := getWords(plan, units); get != "" {
		p.Wrap("To get: ", get)
	}
	if e := plan.BreakEven; e != nil {
		p.Wrap("Heat: ", breakEven(e, plan.Cost.Currency))
	}
	for _, d := range cutWords(plan.Dividing) {
		p.Wrap("Divide: ", d)
	}
	if !plan.DecideBy.IsZero() {
		p.Wrap("Decide: ", decide(plan))
	}
	p.Wrap("Gained against: ", plan.Baseline+".")
	if len(a.Assumptions) > 0 {
		p.Wrap("Rests on: ", assumed(a.Assumptions))
	}
	if !a.Proved() {
		p.Wrap("Better: ", "--prove seeks the best plans, and says how much better any could be.")
	}
	p.Wrap("Care: ", "damp the mix, open bags away from your face; protected circuits by local code; a heater that burns wants fresh air and an alarm.")
}

// breakEven says what a week of flower costs in heat, and when that pays.
func breakEven(e *season.BreakEven, currency string) string {
	if e.PerPlantWeek == nil {
		return fmt.Sprintf("%.2f %s of it gains no weeks over the plan without.", e.Heat, currency)
	}
	words := fmt.Sprintf("%.2f %s gains %s weeks a plant over no heat: %.2f a plant and week.", e.Heat, currency, Weeks(e.WeeksGained), *e.PerPlantWeek)
	switch {
	case e.PaysFrom != nil:
		words += fmt.Sprintf(" At %.2f it pays from about %d plants, by the straight line; here are %d.", *e.PlantWeek, *e.PaysFrom, e.Plants)
	case e.PlantWeek != nil:
		words += " No stems are sold, so it never pays in money."
	}
	return words
}

// cutWords says in one go what is divided and when.
func cutWords(all []season.Dividing) []string {
	if len(all) == 0 {
		return nil
	}
	clumps, pieces, hours := 0, 0, 0.0
	for _, d := range all {
		clumps, pieces, hours = clumps+d.Clumps, pieces+d.Pieces, hours+d.Spring.Hours
	}
	return []string{fmt.Sprintf("%d clumps of %d sorts into %d pieces, %s (%.1f hours): %s.", clumps, len(all), pieces, all[0].Choice, hours, all[0].Why)}
}

// decide says what all plans have in common, and when they part.
func decide(plan *season.Plan) string {
	words := fmt.Sprintf("the plans part in the week of %s.", report.ShortDate(plan.DecideBy))
	if n := len(plan.Shared); n > 0 {
		words += " The same in all: " + report.Counted(n, "start") + "."
	}
	return words
}

// shortWords says what is short, what is short in stock in one go, and the bench of the worst year.
func shortWords(plan *season.Plan, units quantity.System) []string {
	var words, sorts []string
	for _, s := range plan.Shortfalls {
		if s.Of == "stock" {
			sorts = append(sorts, fmt.Sprintf("%s %.0f", s.Variety, s.Short))
			continue
		}
		words = append(words, fmt.Sprintf("%s (%s): %s", ShortWords(s, units), report.ShortDate(s.Week), s.Cure))
	}
	if len(sorts) > 0 {
		words = append(words, "more wanted than can be counted on: "+strings.Join(sorts, ", "))
	}
	if w := plan.Worst; w != nil {
		words = append(words, fmt.Sprintf("in the worst year, %d, %s of %s (%s)", w.Year, units.Area(quantity.Area(w.ShortM2)), w.Place, report.ShortDate(w.Week)))
	}
	if len(words) == 0 {
		return []string{"nothing"}
	}
	return words
}

// assumed says of which kinds something is assumed, what is not known, and what is the
// garden's own.
func assumed(all []season.Assumption) string {
	var kinds, unknown, own []string
	for _, one := range all {
		switch one.Sure {
		case "unknown":
			unknown = append(unknown, one.What+" of "+one.Kind)
		case "own":
			own = append(own, one.What+" of "+one.Kind)
		default:
			if !slices.Contains(kinds, one.Kind) {
				kinds = append(kinds, one.Kind)
			}
		}
	}
	var words []string
	for _, part := range []struct {
		lead  string
		names []string
	}{{"nobody has measured how fast these come up, grow or flower: ", kinds}, {"not known and left out: ", unknown}, {"your own figures: ", own}} {
		if len(part.names) > 0 {
			words = append(words, part.lead+strings.Join(part.names, ", "))
		}
	}
	return strings.Join(words, "; ") + " (eyeup reckon culture)."
}

// GrowingWords says what was started already, kind by kind, and what of it is reckoned.
func GrowingWords(all []season.Growing, plan *season.Plan) string {
	var names []string
	for _, one := range growingKinds(all) {
		names = append(names, fmt.Sprintf("%s of %s in %s", report.Counted(one.Count, string(one.Form)), one.Kind, one.Place))
	}
	return strings.Join(names, ", ") + ". " + growingRule(plan) + "."
}

// growingRule says how a plan reckons with what was started already.
func growingRule(plan *season.Plan) string {
	return fmt.Sprintf("They are taken off what is wanted, and have their room where they stand till the week of %s, when they are planted out; what heat and light they want is not reckoned", report.ShortDate(plan.PlantOutFrom))
}

// growingKinds adds up what was started already by kind, form and place.
func growingKinds(all []season.Growing) []season.Growing {
	var sums []season.Growing
	for _, g := range all {
		at := slices.IndexFunc(sums, func(s season.Growing) bool { return s.Kind == g.Kind && s.Place == g.Place && s.Form == g.Form })
		if at < 0 {
			sums = append(sums, season.Growing{Kind: g.Kind, Form: g.Form, Place: g.Place, Count: g.Count})
			continue
		}
		sums[at].Count += g.Count
	}
	return sums
}

// leftNames says what is not covered, reason by reason.
func leftNames(left []season.NotCovered) []string {
	var whys []string
	of := map[string][]string{}
	for _, n := range left {
		if of[n.Why] == nil {
			whys = append(whys, n.Why)
		}
		of[n.Why] = append(of[n.Why], fmt.Sprintf("%d %s %s %s", n.Count, n.Variety, n.Kind, n.Form))
	}
	for i, why := range whys {
		whys[i] = strings.Join(of[why], ", ") + ": " + why
	}
	return whys
}

// manyOf writes the name of a container, without what else it is called, for one or for many.
func manyOf(name string, n float64) string {
	name, _, _ = strings.Cut(name, " (")
	if n == 1 {
		return name
	}
	if what, of, has := strings.Cut(name, " of "); has {
		return what + "s of " + of
	}
	return name + "s"
}

func need(n season.Need, units quantity.System) string {
	amount := fmt.Sprintf("%.0f %s", n.Amount.Middle, manyOf(n.What, n.Amount.Middle))
	if n.Unit == "L" {
		show := func(x float64) string { return units.Volume(quantity.Volume(x) * quantity.Litre) }
		amount = fmt.Sprintf("%s of %s (%s to %s)", show(n.Amount.Middle), n.What, show(n.Amount.Low), show(n.Amount.High))
	}
	return amount
}

// getWords says what to get by when, and what of it has no price.
func getWords(plan *season.Plan, units quantity.System) string {
	var words []string
	last := ""
	for _, n := range plan.ToGet {
		if n.Unit == "seeds" {
			continue // in the JSON, and asked of eyeup reckon sow
		}
		what := need(n, units)
		if by := "by " + report.ShortDate(n.By) + " "; by != last {
			last, what = by, by+what
		}
		words = append(words, what)
	}
	said := ""
	if len(words) > 0 {
		said = strings.Join(words, "; ") + "."
	}
	if all := slices.Compact(slices.Sorted(slices.Values(plan.Cost.Unpriced))); len(all) > 0 {
		said += " No price for " + strings.Join(all, ", ") + ": not in the sums."
	}
	return strings.TrimSpace(said)
}
