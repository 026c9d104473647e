package paper

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"

	"eyeup/civil"
	"eyeup/internal/plans"
	"eyeup/internal/reckon"
	"eyeup/internal/report"
	"eyeup/internal/sheet"
	"eyeup/quantity"
	"eyeup/season"
	"eyeup/stock"
	"eyeup/supply"
)

// potting makes the potting list: what is started, week by week.
func (l *lister) potting() (*listed, error) {
	var sessions []sheet.PottingSession
	pots := 0
	for _, b := range l.plan.Batches {
		for _, s := range b.Starts {
			at := slices.IndexFunc(sessions, func(p sheet.PottingSession) bool { return p.Week == s.Week })
			if at < 0 {
				sessions, at = append(sessions, sheet.PottingSession{Week: s.Week}), len(sessions)
			}
			sessions[at].Lines = append(sessions[at].Lines, l.pottingLine(b, s))
			pots += s.Count
		}
	}
	slices.SortFunc(sessions, func(a, b sheet.PottingSession) int { return int(a.Week.Sub(b.Week)) })
	for i := range sessions {
		slices.SortStableFunc(sessions[i].Lines, func(a, b sheet.PottingLine) int { return compareCrates(a.Crate, b.Crate) })
		sessions[i].Aside = l.sessionMix(sessions[i].Week)
	}
	return &listed{sheet.Potting(l.head(reckon.MixCaution, knifeCaution), sessions), "potting list", pots, "plants"}, nil
}

func (l *lister) pottingLine(b season.BatchPlan, s season.Start) sheet.PottingLine {
	line := sheet.PottingLine{Code: b.Code, Variety: b.Variety, Colour: b.Colour, Count: s.Count, Container: "straight into the ground"}
	if b.BeginsIn != "" {
		line.Container = b.BeginsIn
		if c, err := supply.ContainerNamed(b.BeginsIn); err == nil {
			line.Container, _, _ = strings.Cut(c.Name, " (")
		}
	}
	if len(b.Stays) > 0 {
		line.To = b.Stays[0].Place
	}
	for _, h := range l.garden.Stock {
		if h.Code == b.Code && h.Code != "" && (b.Place == "" || h.Place == b.Place) || b.Code == "" && h.Variety.Name == b.Variety && h.Variety.Kind == b.Kind {
			line.Crate = h.Crate
			line.From = report.Counted(h.Count, string(h.Form))
			if h.Form == stock.Seed {
				line.From = report.Counted(h.Count, "packet")
			}
			break
		}
	}
	if b.How == "divided" && b.Parents > 0 {
		line.From += fmt.Sprintf(", %d cut", b.Parents)
	}
	return line
}

// sessionMix says how much mix the starts of a week need.
func (l *lister) sessionMix(week civil.Date) string {
	litres, pots := 0.0, 0
	for _, b := range l.plan.Batches {
		for _, s := range b.Starts {
			if s.Week != week || b.BeginsIn == "" {
				continue
			}
			c, err := supply.ContainerNamed(b.BeginsIn)
			if err != nil {
				continue
			}
			n := (s.Count + c.Cells - 1) / c.Cells
			if need, err := c.Mix(n, bodyOf(b)); err == nil {
				litres, pots = litres+need.Litres.Middle, pots+s.Count
			}
		}
	}
	if pots == 0 {
		return ""
	}
	return fmt.Sprintf("%d plants in pots and trays, about %s of loose mix", pots, l.Units.Volume(quantity.Volume(litres)*quantity.Litre))
}

// bodyOf is the form of stock that takes up room in a batch's first container; empty for seed.
func bodyOf(b season.BatchPlan) string {
	switch {
	case b.Form == string(stock.Seed):
		return ""
	case b.How == string(season.Divided):
		return string(stock.Division)
	case b.How == string(season.FromCuttings):
		return string(stock.Cutting)
	}
	return b.Form
}

// shopping makes the shopping list, with bags rounded up.
func (l *lister) shopping() (*listed, error) {
	var lines []sheet.ShoppingLine
	var unpriced []string
	total := 0.0
	for _, n := range l.plan.ToGet {
		line, cost, err := l.shoppingLine(n)
		if err != nil {
			return nil, err
		}
		if line.Cost == "" {
			unpriced = append(unpriced, n.What)
		}
		lines = append(lines, line)
		total += cost
	}
	sum := fmt.Sprintf("Total %.2f %s.", total, l.plan.Cost.Currency)
	if len(unpriced) > 0 {
		sum += " Not in the total, because the garden has no price for it: " + strings.Join(unpriced, ", ") + "."
	}
	return &listed{sheet.Shopping(l.head(reckon.LiftCaution, "Keep mix cool, dry and closed: in bags left in the sun germs grow that are dangerous to breathe in."), lines, sum), "shopping list", len(lines), "things"}, nil
}

