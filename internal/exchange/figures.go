package exchange

import (
	"slices"
	"strings"

	"eyeup/culture"
)

// readFigures reads the garden's own figures for each kind, such as sprout.base of dahlia.
func (g *Garden) readFigures(s *section) {
	g.Figures = map[string][]culture.Override{}
	for _, name := range s.group.keys {
		one := s.sub(name, free)
		kind, known := culture.Lookup(name)
		switch {
		case one == nil:
		case !known:
			s.refuseAs(s.group.key[name], name, notKnown("kind", name, culture.Kinds()), noneOf(name, culture.Kinds()))
		default:
			g.readKindFigures(one, kind)
		}
	}
}

// readKindFigures reads the figures of one kind, which must be consistent.
func (g *Garden) readKindFigures(s *section, kind *culture.Kind) {
	where := map[string]spot{}
	own := dotted(s.group, "", where)
	slices.SortFunc(own, func(a, b culture.Override) int { return strings.Compare(a.Key, b.Key) })
	if _, err := kind.With(own); err != nil {
		at, key := s.group.at, ""
		for _, o := range own {
			if strings.Contains(err.Error(), o.Key) {
				at, key = where[o.Key], o.Key
				break
			}
		}
		form := err.Error()
		if _, after, found := strings.Cut(form, key+": "); found && key != "" {
			form = after
		}
		s.refuseAs(at, key, err.Error(), form)
		return
	}
	g.Figures[kind.Name] = own
}

// dotted returns the keys and texts of a group whose keys may contain dots, quoted or not, and
// records their places in where.
func dotted(in *group, before string, where map[string]spot) []culture.Override {
	var own []culture.Override
	for _, key := range in.keys {
		v := in.of[key]
		if v.group != nil {
			own = append(own, dotted(v.group, before+key+".", where)...)
			continue
		}
		where[before+key] = v.at
		own = append(own, culture.Override{Key: before + key, Text: strings.TrimSpace(v.text)})
	}
	return own
}
