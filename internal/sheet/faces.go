package sheet

import (
	"bytes"
	"compress/gzip"
	"embed"
	"io"
	"sync"

	"github.com/go-text/typesetting/font"
)

//go:embed faces/*.ttf.gz
var faceFiles embed.FS

// face is one typeface. It is unpacked on first use.
type face struct {
	id     string    // name in the PDF
	blocks [][2]rune // Unicode blocks for which it is preferred
	opened func() openedFace
}

// openedFace is an unpacked typeface.
type openedFace struct {
	*font.Font
	codes []rune // by glyph: see codesOf
	bytes []byte // as the PDF takes it in
}

func newFace(id string, blocks ...[2]rune) *face {
	f := &face{id: id, blocks: blocks}
	f.opened = sync.OnceValue(f.open)
	return f
}

// The typefaces: those for Latin, Greek and Cyrillic letters in two weights, one for the
// letters of East Asia, and one for each further script.
var (
	plainFace    = newFace("NotoSans-Regular")
	boldFace     = newFace("NotoSans-Bold")
	eastFace     = newFace("DroidSansFallback")
	furtherFaces = []*face{
		newFace("NotoSansArmenian-Regular", [2]rune{0x0530, 0x058F}, [2]rune{0xFB13, 0xFB17}),
		newFace("NotoSansHebrew-Regular", [2]rune{0x0590, 0x05FF}, [2]rune{0xFB1D, 0xFB4F}),
		newFace("NotoSansArabic-Regular", [2]rune{0x0600, 0x06FF}, [2]rune{0x0750, 0x077F}, [2]rune{0x08A0, 0x08FF}),
		newFace("NotoSansThaana-Regular", [2]rune{0x0780, 0x07BF}),
		newFace("NotoSansNKo-Regular", [2]rune{0x07C0, 0x07FF}),
		newFace("NotoSansDevanagari-Regular", [2]rune{0x0900, 0x097F}, [2]rune{0x1CD0, 0x1CFF}, [2]rune{0xA8E0, 0xA8FF}),
		newFace("NotoSansBengali-Regular", [2]rune{0x0980, 0x09FF}),
		newFace("NotoSansGurmukhi-Regular", [2]rune{0x0A00, 0x0A7F}),
		newFace("NotoSansGujarati-Regular", [2]rune{0x0A80, 0x0AFF}),
		newFace("NotoSansOriya-Regular", [2]rune{0x0B00, 0x0B7F}),
		newFace("NotoSansTamil-Regular", [2]rune{0x0B80, 0x0BFF}),
		newFace("NotoSansTelugu-Regular", [2]rune{0x0C00, 0x0C7F}),
		newFace("NotoSansKannada-Regular", [2]rune{0x0C80, 0x0CFF}),
		newFace("NotoSansMalayalam-Regular", [2]rune{0x0D00, 0x0D7F}),
		newFace("NotoSansSinhala-Regular", [2]rune{0x0D80, 0x0DFF}),
		newFace("NotoSansThai-Regular", [2]rune{0x0E00, 0x0E7F}),
		newFace("NotoSansLao-Regular", [2]rune{0x0E80, 0x0EFF}),
		newFace("NotoSerifTibetan-Regular", [2]rune{0x0F00, 0x0FFF}),
		newFace("NotoSansMyanmar-Regular", [2]rune{0x1000, 0x109F}, [2]rune{0xA9E0, 0xA9FF}, [2]rune{0xAA60, 0xAA7F}),
		newFace("NotoSansGeorgian-Regular", [2]rune{0x10A0, 0x10FF}, [2]rune{0x1C90, 0x1CBF}, [2]rune{0x2D00, 0x2D2F}),
		newFace("NotoSansEthiopic-Regular", [2]rune{0x1200, 0x139F}, [2]rune{0x2D80, 0x2DDF}, [2]rune{0xAB00, 0xAB2F}),
		newFace("NotoSansCherokee-Regular", [2]rune{0x13A0, 0x13FF}, [2]rune{0xAB70, 0xABBF}),
		newFace("NotoSansCanadianAboriginal-Regular", [2]rune{0x1400, 0x167F}, [2]rune{0x18B0, 0x18FF}),
		newFace("NotoSansKhmer-Regular", [2]rune{0x1780, 0x17FF}, [2]rune{0x19E0, 0x19FF}),
	}
)

// open unpacks and reads a typeface. It is part of the program, so an error is a programming
// error.
func (f *face) open() openedFace {
	b, err := f.unpacked()
	if err != nil {
		panic(err)
	}
	read, err := font.ParseTTF(bytes.NewReader(b))
	if err != nil {
		panic(err)
	}
	codes, glyphs := codesOf(read.Font, glyphsIn(b))
	return openedFace{read.Font, codes, withChart(b, glyphs)}
}

func (f *face) unpacked() ([]byte, error) {
	packed, err := faceFiles.Open("faces/" + f.id + ".ttf.gz")
	if err != nil {
		return nil, err
	}
	defer func() { _ = packed.Close() }()
	plain, err := gzip.NewReader(packed)
	if err != nil {
		return nil, err
	}
	return io.ReadAll(plain)
}

// has reports whether the typeface holds a letter.
func (f *face) has(r rune) bool {
	_, is := f.opened().NominalGlyph(r)
	return is
}

// isFor reports whether the typeface is the preferred one for the letter.
func (f *face) isFor(r rune) bool {
	for _, b := range f.blocks {
		if b[0] <= r && r <= b[1] {
			return true
		}
	}
	return false
}

// faceFor returns the typeface for a letter; nil if none has it. before is the typeface of the
// previous letter, or nil: marks and spaces stay in it if possible.
func faceFor(r rune, bold bool, before *face) *face {
	latin := plainFace
	if bold {
		latin = boldFace
	}
	asked := []*face{latin, before}
	if stays(r) {
		asked = []*face{before, latin}
	}
	for _, f := range furtherFaces {
		if f.isFor(r) {
			asked = append(asked, f)
		}
	}
	for _, f := range append(asked, eastFace) {
		if f != nil && f.has(r) {
			return f
		}
	}
	return nil
}
