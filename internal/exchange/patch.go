package exchange

import (
	"fmt"
	"slices"

	"eyeup/culture"
	"eyeup/patch"
	"eyeup/quantity"
)

// tallestSpacing is the largest spacing accepted.
const tallestSpacing = 10 * quantity.Metre

// readPatch reads the section [patch].
func (g *Garden) readPatch(s *section) {
	p := &Patch{Place: s.text("place", free)}
	if at, known := g.Place(p.Place); p.Place != "" && (!known || at.Sort != Ground) {
		s.refuseKey("place", "%q is not a place of open ground; name one whose sort is %q", p.Place, Ground)
	}
	p.Kinds = s.kinds("kinds")
	p.Places, _ = s.whole("places", free, 1, mostCount)
	p.Low, p.Tall = s.stretch("low", tallest), s.stretch("tall", tallest)
	if s.has("low") != s.has("tall") || p.Low > 0 && p.Tall > 0 && p.Tall <= p.Low {
		s.refuseAs(s.place("tall"), "tall", "give both low and tall, low below tall: up to low a variety is low, from tall on it is tall",
			fmt.Sprintf("give it together with %s, which must be less, or give neither", s.called("low")))
	}
	p.Width, p.Length = s.stretch("bed_width", longest), s.stretch("row_length", longest)
	if s.has("bed_width") != s.has("row_length") {
		s.refuseAs(s.group.at, "bed_width", "bed_width and row_length belong together; give both, or neither for no rows",
			fmt.Sprintf("give it together with %s, or neither for no rows", s.called("row_length")))
	}
	p.Spacing = s.spacings()
	for _, one := range s.several("variety") {
		p.Varieties = append(p.Varieties, one.patchVariety(p.Varieties))
	}
	for _, one := range s.several("mix") {
		p.Mixes = append(p.Mixes, one.mix(p))
	}
	s.rest()
	g.Patch = p
}

// spacings reads the spacing from plant to plant of each kind.
func (s *section) spacings() map[string]quantity.Length {
	of := s.sub("spacing", free)
	if of == nil {
		return nil
	}
	all := map[string]quantity.Length{}
	for _, kind := range of.group.keys {
		l := of.stretch(kind, tallestSpacing)
		if !slices.Contains(culture.Kinds(), kind) {
			of.refuseAs(of.group.key[kind], kind, notKnown("kind", kind, culture.Kinds()), noneOf(kind, culture.Kinds()))
		}
		all[kind] = l
	}
	return all
}

// patchVariety reads the settings of one variety.
func (s *section) patchVariety(earlier []PatchVariety) PatchVariety {
	v := PatchVariety{Name: s.text("name", due), Kind: s.choice("kind", due, culture.Kinds()...), Line: s.group.at.line}
	if v.Name != "" {
		s.name = fmt.Sprintf("patch variety %q", v.Name)
	}
	for i, e := range earlier {
		if e.Name == v.Name && e.Kind == v.Kind {
			s.refuseAs(s.place("name"), "name", fmt.Sprintf("name: line %d has the same variety; put all its settings there", e.Line),
				fmt.Sprintf("variety %d is the same; put all its settings there", i+1))
		}
	}
	v.Wish = patch.Wish(s.choice("wish", free, string(patch.Must), string(patch.Would), string(patch.Could)))
	v.Least, _ = s.whole("least", free, 1, mostCount)
	v.Most, _ = s.whole("most", free, 1, mostCount)
	if v.Most > 0 && v.Least > v.Most {
		s.refuseKey("least", "at least %d but at most %d; swap them", v.Least, v.Most)
	}
	v.Flower, v.Family = s.text("flower", free), s.text("colour_word", free)
	v.Spacing = s.stretch("spacing", tallestSpacing)
	s.newVariety(&v)
	s.rest()
	return v
}

// newVariety reads the keys that only a variety new to the garden has; plant marks it as new.
func (s *section) newVariety(v *PatchVariety) {
	n := NewVariety{}
	n.Plant, _ = s.whole("plant", free, 0, mostCount)
	n.Reserve, _ = s.whole("reserve", free, 0, mostCount)
	n.Bought, _ = s.whole("bought", free, 0, mostCount)
	n.Timing = s.choice("timing", free, "early", "mid", "late")
	n.Colour = s.text("colour", free)
	if n.Colour != "" && !colourCode.MatchString(n.Colour) {
		s.refuseKey("colour", "%q is not a colour; write it as # and six of 0-9 and a-f, such as #b3261e", n.Colour)
		n.Colour = ""
	}
	n.Height = s.stretch("height", tallest)
	if s.has("plant") {
		v.New = &n
		return
	}
	for _, key := range []string{"reserve", "bought", "timing", "colour", "height"} {
		if s.has(key) {
			const has = "for varieties that the garden has, this comes from the stock list; for a new variety add "
			s.refuseAs(s.place(key), key, key+": "+has+"plant, the number of places for it", has+s.called("plant"))
		}
	}
}

// mix reads one wanted mix.
func (s *section) mix(p *Patch) patch.Mix {
	m := patch.Mix{Kind: s.choice("kind", due, culture.Kinds()...)}
	var traits []string
	for _, t := range patch.Traits() {
		traits = append(traits, string(t))
	}
	m.By = patch.Trait(s.choice("by", due, traits...))
	m.Slack, _ = measured(s, "slack", due, quantity.ParseShare)
	want := s.sub("want", due)
	if want == nil {
		if !s.has("want") {
			s.refuseAs(s.group.at, "want", `want is missing; write it such as want = { red = "25%" }`, "there is no share; give one, such as 25% of red")
		}
		s.rest()
		return m
	}
	for _, name := range slices.Sorted(slices.Values(want.group.keys)) {
		share, _ := measured(want, name, free, quantity.ParseShare)
		if known := words(m.By); known != nil && !slices.Contains(known, name) {
			want.refuseAs(want.group.key[name], name, notKnown(string(m.By), name, known), noneOf(name, known))
		}
		m.Want = append(m.Want, patch.Share{Name: name, Of: share})
	}
	if m.By == patch.Height && p.Low == 0 {
		s.refuseAs(s.place("by"), "by", `by: give the heights low and tall in [patch], such as low = "80 cm" and tall = "120 cm"`,
			fmt.Sprintf("first give the heights low and tall: %s, “%s”", "“"+Called("patch", "low")+"”", Called("patch", "tall")))
	}
	s.rest()
	return m
}
