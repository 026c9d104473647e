package exchange

import (
	"eyeup/quantity"
)

// writtenPatch is the content of [patch]; empty fields are left out.
type writtenPatch struct {
	Place     string                `toml:"place,omitempty"`
	Kinds     []string              `toml:"kinds,omitempty"`
	Places    int                   `toml:"places,omitempty"`
	Low       string                `toml:"low,omitempty"`
	Tall      string                `toml:"tall,omitempty"`
	Width     string                `toml:"bed_width,omitempty"`
	Length    string                `toml:"row_length,omitempty"`
	Spacing   map[string]string     `toml:"spacing,omitempty"`
	Varieties []writtenPatchVariety `toml:"variety,omitempty"`
	Mixes     []writtenMix          `toml:"mix,omitempty"`
}

type writtenPatchVariety struct {
	Name    string `toml:"name"`
	Kind    string `toml:"kind"`
	Wish    string `toml:"wish,omitempty"`
	Least   int    `toml:"least,omitempty"`
	Most    int    `toml:"most,omitempty"`
	Flower  string `toml:"flower,omitempty"`
	Family  string `toml:"colour_word,omitempty"`
	Spacing string `toml:"spacing,omitempty"`
	Plant   *int   `toml:"plant,omitempty"`
	Reserve int    `toml:"reserve,omitempty"`
	Bought  int    `toml:"bought,omitempty"`
	Timing  string `toml:"timing,omitempty"`
	Colour  string `toml:"colour,omitempty"`
	Height  string `toml:"height,omitempty"`
}

type writtenMix struct {
	Kind  string            `toml:"kind"`
	By    string            `toml:"by"`
	Slack string            `toml:"slack"`
	Want  map[string]string `toml:"want,inline"`
}

func (p *Patch) written() *writtenPatch {
	if p == nil {
		return nil
	}
	w := &writtenPatch{
		Place: p.Place, Kinds: p.Kinds, Places: p.Places, Low: writtenLength(p.Low), Tall: writtenLength(p.Tall),
		Width: writtenLength(p.Width), Length: writtenLength(p.Length), Spacing: map[string]string{},
	}
	for kind, l := range p.Spacing {
		w.Spacing[kind] = l.Written()
	}
	for _, v := range p.Varieties {
		one := writtenPatchVariety{
			Name: v.Name, Kind: v.Kind, Wish: string(v.Wish), Least: v.Least, Most: v.Most,
			Flower: v.Flower, Family: v.Family, Spacing: writtenLength(v.Spacing),
		}
		if n := v.New; n != nil {
			one.Plant, one.Reserve, one.Bought, one.Timing, one.Colour, one.Height = &n.Plant, n.Reserve, n.Bought, n.Timing, n.Colour, writtenLength(n.Height)
		}
		w.Varieties = append(w.Varieties, one)
	}
	for _, m := range p.Mixes {
		one := writtenMix{string(m.Kind), string(m.By), m.Slack.Written(), map[string]string{}}
		for _, share := range m.Want {
			one.Want[share.Name] = share.Of.Written()
		}
		w.Mixes = append(w.Mixes, one)
	}
	return w
}

// writtenLength writes a length; empty for 0.
func writtenLength(l quantity.Length) string {
	if l == 0 {
		return ""
	}
	return l.Written()
}
