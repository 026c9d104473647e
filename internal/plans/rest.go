package plans

import (
	"fmt"
	"slices"
	"strings"

	"eyeup/internal/report"
	"eyeup/quantity"
	"eyeup/season"
)

// rest prints what stands below the batches: what is not covered, short, to get, and assumed.
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
	p.Wrap("Weeks gained: ", "over "+plan.Baseline+".")
	if len(a.Assumptions) > 0 {
		p.Wrap("Assumed: ", assumed(a.Assumptions))
	}
	if !a.Proved() {
		p.Wrap("Better: ", "--prove searches for the best plans and says how good they are.")
	}
	p.Wrap("Safety: ", "damp the mix; open bags away from your face; use protected circuits; a burning heater needs fresh air and an alarm.")
}

// breakEven says what a plant's week of flower costs in heat, and from how many plants that pays.
func breakEven(e *season.BreakEven, currency string) string {
	if e.PerPlantWeek == nil {
		return fmt.Sprintf("%.2f %s of heat gains no weeks over the plan without heat.", e.Heat, currency)
	}
	words := fmt.Sprintf("%.2f %s gains %s weeks a plant over no heat: %.2f %s a plant's week.", e.Heat, currency, Weeks(e.WeeksGained), *e.PerPlantWeek, currency)
	switch {
	case e.PaysFrom != nil:
		words += fmt.Sprintf(" If it sells for %.2f, heat pays from about %d plants; you have %d.", *e.PlantWeek, *e.PaysFrom, e.Plants)
	case e.PlantWeek != nil:
		words += " No stems are sold, so heat never pays in money."
	}
	return words
}

// cutWords says in one sentence what is divided and when; nothing where nothing is divided.
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

// decide says from which week the plans differ, and what they have in common until then.
func decide(plan *season.Plan) string {
	words := fmt.Sprintf("the plans differ from the week of %s on.", report.ShortDate(plan.DecideBy))
	if n := len(plan.Shared); n > 0 {
		words += " All of them share " + report.Counted(n, "start") + "."
	}
	return words
}

// shortWords says what is short: room and hours one by one, stock in one sentence, then the fullest bench
// of the worst year.
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
		words = append(words, "fewer in stock than wanted: "+strings.Join(sorts, ", "))
	}
	if w := plan.Worst; w != nil {
		words = append(words, fmt.Sprintf("in the worst year, %d, %s is %s short (%s)", w.Year, w.Place, units.Area(quantity.Area(w.ShortM2)), report.ShortDate(w.Week)))
	}
	if len(words) == 0 {
		return []string{"nothing"}
	}
	return words
}

// assumed says for which kinds a figure is assumed, which figures are not known, and which are the
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

// GrowingWords says what was started already, kind by kind, and how the plan counts it.
func GrowingWords(all []season.Growing, plan *season.Plan) string {
	var names []string
	for _, one := range growingKinds(all) {
		names = append(names, fmt.Sprintf("%s of %s in %s", report.Counted(one.Count, string(one.Form)), one.Kind, one.Place))
	}
	return strings.Join(names, ", ") + ". " + growingRule(plan) + "."
}

// growingRule says how a plan counts what was started already.
func growingRule(plan *season.Plan) string {
	return fmt.Sprintf("They count towards what is wanted. They keep their room until they are planted out in the week of %s. The heat and light they need are not counted", report.ShortDate(plan.PlantOutFrom))
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

// leftNames lists what is not covered, one text for each reason.
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

// manyOf writes the name of a container in the singular or plural, without the other names in brackets.
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

// getWords says what to get by when, and which of it has no price.
func getWords(plan *season.Plan, units quantity.System) string {
	var words []string
	last := ""
	for _, n := range plan.ToGet {
		if n.Unit == "seeds" {
			continue // it is in the JSON, and eyeup reckon sow answers it
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
		said += " No price for " + strings.Join(all, ", ") + ": not in the total."
	}
	return strings.TrimSpace(said)
}
