package patch

import "eyeup/quantity"

// group is one part of a mix: its varieties, and the range of shares that costs nothing.
type group struct {
	mix       int // which mix of the brief
	name      string
	low, high float64 // shares of the places of the kind
	in        []bool  // by variety
}

// groups returns the parts of all mixes that have a variety, and for each variety the mixes it
// is in.
func (b *Brief) groups() (groups []group, of [][]bool) {
	for m, mix := range b.Mixes {
		members := make([]bool, len(b.Varieties))
		for i := range b.Varieties {
			members[i] = b.Varieties[i].Kind == mix.Kind
		}
		of = append(of, members)
		for _, s := range mix.Want {
			g := group{m, s.Name, max(0, float64(s.Of-mix.Slack)), min(1, float64(s.Of+mix.Slack)), make([]bool, len(b.Varieties))}
			any := false
			for i := range b.Varieties {
				g.in[i] = members[i] && b.trait(&b.Varieties[i], mix.By) == s.Name
				any = any || g.in[i]
			}
			if any {
				groups = append(groups, g)
			}
		}
	}
	return groups, of
}

// Heights returns the parts of a mix by height.
func Heights() []string { return []string{"low", "middle", "tall"} }

// trait returns the word for a variety's trait; empty if unknown.
func (b *Brief) trait(v *Variety, by Trait) string {
	switch by {
	case Colour:
		return v.Word()
	case Flower:
		return v.Flower
	case Timing:
		return string(v.Timing)
	case Height:
		return b.height(v.Height)
	}
	return ""
}

func (b *Brief) height(h quantity.Length) string {
	switch {
	case h == 0:
		return ""
	case h <= b.Low:
		return "low"
	case b.Tall > 0 && h >= b.Tall:
		return "tall"
	}
	return "middle"
}

// Word returns the variety's colour as a word: the grower's, or that of FamilyOf.
func (v *Variety) Word() string {
	if v.Family != "" {
		return v.Family
	}
	family, _ := FamilyOf(v.Colour) // an invalid colour has no word; Check refuses it
	return family
}
