package desk

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"eyeup/quantity"
)

// Print writes the planting list for a grower.
func (a *PatchAnswer) Print(w io.Writer, units quantity.System) {
	p := &page{w}
	p.wrap("", fmt.Sprintf("The planting list of %s for %d: %d plants of %d varieties on %s, of the %s of %s.",
		a.Garden, a.Year, a.Planted, a.varieties(), units.Area(quantity.Area(a.UsedM2)), units.Area(quantity.Area(a.RoomM2)), a.Place))
	if a.TooLittle != "" {
		p.wrap("Too little room: ", a.TooLittle+".")
	}
	a.proofLine(p)
	a.table(p)
	a.whys(p)
	a.giveAndGet(p)
	a.mixes(p)
	a.rows(p)
	p.line("")
	for i, n := range a.NotListed {
		if slices.IndexFunc(a.NotListed, func(o NotListed) bool { return o.Why == n.Why }) == i {
			p.wrap("Not listed: ", a.alike(n.Why)+": "+n.Why+".")
		}
	}
	for _, s := range a.Assumed {
		p.wrap("Taken for granted: ", s+".")
	}
	p.wrap("", a.Note)
}

// alike names the varieties that are not listed for the same reason.
func (a *PatchAnswer) alike(why string) string {
	var names []string
	for _, n := range a.NotListed {
		if n.Why == why {
			names = append(names, fmt.Sprintf("%s (%s)", n.Variety, n.Kind))
		}
	}
	return strings.Join(names, ", ")
}

// varieties counts those that have places.
func (a *PatchAnswer) varieties() int {
	n := 0
	for _, l := range a.List {
		if l.Places > 0 {
			n++
		}
	}
	return n
}

// proofLine says how good the list is.
func (a *PatchAnswer) proofLine(p *page) {
	switch {
	case a.Proof.Places < 0.005:
		p.wrap("", "Every wish fits; there is no better list.")
	case a.Proof.Gap < 0.005:
		p.wrap("", fmt.Sprintf("It falls short of your wishes by what counts for %.2f places; no list falls short by less.", a.Proof.Places))
	default:
		p.wrap("", fmt.Sprintf("It falls short of your wishes by what counts for %.2f places. A better list, if there is one, is better by %.2f places at most.", a.Proof.Places, a.Proof.Gap))
	}
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
			orBlank(l.kept), l.inHand(), l.cut(), orBlank(l.over), orBlank(l.short)))
	}
}

// orBlank writes a count, and nothing for none.
func orBlank(n int) string {
	if n == 0 {
		return ""
	}
	return fmt.Sprint(n)
}

// inHand writes how many plants are to be counted on.
func (l PatchLine) inHand() string {
	switch {
	case !math.IsNaN(l.InHand.Low):
		return fmt.Sprintf("%.0f-%.0f", math.Floor(l.InHand.Low+1e-9), math.Floor(l.InHand.High+1e-9))
	case l.Stands > 0:
		return fmt.Sprintf("%d now", l.Stands)
	}
	return "sown"
}

// cut writes how many clumps are to be cut.
func (l PatchLine) cut() string {
	if l.Clumps == 0 {
		return ""
	}
	return fmt.Sprintf("%d of %d", l.Cut, l.Clumps)
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
	kept, wanted, plants, clumps := 0, 0, 0, 0
	for _, r := range a.Reserve {
		kept, wanted = kept+r.Kept, wanted+r.Wanted
	}
	for _, o := range a.Over {
		plants, clumps = plants+o.Plants, clumps+o.Clumps
	}
	if wanted > 0 {
		p.wrap("Kept back: ", fmt.Sprintf("%d of the %d wanted as insurance.", kept, wanted))
	}
	if plants > 0 {
		p.wrap("Over, to give away or sell: ", fmt.Sprintf("%d plants of %d varieties, if all clumps are cut; or cut as the list says, and %d clumps are over as they are.", plants, len(a.Over), clumps))
	}
	var short []string
	for _, s := range a.Short {
		short = append(short, fmt.Sprintf("%s %d (%s)", s.Variety, s.Plants, s.How))
	}
	if len(short) > 0 {
		p.wrap("To be got first: ", strings.Join(short, ", ")+".")
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
		share := 0.0
		if m.Of > 0 {
			share = 100 * float64(m.Places) / float64(m.Of)
		}
		said := fmt.Sprintf("%s, %s: %d of %d, %.0f%% (wished %.0f to %.0f%%)", m.Kind, m.Name, m.Places, m.Of, share, 100*m.Low, 100*m.High)
		switch {
		case m.Nobody:
			said += ": no variety is known to be so"
		case m.Outside > 0:
			said += fmt.Sprintf(": %.1f places above", m.Outside)
		case m.Outside < 0:
			said += fmt.Sprintf(": %.1f places below", -m.Outside)
		}
		p.wrap("  ", said)
	}
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
			at := fmt.Sprint(part.From)
			if part.Count > 1 {
				at += fmt.Sprintf("-%d", part.From+part.Count-1)
			}
			parts = append(parts, fmt.Sprintf("%d %s %s", part.Label, part.Variety, at))
		}
		p.wrap(fmt.Sprintf("  bed %2d row %2d  ", r.Bed, r.Row), strings.Join(parts, ", "))
	}
}
