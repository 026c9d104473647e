package desk

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/season"
	"eyeup/week"
)

// thisWeek says in one line what to do now, and what comes next.
func thisWeek(jobs []week.Job, today civil.Date) string {
	monday := today.Monday()
	var now []string
	var next *week.Job
	for i, j := range jobs {
		switch {
		case j.Week == monday:
			now = append(now, j.String())
		case next == nil && j.Week.After(monday):
			next = &jobs[i]
		}
	}
	line := "nothing is due"
	if len(now) > 0 {
		line = strings.Join(now, "; ")
	}
	line = fmt.Sprintf("This week (%s): %s.", shortDate(monday), line)
	if next != nil {
		line += fmt.Sprintf(" Next: %s, %s.", shortDate(next.Week), next)
	}
	if start := firstStart(jobs, monday); start != nil && start != next {
		line += fmt.Sprintf(" First start: %s, %s.", shortDate(start.Week), start)
	}
	return line
}

// firstStart returns the next job by which something begins to grow.
func firstStart(jobs []week.Job, monday civil.Date) *week.Job {
	for i, j := range jobs {
		if j.Week.After(monday) && slices.Contains([]string{"start", "sow", "wake", "plant"}, j.What) {
			return &jobs[i]
		}
	}
	return nil
}

// Print writes the season on one page.
func (a *SeasonAnswer) Print(w io.Writer, units quantity.System) {
	p := &page{w: w}
	p.wrap("", a.ThisWeek)
	p.line("")
	a.head(p)
	p.line("")
	a.sideBySide(p, units)
	p.line("")
	a.usual(p)
	a.rest(p, units)
	a.steps(p)
}

// steps prints where the dates of a batch come from, in every plan that has it.
func (a *SeasonAnswer) steps(p *page) {
	for _, plan := range a.Plans {
		for _, b := range plan.Batches {
			if len(b.Steps) == 0 {
				continue
			}
			p.line("")
			p.line(fmt.Sprintf("%s, %s: %s", b.ID, b.Variety, plan.Name))
			for i, step := range b.Steps {
				p.wrap(fmt.Sprintf("%2d. ", i+1), step)
			}
		}
	}
}

func (a *SeasonAnswer) head(p *page) {
	src := a.Weather
	station := strings.TrimSpace(src.Station + " " + src.Name)
	if src.Station == src.Name {
		station = src.Name
	}
	from := fmt.Sprintf("%s, %d years of %d-%d", station, src.Years, src.FromYear, src.ToYear)
	if src.MadeUp {
		from = fmt.Sprintf("MADE UP from monthly normals, %d years; no station measured it", src.Years)
	}
	p.wrap("", fmt.Sprintf("%s, season of %d. Weather: %s.", a.Garden, a.PlantOutFrom.Year(), strings.TrimSpace(from)))
	p.wrap("", fmt.Sprintf("Last frost in spring %s / %s / %s; first in autumn %s / %s / %s (one year in ten earlier / even odds / one in ten later). Nothing leafy is planted out before %s.",
		shortDay(a.Frost.Spring.Early), shortDay(a.Frost.Spring.Middle), shortDay(a.Frost.Spring.Late),
		shortDay(a.Frost.Autumn.Early), shortDay(a.Frost.Autumn.Middle), shortDay(a.Frost.Autumn.Late), shortDate(a.PlantOutFrom)))
	if len(src.LeftOut) > 0 {
		p.wrap("", fmt.Sprintf("%d years left out for gaps; %d days drawn between neighbours.", len(src.LeftOut), src.Bridged))
	}
}

