package desk

import (
	"fmt"
	"io"
	"strings"

	"eyeup/quantity"
)

// Print writes the planting list for a grower.
func (a *PatchAnswer) Print(w io.Writer, units quantity.System) {
	p := &page{w}
	p.wrap("", fmt.Sprintf("The planting list of %s for %d: %d plants of %d varieties on %s, of the %s of %s.",
		a.Garden, a.Year, a.Planted, a.Varieties(), units.Area(quantity.Area(a.UsedM2)), units.Area(quantity.Area(a.RoomM2)), a.Place))
	if a.TooLittle != "" {
		p.wrap("Too little room: ", a.TooLittle+".")
	}
	p.wrap("", a.Goodness())
	a.table(p)
	a.whys(p)
	a.giveAndGet(p)
	a.mixes(p)
	a.rows(p)
	p.line("")
	for _, said := range a.Unlisted() {
		p.wrap("Not listed: ", said+".")
	}
	for _, s := range a.Assumed {
		p.wrap("Taken for granted: ", s+".")
	}
	p.wrap("", a.Note)
}

// table lists the varieties, kind by kind.
func (a *PatchAnswer) table(p *page) {
	kind := ""
	for _, l := range a.List {
		if l.Kind != kind {
			kind = l.Kind
			p.line("")
			p.line(fmt.Sprintf("%-21s%-11s%7s%7s%5s%9s%9s%5s%6s", clipped(kind, 20), "wish", "wanted", "places", "kept", "in hand", "cut", "over", "short"))
		}
		p.line(fmt.Sprintf("  %-19s%-11s%7d%7d%5s%9s%9s%5s%6s", clipped(l.Variety, 18), l.Wish, l.Wanted, l.Places,
			orBlank(l.kept), l.Counted(), l.ToCut(), orBlank(l.over), orBlank(l.short)))
	}
}

// orBlank writes a count, and nothing for none.
func orBlank(n int) string {
	if n == 0 {
		return ""
	}
	return fmt.Sprint(n)
}

// whys say why varieties have other places than they were wanted in.
func (a *PatchAnswer) whys(p *page) {
	first := true
	for _, l := range a.List {
		if l.Places == l.Wanted {
			continue
		}
		if first {
			p.line("")
			p.line("Why")
			first = false
		}
		p.wrap("  ", fmt.Sprintf("%s %s.", l.Variety, l.Why))
	}
}

// giveAndGet sums up what is kept back and over, and says how what is short is got.
func (a *PatchAnswer) giveAndGet(p *page) {
	p.line("")
	for _, one := range []struct{ before, said string }{
		{"Kept back: ", a.KeptBack()}, {"Over, to give away or sell: ", a.ToGive()}, {"To be got first: ", a.ToGet()},
	} {
		if one.said != "" {
			p.wrap(one.before, one.said+".")
		}
	}
}

// mixes compare the list with the wished mix.
func (a *PatchAnswer) mixes(p *page) {
	if len(a.Mix) == 0 {
		return
	}
	p.line("")
	p.line("The mix you wished")
	for _, m := range a.Mix {
		p.wrap("  ", fmt.Sprintf("%s, %s: %s (wished %s)%s", m.Kind, m.Name, m.Got(), m.Wished(), after(": ", m.Off())))
	}
}

// after puts a word before what is said, where anything is.
func after(before, said string) string {
	if said == "" {
		return ""
	}
	return before + said
}

// rows write the patch row by row.
func (a *PatchAnswer) rows(p *page) {
	if len(a.Rows) == 0 {
		return
	}
	p.line("")
	p.wrap("", "Rows. Tall behind low: let row 1 lie where it shades no other. Labels go out in the order of their numbers, left to right.")
	for _, r := range a.Rows {
		var parts []string
		for _, part := range r.Parts {
			parts = append(parts, fmt.Sprintf("%d %s %s", part.Label, part.Variety, part.At()))
		}
		p.wrap(fmt.Sprintf("  bed %2d row %2d  ", r.Bed, r.Row), strings.Join(parts, ", "))
	}
}
