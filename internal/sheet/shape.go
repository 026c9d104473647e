package sheet

import (
	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/harfbuzz"
	"github.com/go-text/typesetting/language"
)

// setter sets texts in type. It serves one paper: what it keeps is not to be shared.
type setter struct {
	fonts  map[*face]*harfbuzz.Font
	buffer *harfbuzz.Buffer
}

func newSetter() *setter {
	return &setter{map[*face]*harfbuzz.Font{}, harfbuzz.NewBuffer()}
}

// run is a piece of text in one typeface, its parts in the order in which they stand from
// left to right.
type run struct {
	face     *face
	parts    []part
	ems      float64 // its width, as a multiple of the type size
	up, down float64 // how far it reaches above its foot and below, likewise
}

// part is what stands for the letters from to to of the whole text. said holds them where
// the names of the glyphs don't say them, one by one.
type part struct {
	from, to int
	said     string
	set      []placed
}

// placed are glyphs that follow each other as they do by themselves, by their names in the
// PDF, and where the first stands: to the right of the run's beginning and up from its
// foot, as multiples of the type size.
type placed struct {
	x, y  float64
	codes string
}

// shape asks for the glyphs of letters of one typeface, script and direction: their order
// is from left to right.
func (s *setter) shape(text []rune, from, to int, f *face, fromRight bool) {
	if s.fonts[f] == nil {
		s.fonts[f] = harfbuzz.NewFont(font.NewFace(f.opened().Font))
	}
	s.buffer.Clear()
	s.buffer.AddRunes(text, from, to-from)
	s.buffer.Props = harfbuzz.SegmentProperties{Script: scriptOf(text[from:to]), Language: language.NewLanguage("und"), Direction: harfbuzz.LeftToRight}
	if fromRight {
		s.buffer.Props.Direction = harfbuzz.RightToLeft
	}
	s.buffer.Shape(s.fonts[f], nil)
}

// shaped is shape with the glyphs gathered into parts. A letter that has no glyph is
// returned as bad.
func (s *setter) shaped(text []rune, from, to int, f *face, fromRight bool) (r run, bad rune) {
	s.shape(text, from, to, f, fromRight)
	l := laying{openedFace: f.opened(), font: s.fonts[f], text: text, run: run{face: f}}
	glyphs := s.buffer.Info
	before := to // where the letters of the glyphs to the left begin
	for i, end := 0, 0; i < len(glyphs); i = end {
		for end = i; end < len(glyphs) && glyphs[end].Cluster == glyphs[i].Cluster; end++ {
			if g := glyphs[end].Glyph; g == 0 || l.codes[g] == 0 {
				return r, text[glyphs[i].Cluster]
			}
		}
		p := part{from: glyphs[i].Cluster, to: before}
		switch {
		case fromRight:
			before = p.from
		case end < len(glyphs):
			p.to = glyphs[end].Cluster
		default:
			p.to = to
		}
		l.add(p, glyphs[i:end], s.buffer.Pos[i:end])
	}
	l.run.ems = l.ems(l.pen)
	return l.run, 0
}

// laying is a run being laid out.
type laying struct {
	openedFace
	font *harfbuzz.Font
	text []rune
	run  run

	pen   int // where the next glyph is put, in the typeface's own units
	stand int // where it would stand by itself
	level int // how high the last one stands
}

func (l *laying) ems(units int) float64 { return float64(units) / float64(l.Upem()) }

// add lays the glyphs of a part. Parts that say themselves are joined to one.
func (l *laying) add(p part, glyphs []harfbuzz.GlyphInfo, places []harfbuzz.GlyphPosition) {
	first := l.text[p.from]
	nominal, _ := l.NominalGlyph(first)
	itself := len(glyphs) == 1 && p.to == p.from+1 && nominal == glyphs[0].Glyph && first <= widest
	parts := l.run.parts
	if n := len(parts); itself && n > 0 && parts[n-1].said == "" {
		parts[n-1].from, parts[n-1].to = min(p.from, parts[n-1].from), max(p.to, parts[n-1].to)
	} else {
		if !itself {
			p.said = string(l.text[p.from:p.to])
		}
		l.run.parts = append(parts, p)
	}
	for i, g := range glyphs {
		code := l.codes[g.Glyph]
		if itself {
			code = first
		}
		l.put(g.Glyph, code, places[i])
	}
}

// put lays one glyph into the last part.
func (l *laying) put(g font.GID, code rune, at harfbuzz.GlyphPosition) {
	p := &l.run.parts[len(l.run.parts)-1]
	x, y := l.pen+int(at.XOffset), int(at.YOffset)
	if n := len(p.set); n > 0 && x == l.stand && y == l.level {
		p.set[n-1].codes += string(code)
	} else {
		p.set = append(p.set, placed{l.ems(x), l.ems(y), string(code)})
	}
	l.pen += int(at.XAdvance)
	l.stand, l.level = x+int(l.font.GlyphHAdvance(g)), y
	up, down := reachOf(l.font.Face(), g)
	l.run.up, l.run.down = max(l.run.up, l.ems(y+up)), max(l.run.down, l.ems(down-y))
}

// reachOf returns how far a glyph's outline reaches above its foot and below, in the
// typeface's own units. What typefaces say of it themselves is too little for some.
func reachOf(f harfbuzz.Face, g font.GID) (up, down int) {
	outline, _ := f.GlyphDataOutline(g)
	for _, segment := range outline.Segments {
		for _, at := range segment.ArgsSlice() {
			up, down = max(up, int(at.Y)), max(down, int(-at.Y))
		}
	}
	return up, down
}
