package desk

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"eyeup/civil"
	"eyeup/internal/exchange"
	"eyeup/quantity"
	"eyeup/season"
)

// thisWeek says in one line what to do now, and what comes next.
func thisWeek(jobs []season.Job, g *Garden, today civil.Date) string {
	monday := today.Monday()
	var now []string
	var next *season.Job
	for i, j := range jobs {
		if j.Week == monday {
			now = append(now, j.String())
		}
		if next == nil && j.Week.After(monday) {
			next = &jobs[i]
		}
	}
	if round := roundDue(g, monday); round != "" {
		now = append(now, round)
	}
	line := "nothing to start"
	if len(now) > 0 {
		line = strings.Join(now, "; ")
	}
	line = fmt.Sprintf("This week (%s): %s.", shortDate(monday), line)
	if next != nil {
		line += fmt.Sprintf(" Next: %s, %s.", shortDate(next.Week), next)
	}
	return line
}

// roundEvery is how often the store is gone through. Common practice: monthly.
const roundEvery = 4

// roundDue says whether a round of the stores is due: every fourth week from the season's
// first while stock waits there.
func roundDue(g *Garden, monday civil.Date) string {
	weeks := int(monday.Sub(g.Span.From.Monday()) / civil.Week)
	if weeks%roundEvery != 0 {
		return ""
	}
	for _, p := range g.Places {
		if p.Sort == exchange.Store {
			return "go through the crates in " + p.Name + " (a round)"
		}
	}
	return ""
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
}

func (a *SeasonAnswer) head(p *page) {
	src := a.Weather
	from := fmt.Sprintf("%s %s, %d years of %d-%d", src.Station, src.Name, src.Years, src.FromYear, src.ToYear)
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
	rows := [][]string{{""}, {"dahlias' first flower"}, {"  one in ten before/after"}, {"weeks of flower gained"}, {"raised in pots"},
		{"heat asked, given (kWh)"}, {"hours short of the level"}, {"freezes inside, years"}, {"heat"}, {"light"}, {"mix and pots"}, {"paid hands"}, {"in all (" + a.Plans[0].Cost.Currency + ")"}, {"  for each pot"}, {"own hours"}, {"benches suffice, years"}}
	column := func(cells ...string) {
		for i, c := range cells {
			rows[i] = append(rows[i], c)
		}
	}
	for _, plan := range a.Plans {
		asked, short, freezing := heatCells(plan)
		c := plan.Cost
		column(plan.Name, shortDate(plan.FirstFlower.Middle), shortDate(plan.FirstFlower.Early)+" / "+shortDate(plan.FirstFlower.Late),
			fmt.Sprintf("%s (%s to %s)", weeks(plan.GainWeeks.Middle), weeks(plan.GainWeeks.Low), weeks(plan.GainWeeks.High)),
			fmt.Sprint(potted(plan)), asked, short, freezing, money(c.Heat), money(c.Light), money(c.Mix), money(c.Work), money(c.Total), money(c.PerPot),
			fmt.Sprintf("%.0f", c.WorkHours), fmt.Sprintf("%d of %d", plan.FitsYears, plan.Years))
	}
	for _, name := range heatedPlaces(a.Plans) {
		row := []string{name + " held at"}
		for _, plan := range a.Plans {
			row = append(row, held(plan, name, units))
		}
		rows = slices.Insert(rows, 1, row)
	}
	rows = append(rows, benchRows(a.Plans, units)...)
	for _, row := range rows {
		p.line(fmt.Sprintf("%-25s %-17s %-19s %s", row[0], row[1], row[2], row[3]))
	}
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

func heatCells(plan *season.Plan) (asked, short, freezing string) {
	for _, pl := range plan.Places {
		if h := pl.Heat; h != nil {
			return fmt.Sprintf("%.0f, %.0f", h.AskedKWh.Middle, h.GivenKWh.Middle),
				fmt.Sprintf("%.0f (worst %.0f K)", h.HoursShort.Middle, h.WorstShortK),
				fmt.Sprintf("%d of %d", h.YearsFreezing, plan.Years)
		}
	}
	return "-", "-", "-"
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

// benchRows tells the fullest week of every bench.
func benchRows(plans []*season.Plan, units quantity.System) [][]string {
	var rows [][]string
	for i, pl := range plans[0].Places {
		if pl.Weeks[0].RoomM2 == 0 {
			continue
		}
		row := []string{pl.Place + ", fullest"}
		for _, plan := range plans {
			fullest := slices.MaxFunc(plan.Places[i].Weeks, func(a, b season.PlaceWeek) int { return cmp.Compare(a.UsedM2, b.UsedM2) })
			used, room := units.Area(quantity.Area(fullest.UsedM2)), units.Area(quantity.Area(fullest.RoomM2))
			row = append(row, strings.Replace(used, " m²", "", 1)+" of "+room)
		}
		rows = append(rows, row)
	}
	return rows
}

// usual lists the usual plan, like batches together.
func (a *SeasonAnswer) usual(p *page) {
	plan := a.Plans[1]
	p.line(strings.ToUpper(plan.Name[:1]) + plan.Name[1:] + ", batch by batch (middle dates; first flower one in ten before / after)")
	p.line(fmt.Sprintf("%-24s%6s %-8s%-8s%-9s%-17s%6s", "", "count", "start", "up", "out", "first flower", "weeks"))
	for _, g := range grouped(plan.Batches) {
		b := g[0]
		p.line(fmt.Sprintf("%-24s%6d %-8s%-8s%-9s%-17s%6s", groupName(g), total(g), shortDate(b.Dates.Start), upDate(b), shortDate(b.Dates.PlantOut.Middle),
			shortDate(b.Dates.FirstFlower.Early)+" / "+shortDate(b.Dates.FirstFlower.Late), signed(b.Gain.Middle)))
		p.line("    " + b.Starts[0].Route)
		if b.Why != "" {
			p.wrap("    ", b.Why)
		}
	}
}

func upDate(b season.BatchPlan) string { return shortDate(b.Dates.Up.Middle) }

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
		return cmp.Or(cmp.Compare(a[0].Kind, b[0].Kind), cmp.Compare(a[0].Dates.Start.String(), b[0].Dates.Start.String()))
	})
	return groups
}

