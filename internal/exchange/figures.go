package exchange

import (
	"strings"

	"eyeup/culture"
)

// readFigures reads the garden's own figures of each kind, such as sprout.base of dahlia.
func (g *Garden) readFigures(s *section) {
	g.Figures = map[string][]culture.Override{}
	for _, name := range s.group.keys {
		one := s.sub(name, free)
		kind, known := culture.Lookup(name)
		switch {
		case one == nil:
		case !known:
			s.refuse(s.group.key[name], "%s", notKnown("kind", name, culture.Kinds()))
		default:
			g.readKindFigures(one, kind, "", one.group)
		}
	}
}

// readKindFigures reads a table whose keys may be dotted, with or without quotes.
func (g *Garden) readKindFigures(s *section, kind *culture.Kind, before string, t *group) {
	for _, key := range t.keys {
		v := t.of[key]
		if v.group != nil {
			g.readKindFigures(s, kind, before+key+".", v.group)
			continue
		}
		own := culture.Override{Key: before + key, Text: strings.TrimSpace(v.text)}
		if _, err := kind.With([]culture.Override{own}); err != nil {
			s.refuse(v.at, "%v", err)
			continue
		}
		g.Figures[kind.Name] = append(g.Figures[kind.Name], own)
	}
}
