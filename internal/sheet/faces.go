package sheet

import (
	"embed"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

//go:embed faces/*.ttf
var faceFiles embed.FS

// face is one typeface.
type face struct {
	id    string // as the PDF calls it
	bytes []byte
	font  *sfnt.Font
}

// The typefaces, in the order in which they are asked for a letter.
var (
	plainFaces = []string{"NotoSans-Regular", "NotoSansHebrew-Regular", "NotoSansArabic-Regular", "NotoSansArmenian-Regular", "NotoSansGeorgian-Regular", "DroidSansFallback"}
	boldFaces  = append([]string{"NotoSans-Bold"}, plainFaces[1:]...)
)

// openFaces reads every typeface once. They are part of the program, so a fault in one is
// a fault of its making.
var openFaces = sync.OnceValue(func() map[string]*face {
	all := map[string]*face{}
	for _, id := range append([]string{"NotoSans-Bold"}, plainFaces...) {
		b, err := faceFiles.ReadFile("faces/" + id + ".ttf")
		if err != nil {
			panic(err)
		}
		font, err := sfnt.Parse(b)
		if err != nil {
			panic(err)
		}
		all[id] = &face{id: id, bytes: b, font: font}
	}
	return all
})

// widest is the last letter that the PDF writer can address.
const widest = 0xFFFF

// faceFor returns the first typeface of the weight that holds the letter; nil where none
// does.
func faceFor(r rune, bold bool, buffer *sfnt.Buffer) *face {
	if r > widest {
		return nil
	}
	ids := plainFaces
	if bold {
		ids = boldFaces
	}
	for _, id := range ids {
		f := openFaces()[id]
		if at, err := f.font.GlyphIndex(buffer, r); err == nil && at != 0 {
			return f
		}
	}
	return nil
}

// advance returns how far a letter moves the next one on, as a multiple of the type size.
func (f *face) advance(r rune, buffer *sfnt.Buffer) float64 {
	em := f.font.UnitsPerEm()
	at, err := f.font.GlyphIndex(buffer, r)
	if err != nil {
		return 0
	}
	units, err := f.font.GlyphAdvance(buffer, at, fixed.I(int(em)), font.HintingNone)
	if err != nil {
		return 0
	}
	return float64(units) / 64 / float64(em)
}
