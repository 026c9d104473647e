package patch

import "eyeup/quantity"

// group is one part of a mix: who belongs to it, and between which shares it costs nothing.
type group struct {
	mix       int // which mix of the brief
	name      string
	low, high float64 // shares of the places of the kind
	in        []bool  // by variety
}

// groups are the parts of all mixes that some variety belongs to, and of which mixes each
// variety is.
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

// Heights names the parts of a mix by height.
func Heights() []string { return []string{"low", "middle", "tall"} }

// trait says in a word what a variety is by a trait; empty where it is not known.
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

// Word returns the colour of the variety in a word, as the grower says it or by FamilyOf.
func (v *Variety) Word() string {
	if v.Family != "" {
		return v.Family
	}
	family, _ := FamilyOf(v.Colour) // what is no colour has none in a word; Check refuses it
	return family
}
