package sheet

import (
	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/harfbuzz"
	"github.com/go-text/typesetting/language"
)

// setter shapes texts. It belongs to one paper: its cache must not be shared.
type setter struct {
	fonts  map[*face]*harfbuzz.Font
	buffer *harfbuzz.Buffer
}

func newSetter() *setter {
	return &setter{map[*face]*harfbuzz.Font{}, harfbuzz.NewBuffer()}
}

// run is a piece of text in one typeface, its parts in order from left to right.
type run struct {
	face     *face
	parts    []part
	ems      float64 // its width, as a multiple of the type size
	up, down float64 // extent above and below its baseline, likewise
}

// part is the drawing of the letters from to to of the whole text. said holds them if the
// names of the glyphs don't give them one by one.
type part struct {
	from, to int
	said     string
	set      []placed
}

// placed are glyphs with natural spacing, by their names in the PDF, and the position of the
// first, relative to the run's start and baseline, in multiples of the type size.
type placed struct {
	x, y  float64
	codes string
}

// shape shapes letters of one typeface, script and direction; the glyphs are ordered from left
// to right.
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

// shaped is shape with the glyphs collected into parts. bad is a letter without a glyph.
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

// laying is a run while it is laid out.
type laying struct {
	openedFace
	font *harfbuzz.Font
	text []rune
	run  run

	pen   int // position of the next glyph, in the typeface's units
	stand int // its natural position
	level int // height of the last glyph
}

func (l *laying) ems(units int) float64 { return float64(units) / float64(l.Upem()) }

// add adds the glyphs of a part. Parts whose glyphs give their own text are merged.
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

// put adds one glyph to the last part.
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

// reachOf returns how far a glyph's outline extends above and below the baseline, in the
// typeface's units. Some typefaces' own figures are too small.
func reachOf(f harfbuzz.Face, g font.GID) (up, down int) {
	outline, _ := f.GlyphDataOutline(g)
	for _, segment := range outline.Segments {
		for _, at := range segment.ArgsSlice() {
			up, down = max(up, int(at.Y)), max(down, int(-at.Y))
		}
	}
	return up, down
}