// shoppingLine turns a need into what is bought: loose material in whole bags, everything else by the
// piece. cost is in the garden's currency.
func (l *lister) shoppingLine(n season.Need) (line sheet.ShoppingLine, cost float64, err error) {
	line = sheet.ShoppingLine{What: n.What, By: report.ShortDate(n.By), Need: fmt.Sprintf("%.0f", n.Amount.Middle), Get: fmt.Sprintf("%.0f", n.Amount.Middle)}
	price := 0.0
	cost = n.Cost
	switch {
	case n.Unit == "L" && n.Amount.Middle > 0:
		volume := func(litres float64) string { return l.Units.Volume(quantity.Volume(litres) * quantity.Litre) }
		bag := supply.Loose(l.Bag)
		if l.Bale {
			bag = supply.Compressed(l.Bag)
		}
		bags, err := bag.For(n.Amount)
		if err != nil {
			return line, 0, err
		}
		low, _, _ := strings.Cut(volume(n.Amount.Low), " ")
		high, _, _ := strings.Cut(volume(n.Amount.High), " ")
		line.Need = fmt.Sprintf("%s (%s to %s)", volume(n.Amount.Middle), low, high)
		line.Get = fmt.Sprintf("%s of %s%s", report.Counted(bags.Get, "bag"), volume(l.Bag.Litres()), reckon.MoreBags(bags.Get, bags.High))
		litre := n.Cost / n.Amount.Middle
		if n.What == "potting mix" { // its cost is rounded; the garden's price is not
			litre = l.garden.SeasonPrices().MixLitre.Amount
		}
		price = quantity.MoneyOf(litre*l.Bag.Litres()*bag.Swells, l.garden.Currency).Units()
		cost = price * float64(bags.Get)
	case n.Amount.Middle > 0:
		price = n.Cost / n.Amount.Middle
	}
	if price > 0 {
		line.Price, line.Cost = fmt.Sprintf("%.2f", price), fmt.Sprintf("%.2f", cost)
	}
	return line, cost, nil
}

// week makes the list of jobs, from this week on.
func (l *lister) week() (*listed, error) {
	from := l.today.Monday()
	to := from.AddDays(civil.Week * civil.Days(max(l.Weeks, 1)))
	jobs := l.roundsDue(from)
	for _, j := range l.worked.JobsOf(l.plan.Name) {
		isRound := j.IsRound() && j.Week == from && l.Rounds != nil
		if j.Week.Before(from) || !j.Week.Before(to) || isRound {
			continue
		}
		what := j.What
		if j.Count > 0 {
			what += fmt.Sprintf(" %d %s", j.Count, j.Kind)
		}
		jobs = append(jobs, sheet.WeekJob{Week: j.Week, What: what, Where: j.Where, Sorts: j.Sorts, Hours: j.Minutes / 60, Why: j.Why})
	}
	return &listed{sheet.Jobs(l.head(reckon.LiftCaution, reckon.MixCaution, knifeCaution, reckon.PowerCaution), jobs), "jobs", len(jobs), "jobs"}, nil
}

// roundsDue are the jobs of going through the stores where a round is due.
func (l *lister) roundsDue(week civil.Date) []sheet.WeekJob {
	var jobs []sheet.WeekJob
	for _, r := range l.Rounds {
		if !r.Due {
			continue
		}
		why := "it was never gone through"
		if !r.Last.IsZero() {
			why = "it was last gone through on " + report.ShortDate(r.Last)
		}
		jobs = append(jobs, sheet.WeekJob{Week: week, What: "go through the crates", Where: r.Place, Why: why})
	}
	return jobs
}

// season writes the plan on one page.
func (l *lister) season(w io.Writer) (*report.WrittenAnswer, error) {
	svg, err := l.worked.Picture(l.plan.Name, l.Units)
	if err != nil {
		return nil, err
	}
	page := sheet.SeasonPage{Plan: l.plan.Name, Says: l.plan.Says, Picture: svg, Facts: l.facts()}
	for _, g := range plans.Grouped(l.plan.Batches) {
		d := g[0].Dates
		page.Batches = append(page.Batches, sheet.SeasonBatch{
			Name: plans.GroupName(g), Count: fmt.Sprint(plans.Total(g)), Start: report.ShortDate(d.Start), Out: report.ShortDate(d.PlantOut.Middle), Flower: when(d.FirstFlower),
		})
	}
	slices.SortStableFunc(page.Batches, func(a, b sheet.SeasonBatch) int { return cmp.Compare(a.Name, b.Name) })
	for _, j := range l.worked.JobsOf(l.plan.Name) {
		if !j.Week.Before(l.today.Monday()) && len(page.Next) < 6 {
			page.Next = append(page.Next, fmt.Sprintf("%s: %s", report.ShortDate(j.Week), j))
		}
	}
	told, err := sheet.Season(w, l.head(), page)
	if err != nil {
		return nil, err
	}
	return written("season", len(page.Batches), "groups", told), nil
}

// facts are the figures printed beside the picture.
func (l *lister) facts() [][2]string {
	p := l.plan
	facts := [][2]string{
		{"plant out from", report.ShortDate(p.PlantOutFrom)},
		{"first flower", when(p.FirstFlower)},
		{"weeks gained", fmt.Sprintf("%s (%s to %s)", plans.Weeks(p.GainWeeks.Middle), plans.Weeks(p.GainWeeks.Low), plans.Weeks(p.GainWeeks.High))},
		{"total cost", fmt.Sprintf("%.0f %s", p.Cost.Total, p.Cost.Currency)},
		{"heat", fmt.Sprintf("%.0f (%.0f to %.0f)", p.Cost.Heat, p.Cost.HeatSpread.Low, p.Cost.HeatSpread.High)},
		{"own hours", fmt.Sprintf("%.0f", p.Cost.WorkHours)},
		{"benches", "suffice in " + plans.Suffices(p)},
	}
	for _, pl := range p.Places {
		if pl.Heat != nil {
			facts = append(facts, [2]string{pl.Place, plans.HeldOf(p, pl.Place, l.Units)})
		}
	}
	return facts
}
