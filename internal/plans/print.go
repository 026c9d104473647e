package plans

import (
	"fmt"
	"io"
	"strings"

	"eyeup/internal/report"
	"eyeup/quantity"
)

// Print writes the season as text: one page of 80 columns.
func (a *SeasonAnswer) Print(w io.Writer, units quantity.System) {
	p := report.NewPage(w)
	p.Wrap("", a.ThisWeek)
	p.Line("")
	a.head(p)
	p.Line("")
	a.followedWords(p)
	a.sideBySide(p, units)
	p.Line("")
	if a.Proved() {
		a.proofs(p, units)
		p.Line("")
	}
	a.batches(p, units)
	a.rest(p, units)
	a.steps(p)
}

// followedWords says which plan is followed, and what happened otherwise than it decided.
func (a *SeasonAnswer) followedWords(p *report.Page) {
	plan, said := a.PlanFollowed()
	switch {
	case a.NotFollowed != "":
		p.Wrap("", report.Capital(a.NotFollowed)+".")
	case said && plan.Held:
		p.Wrap("", fmt.Sprintf("You follow %q. Its decisions are held; no other plan was searched for.", plan.Name))
	case said:
		p.Wrap("", fmt.Sprintf("You follow %q, worked out anew for today.", plan.Name))
	default:
		return
	}
	for _, what := range plan.Otherwise {
		p.Wrap("Changed: ", report.Capital(what)+".")
	}
	p.Line("")
}

// steps prints, step by step, where the dates of the explained batch come from, plan by plan.
func (a *SeasonAnswer) steps(p *report.Page) {
	for _, plan := range a.Plans {
		for _, b := range plan.Batches {
			if len(b.Steps) == 0 {
				continue
			}
			p.Line("")
			p.Line(fmt.Sprintf("%s, %s: %s", b.ID, b.Variety, plan.Name))
			for i, step := range b.Steps {
				p.Wrap(fmt.Sprintf("%2d. ", i+1), step)
			}
		}
	}
}

func (a *SeasonAnswer) head(p *report.Page) {
	src := a.Weather
	station := strings.TrimSpace(src.Station + " " + src.Name)
	if src.Station == src.Name {
		station = src.Name
	}
	from := fmt.Sprintf("%s, %d years of %d-%d", station, src.Years, src.FromYear, src.ToYear)
	if src.MadeUp {
		from = fmt.Sprintf("MADE UP from monthly normals, %d years", src.Years)
	}
	p.Wrap("", fmt.Sprintf("%s, season of %d. Weather: %s.", a.Garden, a.PlantOutFrom.Year(), strings.TrimSpace(from)))
	p.Wrap("", fmt.Sprintf("Last frost in spring %s / %s / %s; first in autumn %s / %s / %s (one year in ten earlier / even odds / one in ten later). Nothing leafy is planted out before %s.",
		report.ShortDay(a.Frost.Spring.Early), report.ShortDay(a.Frost.Spring.Middle), report.ShortDay(a.Frost.Spring.Late),
		report.ShortDay(a.Frost.Autumn.Early), report.ShortDay(a.Frost.Autumn.Middle), report.ShortDay(a.Frost.Autumn.Late), report.ShortDate(a.PlantOutFrom)))
	if len(src.LeftOut) > 0 {
		p.Wrap("", fmt.Sprintf("%s left out because days are missing; %s filled in from the days around them.", report.Counted(len(src.LeftOut), "year"), report.Counted(src.Bridged, "day")))
	}
}

func signed(x float64) string {
	if x >= 0.05 {
		return "+" + Weeks(x)
	}
	return Weeks(x)
}