// sideBySide sets the plans in columns.
func (a *SeasonAnswer) sideBySide(p *page, units quantity.System) {
	p.row("", func(plan *season.Plan) string { return plan.Name }, a.Plans)
	for _, name := range heatedPlaces(a.Plans) {
		p.row(name+" held at", func(plan *season.Plan) string { return held(plan, name, units) }, a.Plans)
		if slices.ContainsFunc(a.Plans, func(plan *season.Plan) bool { return then(plan, name, units) != "" }) {
			p.row("  then", func(plan *season.Plan) string { return then(plan, name, units) }, a.Plans)
		}
	}
	p.row("first flower", func(plan *season.Plan) string { return shortDate(plan.FirstFlower.Middle) }, a.Plans)
	p.row("  one in ten beyond", func(plan *season.Plan) string {
		return shortDate(plan.FirstFlower.Early) + " / " + shortDate(plan.FirstFlower.Late)
	}, a.Plans)
	p.row("weeks gained", func(plan *season.Plan) string {
		return fmt.Sprintf("%s (%s to %s)", weeks(plan.GainWeeks.Middle), weeks(plan.GainWeeks.Low), weeks(plan.GainWeeks.High))
	}, a.Plans)
	p.row("raised under cover", func(plan *season.Plan) string { return fmt.Sprintf("%d of %d", potted(plan), raised(plan)) }, a.Plans)
	a.heatRows(p)
	a.costRows(p)
	p.row("benches suffice", func(plan *season.Plan) string { return fmt.Sprintf("%d of %d years", plan.FitsYears, plan.Years) }, a.Plans)
	for i, pl := range a.Plans[0].Places {
		if pl.Weeks[0].RoomM2 > 0 {
			p.row(pl.Place+", fullest", func(plan *season.Plan) string { return fullest(plan.Places[i], units) }, a.Plans)
		}
	}
}

func (a *SeasonAnswer) heatRows(p *page) {
	heat := func(show func(*season.PlaceHeat, *season.Plan) string) func(*season.Plan) string {
		return func(plan *season.Plan) string {
			for _, pl := range plan.Places {
				if pl.Heat != nil {
					return show(pl.Heat, plan)
				}
			}
			return "-"
		}
	}
	p.row("heat asked, given", heat(func(h *season.PlaceHeat, _ *season.Plan) string {
		return fmt.Sprintf("%.0f, %.0f kWh", h.AskedKWh.Middle, h.GivenKWh.Middle)
	}), a.Plans)
	p.row("hours too cold", heat(func(h *season.PlaceHeat, _ *season.Plan) string {
		return fmt.Sprintf("%.0f (worst %.0f K)", h.HoursShort.Middle, h.WorstShortK)
	}), a.Plans)
	p.row("freezes inside in", heat(func(h *season.PlaceHeat, plan *season.Plan) string {
		return fmt.Sprintf("%d of %d years", h.YearsFreezing, plan.Years)
	}), a.Plans)
}

func (a *SeasonAnswer) costRows(p *page) {
	for _, r := range []struct {
		name   string
		amount func(season.Cost) float64
	}{
		{"heat", func(c season.Cost) float64 { return c.Heat }},
		{"light", func(c season.Cost) float64 { return c.Light }},
		{"mix and pots", func(c season.Cost) float64 { return c.Mix }},
		{"paid hands", func(c season.Cost) float64 { return c.Work }},
		{"in all, " + a.Plans[0].Cost.Currency, func(c season.Cost) float64 { return c.Total }},
		{"  for each pot", func(c season.Cost) float64 { return c.PerPot }},
	} {
		if !slices.ContainsFunc(a.Plans, func(plan *season.Plan) bool { return r.amount(plan.Cost) != 0 }) {
			continue
		}
		p.row(r.name, func(plan *season.Plan) string { return fmt.Sprintf("%8.2f", r.amount(plan.Cost)) }, a.Plans)
	}
	p.row("own hours", func(plan *season.Plan) string { return fmt.Sprintf("%5.0f", plan.Cost.WorkHours) }, a.Plans)
}

// row prints one figure of every plan.
func (p *page) row(name string, of func(*season.Plan) string, plans []*season.Plan) {
	line := fmt.Sprintf("%-19s", clipped(name, 20))
	for _, plan := range plans {
		line += fmt.Sprintf(" %-19s", of(plan))
	}
	p.line(line)
}

func raised(plan *season.Plan) int {
	n := 0
	for _, b := range plan.Batches {
		n += b.Count
	}
	return n
}

// fullest says how much room a place's fullest week takes, of the room there is.
func fullest(pl season.PlacePlan, units quantity.System) string {
	most := slices.MaxFunc(pl.Weeks, func(a, b season.PlaceWeek) int { return cmp.Compare(a.UsedM2, b.UsedM2) })
	used, _, _ := strings.Cut(units.Area(quantity.Area(most.UsedM2)), " ")
	return used + " of " + units.Area(quantity.Area(most.RoomM2))
}

// then says to what level a place goes while it is in use, and when.
func then(plan *season.Plan, name string, units quantity.System) string {
	for _, pl := range plan.Places {
		if pl.Place == name && pl.Then != nil {
			return fmt.Sprintf("%s from %s", units.Temperature(pl.Then.Level), shortDate(pl.Then.From))
		}
	}
	return ""
}

