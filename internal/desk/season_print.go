package desk

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"eyeup/quantity"
)

// Print writes the season on one page.
func (a *SeasonAnswer) Print(w io.Writer, units quantity.System) {
	p := &page{w: w}
	p.wrap("", a.ThisWeek)
	p.line("")
	a.head(p)
	p.line("")
	a.followedWords(p)
	a.sideBySide(p, units)
	p.line("")
	if a.proved() {
		a.proofs(p, units)
		p.line("")
	}
	a.batches(p, units)
	a.rest(p, units)
	a.steps(p)
}

// followedWords says which plan is followed, and what of it can't be held any more.
func (a *SeasonAnswer) followedWords(p *page) {
	plan, said := a.followed()
	switch {
	case a.NotFollowed != "":
		p.wrap("", capital(a.NotFollowed)+".")
	case said && plan.Held:
		p.wrap("", fmt.Sprintf("Followed: %q. Its decisions are held; nothing was looked for.", plan.Name))
	case said:
		p.wrap("", fmt.Sprintf("Followed: %q, worked out anew.", plan.Name))
	default:
		return
	}
	for _, what := range plan.Otherwise {
		p.wrap("Otherwise: ", capital(what)+".")
	}
	p.line("")
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
		from = fmt.Sprintf("MADE UP from monthly normals, %d years", src.Years)
	}
	p.wrap("", fmt.Sprintf("%s, season of %d. Weather: %s.", a.Garden, a.PlantOutFrom.Year(), strings.TrimSpace(from)))
	p.wrap("", fmt.Sprintf("Last frost in spring %s / %s / %s; first in autumn %s / %s / %s (one year in ten earlier / even odds / one in ten later). Nothing leafy is planted out before %s.",
		shortDay(a.Frost.Spring.Early), shortDay(a.Frost.Spring.Middle), shortDay(a.Frost.Spring.Late),
		shortDay(a.Frost.Autumn.Early), shortDay(a.Frost.Autumn.Middle), shortDay(a.Frost.Autumn.Late), shortDate(a.PlantOutFrom)))
	if len(src.LeftOut) > 0 {
		p.wrap("", fmt.Sprintf("%s left out for gaps; %s drawn between neighbours.", counted(len(src.LeftOut), "year"), counted(src.Bridged, "day")))
	}
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
