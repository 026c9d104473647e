package planting

import (
	"fmt"
	"io"
	"strings"

	"eyeup/internal/report"
	"eyeup/quantity"
)

// Print writes the planting list for a grower.
func (a *PatchAnswer) Print(w io.Writer, units quantity.System) {
	p := report.NewPage(w)
	p.Wrap("", fmt.Sprintf("The planting list of %s for %d: %d plants of %d varieties on %s, of the %s of %s.",
		a.Garden, a.Year, a.Planted, a.Varieties(), units.Area(quantity.Area(a.UsedM2)), units.Area(quantity.Area(a.RoomM2)), a.Place))
	if a.TooLittle != "" {
		p.Wrap("Too little room: ", a.TooLittle+".")
	}
	p.Wrap("", a.Goodness())
	a.table(p)
	a.reasons(p)
	a.balance(p)
	a.mixes(p)
	a.rows(p)
	p.Line("")
	for _, said := range a.Unlisted() {
		p.Wrap("Not listed: ", said+".")
	}
	for _, s := range a.Assumed {
		p.Wrap("Assumed: ", s+".")
	}
	p.Wrap("", a.Note)
}

// table lists the varieties, kind by kind.
func (a *PatchAnswer) table(p *report.Page) {
	kind := ""
	for _, l := range a.List {
		if l.Kind != kind {
			kind = l.Kind
			p.Line("")
			p.Line(fmt.Sprintf("%-21s%-11s%7s%7s%5s%9s%9s%5s%6s", report.Clipped(kind, 20), "wish", "wanted", "places", "kept", "in hand", "cut", "over", "short"))
		}
		p.Line(fmt.Sprintf("  %-19s%-11s%7d%7d%5s%9s%9s%5s%6s", report.Clipped(l.Variety, 18), l.Wish, l.Wanted, l.Places,
			orBlank(l.kept), l.Counted(), l.ToCut(), orBlank(l.over), orBlank(l.short)))
	}
}

// orBlank writes a count, or nothing if it is 0.
func orBlank(n int) string {
	if n == 0 {
		return ""
	}
	return fmt.Sprint(n)
}

// reasons prints why varieties have more or fewer places than wanted.
func (a *PatchAnswer) reasons(p *report.Page) {
	first := true
	for _, l := range a.List {
		if l.Places == l.Wanted {
			continue
		}
		if first {
			p.Line("")
			p.Line("Why")
			first = false
		}
		p.Wrap("  ", fmt.Sprintf("%s %s.", l.Variety, l.Why))
	}
}

// balance prints what is kept back, what is left over, and how to get what is short.
func (a *PatchAnswer) balance(p *report.Page) {
	p.Line("")
	for _, one := range []struct{ before, said string }{
		{"Kept back: ", a.KeptBack()}, {"Over, to give away or sell: ", a.ToGive()}, {"To be got first: ", a.ToGet()},
	} {
		if one.said != "" {
			p.Wrap(one.before, one.said+".")
		}
	}
}

// mixes compares the list with the wished mix.
func (a *PatchAnswer) mixes(p *report.Page) {
	if len(a.Mix) == 0 {
		return
	}
	p.Line("")
	p.Line("The mix you wished")
	for _, m := range a.Mix {
		p.Wrap("  ", fmt.Sprintf("%s, %s: %s (wished %s)%s", m.Kind, m.Name, m.Got(), m.Wished(), prefixed(": ", m.Off())))
	}
}

// prefixed writes a prefix before a text, unless the text is empty.
func prefixed(before, said string) string {
	if said == "" {
		return ""
	}
	return before + said
}

// rows prints the patch row by row.
func (a *PatchAnswer) rows(p *report.Page) {
	if len(a.Rows) == 0 {
		return
	}
	p.Line("")
	p.Wrap("", "Rows. Tall plants stand behind low ones: put row 1 where it shades no other. Put out labels in the order of their numbers, left to right.")
	for _, r := range a.Rows {
		var parts []string
		for _, part := range r.Parts {
			parts = append(parts, fmt.Sprintf("%d %s %s", part.Label, part.Variety, part.At()))
		}
		p.Wrap(fmt.Sprintf("  bed %2d row %2d  ", r.Bed, r.Row), strings.Join(parts, ", "))
	}
}