func potted(plan *season.Plan) int {
	n := 0
	for _, b := range plan.Batches {
		if b.Container != "" {
			n += b.Count
		}
	}
	return n
}

// heatedPlaces names the places that some plan heats.
func heatedPlaces(plans []*season.Plan) []string {
	var names []string
	for _, plan := range plans {
		for _, pl := range plan.Places {
			if pl.Heat != nil && !slices.Contains(names, pl.Place) {
				names = append(names, pl.Place)
			}
		}
	}
	return names
}

// held says at what level a plan holds a place, and when.
func held(plan *season.Plan, name string, units quantity.System) string {
	for _, pl := range plan.Places {
		if pl.Place == name && pl.Heat != nil {
			return fmt.Sprintf("%s %s-%s", units.Temperature(pl.Level), shortDate(pl.HeatedFrom), shortDate(pl.HeatedTo))
		}
	}
	return "off"
}

// usual lists the usual plan, like batches together under the way they go.
func (a *SeasonAnswer) usual(p *page) {
	plan := a.Plans[1]
	p.line(capital(plan.Name) + ": middle dates; of first flower one in ten before / after")
	p.line(fmt.Sprintf("%-25s%5s %-8s%-8s%-8s%-17s%6s", "", "count", "start", "up", "out", "first flower", "weeks"))
	route := ""
	for _, g := range grouped(plan.Batches) {
		b := g[0]
		if b.Starts[0].Route != route {
			route = b.Starts[0].Route
			p.line(route)
		}
		p.line(fmt.Sprintf("  %-23s%5d %-8s%-8s%-8s%-17s%6s", groupName(g), total(g), shortDate(b.Dates.Start), shortDate(b.Dates.Up.Middle), shortDate(b.Dates.PlantOut.Middle),
			shortDate(b.Dates.FirstFlower.Early)+" / "+shortDate(b.Dates.FirstFlower.Late), signed(b.Gain.Middle)))
		if b.Why != "" {
			p.wrap("    ", b.Why)
		}
	}
}

// grouped puts batches together that are of one kind and timing and do the same.
func grouped(batches []season.BatchPlan) [][]season.BatchPlan {
	var groups [][]season.BatchPlan
	for _, b := range batches {
		at := slices.IndexFunc(groups, func(g []season.BatchPlan) bool {
			h := g[0]
			return h.Kind == b.Kind && h.Timing == b.Timing && h.Form == b.Form && h.Starts[0].Route == b.Starts[0].Route && h.Dates.Start == b.Dates.Start
		})
		if at < 0 {
			groups = append(groups, nil)
			at = len(groups) - 1
		}
		groups[at] = append(groups[at], b)
	}
	slices.SortStableFunc(groups, func(a, b []season.BatchPlan) int {
		return cmp.Or(cmp.Compare(a[0].Starts[0].Route, b[0].Starts[0].Route), cmp.Compare(a[0].Dates.Start.String(), b[0].Dates.Start.String()), cmp.Compare(a[0].Kind, b[0].Kind))
	})
	return groups
}

func groupName(g []season.BatchPlan) string {
	b := g[0]
	if len(g) == 1 {
		return clipped(b.Variety+", "+b.Kind, 23)
	}
	sorts := map[string]bool{}
	for _, one := range g {
		sorts[one.Variety] = true
	}
	name := fmt.Sprintf("%s, %s%d sorts", b.Kind, spaced(b.Timing), len(sorts))
	if len(sorts) == 1 {
		name = b.Variety + ", " + b.Kind
	}
	return clipped(name, 23)
}

func spaced(s string) string {
	if s == "" {
		return ""
	}
	return s + ", "
}

func total(g []season.BatchPlan) int {
	n := 0
	for _, b := range g {
		n += b.Count
	}
	return n
}

