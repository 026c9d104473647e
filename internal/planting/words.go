package planting

import (
	"fmt"
	"math"
	"strings"
)

// The wording of a planting list, shared by the printed answer and the web page. Sentences have no full
// stop at the end unless a comment says so.

// Varieties counts the varieties that have places.
func (a *PatchAnswer) Varieties() int {
	n := 0
	for _, l := range a.List {
		if l.Places > 0 {
			n++
		}
	}
	return n
}

// Goodness says how far the list falls short of the wishes, and how much better another list could be at
// most. It ends with a full stop.
func (a *PatchAnswer) Goodness() string {
	switch {
	case a.Proof.Places < 0.005:
		return "Every wish fits; there is no better list."
	case a.Proof.Gap < 0.005:
		return fmt.Sprintf("%.2f places short of your wishes, counted by how much each is wanted; no list does better.", a.Proof.Places)
	}
	return fmt.Sprintf("%.2f places short of your wishes, counted by how much each is wanted. A better list, if there is one, is better by %.2f places at most.", a.Proof.Places, a.Proof.Gap)
}

// Unlisted says which varieties the list leaves out and why, a sentence for each reason.
func (a *PatchAnswer) Unlisted() []string {
	names := map[string][]string{}
	var whys []string // in the order of the list
	for _, n := range a.NotListed {
		if names[n.Why] == nil {
			whys = append(whys, n.Why)
		}
		names[n.Why] = append(names[n.Why], fmt.Sprintf("%s (%s)", n.Variety, n.Kind))
	}
	for i, why := range whys {
		whys[i] = strings.Join(names[why], ", ") + ": " + why
	}
	return whys
}

// KeptBack says how many are kept in reserve; empty if none are wanted.
func (a *PatchAnswer) KeptBack() string {
	kept, wanted := 0, 0
	for _, r := range a.Reserve {
		kept, wanted = kept+r.Kept, wanted+r.Wanted
	}
	if wanted == 0 {
		return ""
	}
	return fmt.Sprintf("%d of the %d wanted in reserve", kept, wanted)
}

// ToGive says what is left over to give away or sell; empty if nothing is.
func (a *PatchAnswer) ToGive() string {
	plants, clumps := 0, 0
	for _, o := range a.Over {
		plants, clumps = plants+o.Plants, clumps+o.Clumps
	}
	if plants == 0 {
		return ""
	}
	return fmt.Sprintf("%d plants of %d varieties, if all clumps are cut. If you cut only as many as the list says, %d whole clumps are left over", plants, len(a.Over), clumps)
}

// ToGet says what is short and how to get it; empty if nothing is.
func (a *PatchAnswer) ToGet() string {
	var short []string
	for _, s := range a.Short {
		short = append(short, fmt.Sprintf("%s %d (%s)", s.Variety, s.Plants, s.How))
	}
	return strings.Join(short, ", ")
}

// ColourCode is the colour of the flower as #rrggbb, or empty.
func (l PatchLine) ColourCode() string { return l.code }

// Kept is how many of the variety are kept back.
func (l PatchLine) Kept() int { return l.kept }

// Balance is how many plants are left over in nine cases of ten; negative if they are short.
func (l PatchLine) Balance() int { return l.over - l.short }

// Changed reports whether the variety has more or fewer places than wanted.
func (l PatchLine) Changed() bool { return l.Places != l.Wanted }

// Counted writes how many plants to expect: at least, in nine cases of ten, and at most, in nine of ten.
func (l PatchLine) Counted() string {
	switch {
	case !math.IsNaN(l.InHand.Low):
		least, most := int(math.Floor(l.InHand.Low+1e-9)), int(math.Floor(l.InHand.High+1e-9))
		if least == most {
			return fmt.Sprint(least)
		}
		return fmt.Sprintf("%d-%d", least, most)
	case l.Stands > 0:
		return fmt.Sprintf("%d now", l.Stands)
	}
	return "sown"
}

// ToCut says how many clumps to cut, of how many; empty if there are no clumps.
func (l PatchLine) ToCut() string {
	if l.Clumps == 0 {
		return ""
	}
	return fmt.Sprintf("%d of %d", l.Cut, l.Clumps)
}

// Got says how many places the share has in the list.
func (m PatchMix) Got() string {
	share := 0.0
	if m.Of > 0 {
		share = 100 * float64(m.Places) / float64(m.Of)
	}
	return fmt.Sprintf("%d of %d, %.0f%%", m.Places, m.Of, share)
}

// Wished writes the range of the share without a penalty.
func (m PatchMix) Wished() string { return fmt.Sprintf("%.0f to %.0f%%", 100*m.Low, 100*m.High) }

// Off says how far the share is outside that range; empty if it is inside.
func (m PatchMix) Off() string {
	switch {
	case m.Nobody:
		return "no variety is known to have it"
	case m.Outside > 0:
		return fmt.Sprintf("%.1f places above", m.Outside)
	case m.Outside < 0:
		return fmt.Sprintf("%.1f places below", -m.Outside)
	}
	return ""
}

// At writes the first and last place of the plants in their row.
func (p PatchRowPlant) At() string {
	if p.Count == 1 {
		return fmt.Sprint(p.From)
	}
	return fmt.Sprintf("%d-%d", p.From, p.From+p.Count-1)
}