func groupName(g []season.BatchPlan) string {
	b := g[0]
	if len(g) == 1 {
		return clip(b.Variety+", "+b.Kind, 24)
	}
	return clip(fmt.Sprintf("%s, %s%d sorts", b.Kind, spaced(b.Timing), len(g)), 24)
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
	for i, s := range plan.Shortfalls {
		p.wrap([]string{"Short: ", "       "}[min(i, 1)], fmt.Sprintf("%s (%s): %s.", s.What, shortDate(s.Week), s.Cure))
	}
	var get []string
	for _, n := range plan.ToGet {
		get = append(get, need(n, units))
	}
	if len(get) > 0 {
		p.wrap("To get: ", strings.Join(get, "; ")+".")
	}
	if len(plan.Cost.Unpriced) > 0 {
		p.wrap("No price for: ", strings.Join(slices.Compact(slices.Sorted(slices.Values(plan.Cost.Unpriced))), ", ")+"; not in the sums.")
	}
	p.wrap("Gained against: ", plan.Baseline+".")
	if len(a.Assumptions) > 0 {
		p.wrap("Rests on: ", strings.Join(a.Assumptions, "; ")+". See eyeup reckon culture KIND.")
	}
	p.wrap("Care: ", "damp the mix and open bags away from your face; keep lamps and heaters on protected circuits, by local code; a burning heater wants fresh air and an alarm.")
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

func money(x float64) string { return fmt.Sprintf("%.2f", x) }

func signed(x float64) string {
	if x >= 0.05 {
		return "+" + weeks(x)
	}
	return weeks(x)
}

// clip shortens a name that would break a column.
func clip(s string, n int) string {
	if utf8.RuneCountInString(s) < n {
		return s
	}
	return string([]rune(s)[:n-2]) + "…"
}