// rest tells what is not covered, short, to get, and assumed.
func (a *SeasonAnswer) rest(p *page, units quantity.System) {
	plan := a.Plans[1]
	if len(a.NotCovered) > 0 {
		p.line("")
		p.wrap("Not in these plans: ", strings.Join(leftNames(a.NotCovered), "; ")+".")
	}
	p.wrap("Short: ", strings.Join(shortWords(plan.Shortfalls), "; ")+".")
	var get []string
	for _, n := range plan.ToGet {
		if n.Unit == "seeds" {
			continue // in the JSON, and asked of eyeup reckon sow
		}
		get = append(get, need(n, units))
	}
	if len(get) > 0 {
		p.wrap("To get: ", strings.Join(get, "; ")+".")
	}
	if len(plan.Cost.Unpriced) > 0 {
		p.wrap("No price for: ", strings.Join(slices.Compact(slices.Sorted(slices.Values(plan.Cost.Unpriced))), ", ")+"; not in the sums.")
	}
	if e := plan.BreakEven; e != nil {
		p.wrap("Heat: ", breakEven(e, plan.Cost.Currency))
	}
	for _, d := range cutWords(plan.Dividing) {
		p.wrap("Divide: ", d)
	}
	if !plan.DecideBy.IsZero() {
		p.wrap("Decide: ", decide(plan))
	}
	p.wrap("Gained against: ", plan.Baseline+".")
	if len(a.Assumptions) > 0 {
		p.wrap("Rests on: ", assumed(a.Assumptions))
	}
	p.wrap("Care: ", "damp the mix and open bags away from your face; keep lamps and heaters on protected circuits, by local code; a burning heater wants fresh air and an alarm.")
}

// breakEven says what a week of flower costs in heat, and when that pays.
func breakEven(e *season.BreakEven, currency string) string {
	if e.PerPlantWeek == nil {
		return fmt.Sprintf("%.2f %s of it gains no weeks over the plan without.", e.Heat, currency)
	}
	words := fmt.Sprintf("%.2f %s gains %s weeks a plant over the plan without: %.2f for each plant and week.", e.Heat, currency, weeks(e.WeeksGained), *e.PerPlantWeek)
	switch {
	case e.PaysFrom != nil:
		words += fmt.Sprintf(" At %.2f a week it pays from %d plants; here are %d.", *e.PlantWeek, *e.PaysFrom, e.Plants)
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
	words := fmt.Sprintf("the plans part in the week of %s.", shortDate(plan.DecideBy))
	if n := len(plan.Shared); n > 0 {
		words += fmt.Sprintf(" In all of them: %s", plan.Shared[0])
		if n > 1 {
			words += fmt.Sprintf(", and %d more", n-1)
		}
		words += "."
	}
	return words
}

// shortWords says what is short, what is short in stock in one go.
func shortWords(all []season.Shortfall) []string {
	var words, sorts []string
	for _, s := range all {
		if s.Of == "stock" {
			sorts = append(sorts, fmt.Sprintf("%s %.0f", s.Variety, s.Short))
			continue
		}
		words = append(words, fmt.Sprintf("%s (%s): %s", s.What, shortDate(s.Week), s.Cure))
	}
	if len(sorts) > 0 {
		words = append(words, "more wanted than can be counted on: "+strings.Join(sorts, ", "))
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
	}{{"how fast these come up, grow or flower, which nobody has measured: ", kinds}, {"not known and left out: ", unknown}, {"your own figures: ", own}} {
		if len(part.names) > 0 {
			words = append(words, part.lead+strings.Join(part.names, ", "))
		}
	}
	return strings.Join(words, "; ") + ". See eyeup reckon culture KIND."
}

func leftNames(left []season.NotCovered) []string {
	var names []string
	for _, n := range left {
		names = append(names, fmt.Sprintf("%d %s %s %s: %s", n.Count, n.Variety, n.Kind, n.Form, n.Why))
	}
	return names
}

func need(n season.Need, units quantity.System) string {
	amount := fmt.Sprintf("%.0f %s", n.Amount.Middle, n.What)
	if n.Unit == "L" {
		show := func(x float64) string { return units.Volume(quantity.Volume(x) * quantity.Litre) }
		amount = fmt.Sprintf("%s of %s (%s to %s)", show(n.Amount.Middle), n.What, show(n.Amount.Low), show(n.Amount.High))
	}
	return fmt.Sprintf("%s by %s", amount, shortDate(n.By))
}

func signed(x float64) string {
	if x >= 0.05 {
		return "+" + weeks(x)
	}
	return weeks(x)
}

// clipped shortens a name that would break a column.
func clipped(s string, n int) string {
	if utf8.RuneCountInString(s) < n {
		return s
	}
	return string([]rune(s)[:n-2]) + "…"
}
